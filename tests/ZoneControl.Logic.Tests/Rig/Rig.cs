namespace ZoneControl.Logic.Tests;

/// <summary>
/// A controller on the bench: contacts are set by hand and seen by the next scan. A twin that decides every scan anew must
/// agree in everything, and the <see cref="Judge"/> watches every scan of every test.
/// </summary>
internal sealed class Rig
{
    private readonly ZoneController _controller;
    private readonly ZoneController _twin;
    private readonly OutputImage _twinOutputs = new();
    private readonly Judge _judge;
    private readonly int _period;

    private Rig(House house)
    {
        ControllerSettings settings = house.Settings();
        _controller = new ZoneController(settings);
        _twin = new ZoneController(settings);
        _judge = new Judge(settings);
        _period = settings.ScanPeriodMs;
        Now = 5000 - _period;
    }

    public InputImage Contacts { get; } = new();

    public OutputImage Out { get; } = new();

    /// <summary>Time of the last scan, ms.</summary>
    public long Now { get; private set; }

    public int[] State
    {
        get
        {
            int[] state = new int[_controller.StateLength];
            _controller.Save(state);
            return state;
        }
    }

    /// <summary>Not yet scanned.</summary>
    public static Rig BeforePowerUp(House house) => new(house);

    /// <summary>Powered up without a contact made, and the season accepted.</summary>
    public static Rig InSeason(House house)
    {
        var rig = new Rig(house);
        rig.Step();
        rig.RunUntil(o => !o.AcceptedLockout, house.Settings().SeasonDebounceMs + 2 * rig._period);
        return rig;
    }

    /// <summary>In season, these zones calling, and the pump just gone on.</summary>
    public static Rig Running(House house, params int[] zones)
    {
        Rig rig = InSeason(house).Call(zones);
        for (int zone = 0; zone < house.Settings().ZoneCount; zone++)
        {
            // A switched zone's switch makes halfway through its stroke: late enough to be believed.
            if (Bits.Has(house.Settings().SwitchedZones, zone))
                rig._followers.Add(zone);
        }

        rig.RunUntil(o => o.Pump, 60_000);
        rig._followers.Clear();
        return rig;
    }

    private readonly List<int> _followers = [];
    private readonly Dictionary<int, long> _energised = [];

    public Rig Call(params int[] zones) => Set(() => Contacts.Calls |= Bits.Of(zones));

    public Rig EndCall(params int[] zones) => Set(() => Contacts.Calls &= ~Bits.Of(zones));

    public Rig Make(params int[] zones) => Set(() => Contacts.EndSwitches |= Bits.Of(zones));

    public Rig Break(params int[] zones) => Set(() => Contacts.EndSwitches &= ~Bits.Of(zones));

    public Rig Lockout() => Set(() => Contacts.Lockout = true);

    public Rig Season() => Set(() => Contacts.Lockout = false);

    /// <summary>One scan, one period after the last.</summary>
    public Rig Step()
    {
        Now += _period;
        Follow();
        _controller.Scan(Now, Contacts, Out);
        _twin.ScanWhole(Now, Contacts, _twinOutputs);
        Assert.Equal(Published.Of(_twinOutputs), Published.Of(Out));
        Verdict.IsClean(_judge.Look(Now, Contacts, Out));
        return this;
    }

    public Rig RunFor(int ms)
    {
        Assert.Equal(0, ms % _period);
        for (int i = 0; i < ms / _period; i++)
            Step();
        return this;
    }

    /// <summary>Steps until the outputs are so; fails when that takes more than the time given.</summary>
    /// <returns>ms it took.</returns>
    public int RunUntil(Func<OutputImage, bool> reached, int withinMs)
    {
        int took = 0;
        while (!reached(Out))
        {
            Assert.True(took < withinMs, $"not reached within {withinMs} ms: {Published.Of(Out)}");
            Step();
            took += _period;
        }

        return took;
    }

    /// <summary>The same outputs in every scan for this long.</summary>
    public Rig Always(Func<OutputImage, bool> holds, int forMs)
    {
        for (int i = 0; i < forMs / _period; i++)
        {
            Step();
            Assert.True(holds(Out), $"after {(i + 1) * _period} ms: {Published.Of(Out)}");
        }

        return this;
    }

    public bool IsOpen(int zone) => Bits.Has(Out.Valves, zone);

    private void Follow()
    {
        foreach (int zone in _followers)
        {
            if (!IsOpen(zone))
                _energised.Remove(zone);
            else if (_energised.TryAdd(zone, Now))
                continue;
            else if (Now - _energised[zone] >= House.Opening / 2)
                Make(zone);
        }
    }

    private Rig Set(Action change)
    {
        change();
        return this;
    }
}

/// <summary>An output image's fields as one comparable value, without the scan clock and the announced deadline.</summary>
internal readonly record struct Published(
    int Valves, bool Pump, bool Heat, HoldReason Hold, int Calls, int Switches, bool Lockout, int Late, int Latched, int Early,
    int Proven, bool PowerUp)
{
    public static Published Of(OutputImage o) => new(
        o.Valves, o.Pump, o.Heat, o.Hold, o.AcceptedCalls, o.AcceptedSwitches, o.AcceptedLockout, o.LateValves, o.LatchedValves,
        o.EarlySwitches, o.ProvenValves, o.PowerUp);
}
