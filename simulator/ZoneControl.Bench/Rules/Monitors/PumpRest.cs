namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-REST: judged at each start. Power-up and a time fault count as a stop and as a start, since nobody knows of the last.
/// </summary>
internal sealed class PumpRest(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    public override void End()
    {
    }

    public override void OnFrame()
    {
        int off = Seen.House.PumpMinOffMs;
        int interval = Seen.House.PumpStartIntervalMs;
        if (!Seen.PumpWentOn || (off == 0 && interval == 0))
            return;
        Occasion();
        if (Seen.Pump.RestedMs < off)
            Broken($"the pump went on {Words.Seconds(Seen.Pump.RestedMs)} after its last stop; it rests {Words.Seconds(off)}");
        else if (Seen.Pump.SinceLastStartMs < interval)
        {
            Broken($"the pump went on {Words.Seconds(Seen.Pump.SinceLastStartMs)} after its last start; starts come "
                + $"{Words.Seconds(interval)} apart");
        }
    }

    public override void Walk(StateWalk walk)
    {
    }
}
