namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>VALVE-LATE: each zone's story judged on its own, see <see cref="LateValve"/>.</summary>
internal sealed class ValveLate : RuleMonitor
{
    private readonly LateValve[] _valves;

    public ValveLate(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _valves = new LateValve[seen.House.ZoneCount];
        for (int zone = 0; zone < _valves.Length; zone++)
            _valves[zone] = new LateValve(zone, rule, seen, findings);
    }

    public override void End()
    {
        foreach (LateValve valve in _valves)
            valve.End();
    }

    public override void ForgetTimes()
    {
        foreach (LateValve valve in _valves)
            valve.ForgetTimes();
    }

    public override void OnFrame()
    {
        foreach (LateValve valve in _valves)
            valve.OnFrame();
    }

    public override void OnTime()
    {
        foreach (LateValve valve in _valves)
            valve.OnTime();
    }

    public override void Pass(int ms)
    {
        foreach (LateValve valve in _valves)
            valve.Pass(ms);
    }

    public override void Walk(StateWalk walk)
    {
        foreach (LateValve valve in _valves)
            valve.Walk(walk);
    }
}
