using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// HEAT-FLOW: in every frame, without tolerance: one scan decides pump, heat demand and accepted calls together, so a trip
/// takes heat demand off in the frame that takes the pump off. A call asks unless service, priority, lockout or a latched valve withholds it; an exercise and a hand
/// ask for no heat.
/// </summary>
internal sealed class HeatFlow(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    public override void End()
    {
    }

    public override void OnFrame()
    {
        if (!Seen.Now.Heat)
            return;
        if (!Seen.Was.Heat)
            Occasion();
        if (!Seen.Now.Pump)
            Broken("heat demand is on while the pump is off");
        else if (Seen.House.Has(Contact.Flow) && !Seen.Is(Contact.Flow))
            Broken("heat demand is on without flow");
        else if (Seen.Is(Contact.Limit))
            Broken("heat demand is on though the high limit is open");
        else if (Seen.Callers == 0)
            Broken("heat demand is on though no call asks for it");
    }

    public override void Walk(StateWalk walk)
    {
    }
}
