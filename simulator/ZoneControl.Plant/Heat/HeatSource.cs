namespace ZoneControl.Plant.Heat;

/// <summary>The heat source's own switching: set point, shortest run and rest, high limit. Body 0 of a run is its water.</summary>
internal sealed class HeatSource(SourceDescription source)
{
    private const int Water = 0;

    private double _setC = source.Set.At(20);
    private bool _tripped;
    private long _changedMs = long.MinValue / 2;

    /// <summary>It gives heat.</summary>
    public bool IsOn { get; private set; }

    /// <summary>Heat is asked of it.</summary>
    public bool Asked { get; set; }

    /// <summary>Times that it began to give heat.</summary>
    public int Starts { get; private set; }

    /// <summary>Times that its own high limit ended a run.</summary>
    public int LimitTrips { get; private set; }

    /// <summary>Set point for this weather.</summary>
    public double SetC => _setC;

    public void Outdoor(double celsius) => _setC = source.Set.At(celsius);

    private double OffC => _setC + source.DifferentialK / 2;

    private double OnC => _tripped
        ? Math.Min(_setC - source.DifferentialK / 2, source.HighLimitC - SourceDescription.LimitReturnK)
        : _setC - source.DifferentialK / 2;

    private long EarliestMs => _changedMs + (long)Math.Round(1000 * (IsOn ? source.MinimumRunS : source.MinimumRestS));

    /// <summary>The next look at which it switches if nothing else changes, before a time; ms.</summary>
    public long NextChange(RcRun run, long nowMs, long beforeMs)
    {
        long soonest = Math.Max(nowMs, EarliestMs - 1);
        if (!IsOn)
        {
            return Asked ? run.FirstLook(Water, OnC, rising: false, soonest, beforeMs) : PlantModel.Never;
        }

        long limit = run.FirstLook(Water, source.HighLimitC, rising: true, nowMs, beforeMs);
        long done = !Asked
            ? (soonest / 1000 + 1) * 1000
            : run.FirstLook(Water, OffC, rising: true, soonest, beforeMs);
        return Math.Min(limit, done);
    }

    /// <summary>Looks at a moment; true when it switched.</summary>
    public bool Look(RcRun run, long ms)
    {
        if (IsOn)
        {
            bool limit = run.HasReached(Water, source.HighLimitC, rising: true, ms);
            if (!limit && (ms < EarliestMs || (Asked && !run.HasReached(Water, OffC, rising: true, ms))))
            {
                return false;
            }

            _tripped = limit;
            LimitTrips += limit ? 1 : 0;
        }
        else
        {
            if (!Asked || ms < EarliestMs || !run.HasReached(Water, OnC, rising: false, ms))
            {
                return false;
            }

            _tripped = false;
            Starts++;
        }

        IsOn = !IsOn;
        _changedMs = ms;
        return true;
    }
}
