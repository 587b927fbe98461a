namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// VALVE-STUCK: an end switch made while its valve has been released, or its sense off, for the closing time is published
/// within two scans and until it has been seen open; no other is. The pump never relies on it.
/// </summary>
internal sealed class ValveStuck : RuleMonitor
{
    private readonly ZoneDuties _silent;
    private readonly ZoneDuties _falseAlarm;
    private Reliance _relying;
    private int _known;

    public ValveStuck(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _silent = new ZoneDuties(seen.House.ZoneCount);
        _falseAlarm = new ZoneDuties(seen.House.ZoneCount);
    }

    public override void End()
    {
        _silent.Clear();
        _falseAlarm.Clear();
        _relying.Clear();
        _known = 0;
    }

    public override void OnFrame() => Look(atFrame: true);

    public override void OnTime() => Look(atFrame: false);

    public override void Pass(int ms)
    {
        PassZones(_silent, ms, TwoScansMs, zone =>
            $"the end switch of {Words.Zone(zone)} stays made with its valve shut, and no alarm says so");
        PassZones(_falseAlarm, ms, TwoScansMs, zone =>
            $"the alarm says that the end switch of {Words.Zone(zone)} is stuck, and it is not");
        BrokenIn(_relying.Pass(ms, TwoScansMs), Why);
    }

    public override void Walk(StateWalk walk)
    {
        _silent.Walk(walk);
        _falseAlarm.Walk(walk);
        _relying.Walk(walk);
        walk.Int(ref _known);
    }

    private void Look(bool atFrame)
    {
        if ((Seen.Stuck & ~_known) != 0)
            Occasion();
        _known = Seen.Stuck;
        _silent.Set(Seen.Stuck & ~Seen.Now.StuckSwitches);
        _falseAlarm.Set(Seen.Now.StuckSwitches & ~Seen.Stuck);
        if (_relying.Judge(Seen, Seen.Open & Seen.Stuck) && atFrame)
            Broken(Why());
    }

    private string Why() => $"the pump runs on the end switch of {Words.Zones(Seen.Open & Seen.Stuck)}, which was made with its "
        + "valve shut";
}
