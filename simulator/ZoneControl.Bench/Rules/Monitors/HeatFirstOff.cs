namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// HEAT-FIRST-OFF: a stop is orderly unless the frame that stops the pump loses proof or forces it off otherwise (limit, want
/// of flow, time fault); in an orderly one heat demand has been off for at least the heat lead. Stops by loss of supply are judged by nothing.
/// </summary>
internal sealed class HeatFirstOff(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    // Owed for as long as heat demand has been off since it was last on; nothing is owed before it ever was.
    private DutyClock _off;

    public override void End() => _off.Clear();

    public override void OnFrame()
    {
        if (Seen.Now.Heat)
            _off.Clear();
        else if (Seen.Was.Heat)
            _off.Restart(true);
        if (!Seen.PumpWentOff || Seen.ForcedStop)
            return;
        Occasion();
        if (Seen.Now.Heat)
            Broken("the pump stopped with heat demand still on");
        else if (_off.Owed && _off.Ms < Seen.House.HeatLeadMs)
        {
            Broken($"the pump stopped {Words.Seconds(_off.Ms)} after heat demand went off; it must be at least "
                + $"{Words.Seconds(Seen.House.HeatLeadMs)}");
        }
    }

    public override void Pass(int ms) => _off.Pass(ms, Seen.House.HeatLeadMs);

    public override void Walk(StateWalk walk) => _off.Walk(walk);
}
