namespace ZoneControl.Logic.Tests;

/// <summary>
/// A controller on the bench: contacts are set by hand and seen by the next scan. A twin that decides every scan anew must
/// agree in everything, and the <see cref="Judge"/> watches every scan of every test.
/// </summary>
internal sealed class Rig
{
    private readonly ControllerSettings _settings;
    private readonly OutputImage _twinOutputs = new();
    private readonly int _period;
    private ZoneController _controller;
    private ZoneController _twin;
    private Judge _judge;

    private Rig(House house)
    {
        _settings = house.Settings();
        _controller = new ZoneController(_settings);
        _twin = new ZoneController(_settings);
        _judge = new Judge(_settings);
        _period = _settings.ScanPeriodMs;
        Now = 5000 - _period;
        Quiet.Fill(_settings, Contacts);
    }

    public InputImage Contacts { get; } = new();

    public OutputImage Out { get; } = new();

    public Counters Counters => _controller.Counters;

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
        rig.FlowFollows = house.Settings().Has(Contact.Flow);
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

    /// <summary>The flow switch shows what the pump did in the scan before.</summary>
    public bool FlowFollows { get; set; }

    private readonly List<int> _followers = [];
    private readonly Dictionary<int, long> _energised = [];

    public Rig Call(params int[] zones) => Set(() => Contacts.Calls = Asserted(Contacts.Calls, _settings.InvertedCalls, Bits.Of(zones)));

    public Rig EndCall(params int[] zones) => Set(() => Contacts.Calls = Cleared(Contacts.Calls, _settings.InvertedCalls, Bits.Of(zones)));

    public Rig Make(params int[] zones) =>
        Set(() => Contacts.EndSwitches = Asserted(Contacts.EndSwitches, _settings.InvertedSwitches, Bits.Of(zones)));

    public Rig Break(params int[] zones) =>
        Set(() => Contacts.EndSwitches = Cleared(Contacts.EndSwitches, _settings.InvertedSwitches, Bits.Of(zones)));

    /// <summary>The panel energises these valves.</summary>
    public Rig Sense(params int[] zones) => Set(() => Contacts.Senses = Asserted(Contacts.Senses, _settings.InvertedSenses, Bits.Of(zones)));

    public Rig EndSense(params int[] zones) => Set(() => Contacts.Senses = Cleared(Contacts.Senses, _settings.InvertedSenses, Bits.Of(zones)));

    /// <summary>A hand opens these zones.</summary>
    public Rig Hand(params int[] zones) => Set(() => Contacts.ServiceValves |= Bits.Of(zones));

    public Rig EndHand(params int[] zones) => Set(() => Contacts.ServiceValves &= ~Bits.Of(zones));

    public Rig Lockout() => On(Contact.Lockout);

    public Rig Season() => Off(Contact.Lockout);

    /// <summary>Asserts contacts of <see cref="Contact"/>, whatever their polarity.</summary>
    public Rig On(int contacts) => Set(() => Contacts.Contacts = Asserted(Contacts.Contacts, Quiet.Inverted(_settings), contacts));

    public Rig Off(int contacts) => Set(() => Contacts.Contacts = Cleared(Contacts.Contacts, Quiet.Inverted(_settings), contacts));

    /// <summary>Presses the reset button for one scan.</summary>
    public Rig Reset() => On(Contact.Reset).Step().Off(Contact.Reset);

    /// <summary>The power fails and is back before the next scan; the board's clock begins anew.</summary>
    public Rig PowerCut()
    {
        _controller = new ZoneController(_settings);
        _twin = new ZoneController(_settings);
        _judge = new Judge(_settings);
        Now = 5000 - _period;
        return this;
    }

    /// <summary>Another controller takes over what this one saved.</summary>
    public Rig Reload()
    {
        int[] state = State;
        _controller = new ZoneController(_settings);
        _controller.Load(state, Now);
        return this;
    }

    /// <summary>One scan, one period after the last.</summary>
    public Rig Step() => StepAfter(_period);

    /// <summary>One scan, so many ms after the last as the clock shows it: none, or less, when it cannot be trusted.</summary>
    public Rig StepAfter(long ms)
    {
        Now += ms;
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

    private static int Asserted(int contacts, int inverted, int bits) => (contacts | bits) & ~(bits & inverted);

    private static int Cleared(int contacts, int inverted, int bits) => (contacts & ~bits) | (bits & inverted);

    private void Follow()
    {
        if (FlowFollows)
            (Out.Pump ? (Func<int, Rig>)On : Off)(Contact.Flow);
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
