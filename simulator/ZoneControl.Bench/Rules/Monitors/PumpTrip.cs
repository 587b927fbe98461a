namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-TRIP: judged on accepted contacts, so debounce has passed already: pump and heat demand are off two scans after the
/// frame in which proven capacity fell below minimum open. Proof that comes back within them ends the obligation.
/// </summary>
internal sealed class PumpTrip(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private DutyClock _lost;

    public override void End() => _lost.Clear();

    public override void OnFrame()
    {
        bool lacking = Seen.Capacity < Seen.MinimumOpen;
        bool running = Seen.Now.Pump || Seen.Now.Heat;
        if (Seen.Was.Pump && lacking && Seen.CapacityBefore >= Seen.MinimumOpen)
        {
            Occasion();
            _lost.Restart(running);
            return;
        }

        if (!lacking || !running)
            _lost.Clear();
    }

    public override void OnTime()
    {
        if (Seen.Capacity >= Seen.MinimumOpen)
            _lost.Clear();
    }

    public override void Pass(int ms) => BrokenIn(
        _lost.Pass(ms, TwoScansMs),
        () => $"proven capacity fell to {Seen.Capacity} of {Seen.MinimumOpen}, and two scans later "
            + $"{(Seen.Now.Pump ? "the pump is" : "heat demand is")} still on");

    public override void Walk(StateWalk walk) => _lost.Walk(walk);
}
