namespace ZoneControl.Logic.Tests;

/// <summary>One scan of a random run.</summary>
/// <param name="Now">Time of the scan, ms.</param>
/// <param name="First">The first of a moment.</param>
/// <param name="PowerUp">The power has failed and is back: the scan is a new controller's.</param>
/// <param name="Regular">The clock moved on by a scan period.</param>
/// <param name="Changed">A contact differs from the scan before.</param>
internal readonly record struct Tick(long Now, bool First, bool PowerUp, bool Regular, bool Changed);

/// <summary>Plays a random run: sets the contacts and the clock scan by scan, in answer to the outputs that it is shown.</summary>
internal sealed class RandomWorld
{
    private const long MonthMs = 30L * 24 * 3600 * 1000;

    private readonly RandomRun _run;
    private readonly ControllerSettings _s;
    private readonly int[] _openScans;
    private bool _switchesFollow = true;
    private bool _flowFollows = true;
    private int _brokenSwitches;
    private (int, int, int, int, int) _before;
    private long _now = 1000;

    public RandomWorld(RandomRun run)
    {
        _run = run;
        _s = run.Settings;
        _openScans = new int[_s.ZoneCount];
        Quiet.Fill(_s, Contacts);
    }

    public InputImage Contacts { get; } = new();

    /// <summary>Scan by scan; the caller scans between two of them and shows what came of it.</summary>
    public IEnumerable<Tick> Ticks(OutputImage shown)
    {
        bool started = false;
        foreach (Moment moment in _run.Moments)
        {
            for (int i = 0; i < moment.Scans + 1; i++)
            {
                bool powerUp = !started || (moment.What == Happening.PowerCut && i == 0);
                started = true;
                if (i == 0)
                    Begin(moment, shown.Valves);
                else if ((i & 1) == 0)
                    Chatter(moment);
                Follow(shown);
                long step = i == 0 ? _s.ScanPeriodMs : ClockStep(moment, i);
                _now += step;
                (int, int, int, int, int) contacts =
                    (Contacts.Calls, Contacts.EndSwitches, Contacts.Senses, Contacts.ServiceValves, Contacts.Contacts);
                bool changed = contacts != _before;
                _before = contacts;
                yield return new Tick(_now, i == 0, powerUp, step == _s.ScanPeriodMs, changed);
            }
        }
    }

    private long ClockStep(Moment moment, int i) => moment.What switch
    {
        Happening.ClockBack when i == 1 => -(moment.Number + 1) * (long)_s.ScanPeriodMs / 2,
        Happening.ClockJump when i == 1 => moment.Number == 15 ? MonthMs : (long)_s.ScanPeriodMs << (moment.Number % 12),
        Happening.ClockStall when i <= moment.Number % 6 + 1 => 0,
        _ => _s.ScanPeriodMs,
    };

    private void Begin(Moment moment, int valves)
    {
        int bit = 1 << moment.Number % _s.ZoneCount;
        int contact = 1 << moment.Number % Contact.Count;
        InputImage c = Contacts;
        switch (moment.What)
        {
            case Happening.Call: c.Calls = (c.Calls | bit) ^ (_s.InvertedCalls & bit); break;
            case Happening.EndCall: c.Calls = (c.Calls & ~bit) | (_s.InvertedCalls & bit); break;
            case Happening.TurnSwitch when _switchesFollow: _brokenSwitches ^= bit; break;
            case Happening.TurnSwitch: c.EndSwitches ^= bit; break;
            case Happening.MakeOpenOnes: SetSwitches(Switches | valves | c.Senses); break;
            case Happening.BreakShutOnes: SetSwitches(Switches & (valves | c.Senses)); break;
            case Happening.FollowSwitches: _switchesFollow = !_switchesFollow; break;
            case Happening.TurnSense: c.Senses ^= bit; break;
            case Happening.TurnHand: c.ServiceValves ^= bit; break;
            case Happening.HandsOff: c.ServiceValves = 0; Assert(Contact.ServicePump, false); break;
            case Happening.TurnContact: c.Contacts ^= contact; break;
            case Happening.PressReset: c.Contacts ^= Contact.Reset; break;
            case Happening.FollowFlow: _flowFollows = !_flowFollows; break;
            case Happening.Season: Assert(Contact.Lockout, false); break;
            case Happening.Quiet: int calls = c.Calls; Quiet.Fill(_s, c); c.Calls = calls; break;
            case Happening.AllOn: SetAll(-1); break;
            case Happening.AllOff: SetAll(0); break;
            case Happening.Swap: (c.Calls, c.EndSwitches, c.Senses) = (c.EndSwitches, c.Senses, c.Calls); break;
        }
    }

    private void Chatter(Moment moment)
    {
        int bit = 1 << moment.Number % _s.ZoneCount;
        switch (moment.What)
        {
            case Happening.ChatterCall: Contacts.Calls ^= bit; break;
            case Happening.ChatterSwitch: Contacts.EndSwitches ^= bit; break;
            case Happening.ChatterContact: Contacts.Contacts ^= 1 << moment.Number % Contact.Count; break;
        }
    }

    private int Switches => Contacts.EndSwitches ^ _s.InvertedSwitches;

    private void SetSwitches(int made) => Contacts.EndSwitches = made ^ _s.InvertedSwitches;

    private void SetAll(int contacts)
    {
        Contacts.Calls = Contacts.EndSwitches = Contacts.Senses = Contacts.ServiceValves = Contacts.Contacts = contacts;
        _switchesFollow = false;
        _flowFollows = false;
    }

    private void Assert(int contact, bool asserted) => Contacts.Set(contact, asserted ^ ((Quiet.Inverted(_s) & contact) != 0));

    /// <summary>Healthy switches make when their valve is nearly open, healthy flow goes with the pump.</summary>
    private void Follow(OutputImage shown)
    {
        if (_flowFollows)
            Assert(Contact.Flow, shown.Pump);
        int made = 0;
        for (int zone = 0; zone < _s.ZoneCount; zone++)
        {
            bool energised = Bits.Has(shown.Valves | (shown.AcceptedSenses & _s.GatedZones), zone);
            _openScans[zone] = energised ? _openScans[zone] + 1 : 0;
            if (energised && _openScans[zone] * _s.ScanPeriodMs * 4 >= _s.OpeningMs[zone] * 3)
                made |= 1 << zone;
        }

        if (_switchesFollow)
            SetSwitches(made ^ _brokenSwitches);
    }
}
