namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-PROOF: the pump never goes on in a frame without proof, and never stays on without it beyond the two scans that
/// PUMP-TRIP allows for seeing a loss and acting on it.
/// </summary>
internal sealed class PumpProof(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private DutyClock _short;

    public override void End() => _short.Clear();

    public override void OnFrame()
    {
        bool lacking = Seen.Capacity < Seen.MinimumOpen;
        if (Seen.PumpWentOn)
        {
            Occasion();
            if (lacking)
                Broken($"the pump went on with proven capacity {Seen.Capacity}; {Seen.MinimumOpen} must be proven first");
        }

        _short.Set(Seen.Now.Pump && lacking);
    }

    public override void OnTime() => _short.Set(Seen.Now.Pump && Seen.Capacity < Seen.MinimumOpen);

    public override void Pass(int ms) => BrokenIn(
        _short.Pass(ms, TwoScansMs),
        () => $"the pump stays on with proven capacity {Seen.Capacity}; {Seen.MinimumOpen} must be proven while it runs");

    public override void Walk(StateWalk walk) => _short.Walk(walk);
}
