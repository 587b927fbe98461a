namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// VALVE-EARLY: the pump never relies on a switch that made too soon until its valve has been energised for the full opening
/// time; and such a switch is published within two scans, until then. An alarm without such a switch is a breach too.
/// </summary>
/// <remarks>
/// A switch accepted within its debounce and a scan after its valve was energised was made before it, whatever the shortest
/// time says. With a debounce, a contact may be read as made in the scan that energises the valve and never be accepted: so an
/// alarm in that very frame is taken at its word, and the switch is doubted for this opening.
/// The pump relies on doubted switches when proven capacity falls short without them and not with them: a start so is a
/// breach at once, running on so after two scans, as in PUMP-TRIP.
/// </remarks>
internal sealed class ValveEarly : RuleMonitor
{
    private readonly DutyClock[] _silent;
    private readonly DutyClock[] _falseAlarm;
    private DutyClock _relying;
    private int _known;

    public ValveEarly(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _silent = new DutyClock[seen.House.ZoneCount];
        _falseAlarm = new DutyClock[seen.House.ZoneCount];
    }

    public override void End()
    {
        Array.Clear(_silent);
        Array.Clear(_falseAlarm);
        _relying.Clear();
        _known = 0;
    }

    public override void OnFrame()
    {
        if ((Seen.Early & ~_known) != 0)
            Occasion();
        _known = Seen.Early;
        if (Seen.PumpWentOn && Relies)
            Broken(WhyRelying());
        _relying.Set(Seen.Now.Pump && Relies);
        SetAlarmClocks();
    }

    public override void OnTime()
    {
        _relying.Set(Seen.Now.Pump && Relies);
        SetAlarmClocks();
    }

    public override void Pass(int ms)
    {
        BrokenIn(_relying.Pass(ms, TwoScansMs), WhyRelying);
        for (int zone = 0; zone < _silent.Length; zone++)
        {
            int named = zone;
            BrokenIn(
                _silent[zone].Pass(ms, TwoScansMs),
                () => $"the end switch of {Words.Zone(named)} made too soon, and no alarm says so");
            BrokenIn(
                _falseAlarm[zone].Pass(ms, TwoScansMs),
                () => $"the alarm says that the end switch of {Words.Zone(named)} made too soon, and it did not");
        }
    }

    public override void Walk(StateWalk walk)
    {
        for (int zone = 0; zone < _silent.Length; zone++)
        {
            _silent[zone].Walk(walk);
            _falseAlarm[zone].Walk(walk);
        }

        _relying.Walk(walk);
        walk.Int(ref _known);
    }

    private bool Relies => Seen.Capacity < Seen.MinimumOpen
        && Seen.CapacityOf(Seen.Proven | Seen.Doubted) >= Seen.MinimumOpen;

    private string WhyRelying() => $"the pump runs on the end switch of {Words.Zones(Seen.Doubted)}, which made too soon to "
        + "count before the full opening time";

    private void SetAlarmClocks()
    {
        int published = Seen.Now.EarlySwitches;
        int silent = Seen.Early & ~Seen.Proven & ~Seen.FullyOpened & ~published;
        // A released valve's alarm may stand until its next opening.
        int wrong = published & ~Seen.Early & (Seen.Open | ~Seen.House.SwitchedZones);
        for (int zone = 0; zone < _silent.Length; zone++)
        {
            _silent[zone].Set((silent & (1 << zone)) != 0);
            _falseAlarm[zone].Set((wrong & (1 << zone)) != 0);
        }
    }
}
