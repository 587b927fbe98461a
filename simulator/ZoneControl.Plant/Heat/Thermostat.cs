namespace ZoneControl.Plant.Heat;

/// <summary>A thermostat at work: what it asks, and when it may and will think again.</summary>
internal sealed class Thermostat
{
    private readonly ThermostatDescription _is;
    private long _earliestMs;

    public Thermostat(ThermostatDescription description)
    {
        _is = description;
        Added = new Anticipation(0, 0, 0, description.AnticipationK > 0 ? 1 / description.AnticipationS : 0);
    }

    /// <summary>It asks for heat.</summary>
    public bool Asks { get; private set; }

    /// <summary>What it feels beside the room.</summary>
    public Anticipation Added { get; private set; }

    private double LevelC => _is.SetC + (Asks ? 0.5 : -0.5) * _is.DifferentialK;

    /// <summary>The next look at which it changes its mind, before a time; ms.</summary>
    public long NextChange(RcRun run, int body, long nowMs, long beforeMs) =>
        run.FirstLook(body, LevelC, Asks, Math.Max(nowMs, _earliestMs - 1), beforeMs, Added);

    /// <summary>Looks at a whole second; true when it changed its mind.</summary>
    public bool Look(RcRun run, int body, long ms)
    {
        if (ms < _earliestMs || !run.HasReached(body, LevelC, Asks, ms, Added))
        {
            return false;
        }

        Asks = !Asks;
        _earliestMs = ms + (long)Math.Round(1000 * (Asks ? _is.MinimumOnS : _is.MinimumOffS));
        Added = Added.Turn(ms, Asks ? _is.AnticipationK : 0);
        return true;
    }
}
