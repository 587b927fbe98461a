namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// BOOT-SAFE: the power-up frame has every output off; the first frame with supply after one without is a power-up; and a
/// pump start that only what was proven before the power-up would have allowed is a breach of this rule too, besides
/// PUMP-PROOF.
/// </summary>
internal sealed class BootSafe(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    // Zones that were proven before the power-up and have not been proven again.
    private int _remembered;

    public override void End() => _remembered |= Seen.Proven;

    // What a time fault took is not remembered from before a power-up.
    public override void ForgetTimes() => _remembered = 0;

    public override void OnFrame()
    {
        if (Seen.Now.PowerUp)
        {
            Occasion();
            JudgeOutputs();
        }
        else if (Seen.AfterOutage)
        {
            Broken("supply came back without a power-up scan");
        }

        _remembered &= ~Seen.Proven;
        if (Seen.PumpWentOn && Seen.Capacity < Seen.MinimumOpen
            && Seen.CapacityOf(Seen.Proven | _remembered) >= Seen.MinimumOpen)
        {
            Broken($"the pump went on by the proof that {Words.Zones(_remembered)} had before the power-up; nothing counts "
                + "until proven again");
        }
    }

    public override void OnTime() => _remembered &= ~Seen.Proven;

    public override void Walk(StateWalk walk) => walk.Int(ref _remembered);

    private void JudgeOutputs()
    {
        var on = new List<string>();
        if (Seen.Now.Valves != 0)
            on.Add($"the valve of {Words.Zones(Seen.Now.Valves)}");
        if (Seen.Now.Pump)
            on.Add("the pump");
        if (Seen.Now.Heat)
            on.Add("heat demand");
        if (on.Count > 0)
            Broken($"on in the first scan after power-up: {string.Join(", ", on)}");
    }
}
