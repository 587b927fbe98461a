namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// OPEN-HANDOVER: judged from the end of a call while the pump runs and other demand remains. Zones whose call ended so are
/// <i>leaving</i>; while those that are not leaving fall short, the pump does not go off, and a leaving proven zone is
/// released only when what stays proven is at least minimum open. Loss of proof by a switch, whatever else
/// forces the pump off, the end of demand and a power-up end the handover. A gated valve is not ours to keep.
/// </summary>
/// <remarks>
/// Several calls may end close together: each could go alone, but not all. So leaving zones are counted as one, and each
/// release is judged when it comes. That the companion opens at all is OPEN-COMPANION's to judge.
/// </remarks>
internal sealed class OpenHandover(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private int _leaving;

    public override void End() => _leaving = 0;

    public override void OnFrame()
    {
        if (!Seen.Demand || !Seen.Was.Pump || Seen.ForcedStop)
        {
            _leaving = 0;
            return;
        }

        int ended = Seen.AskedBefore & ~Seen.Asked & ~Seen.Now.LatchedValves & Seen.Held & Seen.House.DrivenZones;
        _leaving = (_leaving | ended) & ~Seen.Asked & Seen.Was.Valves;
        int rest = Seen.CapacityOf(Seen.Held & ~_leaving);
        bool fallsShort = rest < Seen.MinimumOpen;
        if (ended != 0 && fallsShort)
            Occasion();
        if (fallsShort)
            JudgeStep(rest);
        // A zone that the plan keeps as a companion is leaving no more.
        _leaving = Seen.Now.Pump ? _leaving & Seen.Now.Valves & ~Seen.Plan.Companions : 0;
    }

    public override void Walk(StateWalk walk) => walk.Int(ref _leaving);

    private void JudgeStep(int rest)
    {
        int released = _leaving & Seen.Released & Seen.Held;
        if (released != 0 && Seen.Capacity < Seen.MinimumOpen)
        {
            Broken($"{Words.Zones(released)} released after its call with proven capacity {Seen.Capacity}; a companion must "
                + $"first bring it to {Seen.MinimumOpen}");
        }

        if (!Seen.Now.Pump)
        {
            Broken($"the pump stopped because the call of {Words.Zones(_leaving)} ended; it runs on while a companion brings "
                + $"proven capacity from {rest} to {Seen.MinimumOpen}");
        }
    }
}
