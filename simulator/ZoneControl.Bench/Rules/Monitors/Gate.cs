namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// GATE, where zones are gated: the pump never runs on a sensed valve that its sense and opening time (or end switch) do not
/// prove; a lost sense stops it within two scans, as a trip; and no output claims to drive such a valve.
/// </summary>
internal sealed class Gate(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private Reliance _relying;

    public override void End() => _relying.Clear();

    public override void OnFrame()
    {
        int gated = Seen.House.GatedZones;
        if (gated == 0)
            return;
        bool lost = Seen.Was.Pump && (Seen.Was.Senses & ~Seen.Now.Senses) != 0;
        if (lost || (Seen.PumpWentOn && Seen.Now.Senses != 0))
            Occasion();
        if ((Seen.Now.Valves & gated) != 0)
            Broken($"an output drives {Words.Zones(Seen.Now.Valves & gated)}, which an existing panel drives");
        if (_relying.Judge(Seen, gated))
            Broken(Why());
    }

    public override void OnTime() => _relying.Judge(Seen, Seen.House.GatedZones);

    public override void Pass(int ms) => BrokenIn(_relying.Pass(ms, TwoScansMs), Why);

    public override void Walk(StateWalk walk) => _relying.Walk(walk);

    private string Why() => $"the pump runs on {Words.Zones(Seen.House.GatedZones & ~Seen.Proven)}, which the sense inputs do "
        + $"not prove: {Seen.Capacity} of {Seen.MinimumOpen} proven";
}
