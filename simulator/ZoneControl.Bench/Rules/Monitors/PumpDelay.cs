namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-DELAY: judged at each start with demand. A start without demand has no delay to keep and is PUMP-OVERRUN's to judge
/// (a hand's start is free of it);
/// so is a restart after a trip under standing demand, whose delay passed long ago.
/// </summary>
internal sealed class PumpDelay(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    public override void End()
    {
    }

    public override void OnFrame()
    {
        if (!Seen.PumpWentOn || !Seen.Demand)
            return;
        Occasion();
        if (Seen.DemandMs < Seen.House.PumpStartDelayMs)
        {
            Broken($"the pump went on {Words.Seconds(Seen.DemandMs)} after demand rose; the start delay is "
                + $"{Words.Seconds(Seen.House.PumpStartDelayMs)}");
        }
    }

    public override void Walk(StateWalk walk)
    {
    }
}
