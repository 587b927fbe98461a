namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-ORDER, read strictly: while the pump is on or runs down, after a trip too, or a flow switch sees flow, a proven valve is not released when what
/// stays proven is below minimum open, whether or not enough was proven before. All releases of one scan count together. A
/// valve whose switch opened in the very scan that releases it was not proven.
/// </summary>
internal sealed class PumpOrder(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    public override void End()
    {
    }

    public override void OnFrame()
    {
        if (Seen.PumpWentOff && Seen.InRundown && Seen.Held != 0)
            Occasion();
        int released = Seen.Released & Seen.Held;
        if (released == 0 || !(Seen.Now.Pump || Seen.Settling))
            return;
        Occasion();
        if (Seen.Capacity < Seen.MinimumOpen)
        {
            string when = Seen.Now.Pump ? "while the pump is on"
                : Seen.InRundown ? "while the pump runs down" : "while flow is seen";
            Broken($"{Words.Zones(released)} released {when}, leaving proven capacity {Seen.Capacity} of the "
                + $"{Seen.MinimumOpen} that must stay");
        }
    }

    public override void Walk(StateWalk walk)
    {
    }
}
