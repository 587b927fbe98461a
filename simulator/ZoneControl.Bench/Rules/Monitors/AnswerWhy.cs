using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// ANSWER-WHY: each reason has a predicate, and the published one is that of the first unmet condition. At a frame it must
/// be right at once; where the right reason changes between frames by time alone, the next scan must publish it. With every
/// condition met and the pump off, no reason is true and the rule is broken.
/// </summary>
/// <remarks>
/// Too few valves is unmet only while proof is: a zone retained after its call may hold enough proven although the zones
/// that may open could not, and then nothing but the start delay holds the pump.
/// In the power-up frame BOOT-SAFE alone keeps the pump off. If all conditions are met there (standing capacity suffices and
/// no start delay), no reason fits; any but a false word about the season or a valve is let pass until the next scan.
/// </remarks>
internal sealed class AnswerWhy(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private const HoldReason NothingHolds = (HoldReason)(-1);

    private DutyClock _stale;
    private bool _asked;

    public override void End()
    {
        _stale.Clear();
        _asked = false;
    }

    public override void OnFrame()
    {
        HoldReason right = Right();
        bool asked = right != HoldReason.None;
        if (asked && !_asked)
            Occasion();
        _asked = asked;
        bool bootOnly = right == NothingHolds && Seen.Now.PowerUp
            && Seen.Now.Hold is HoldReason.None or HoldReason.Proof or HoldReason.StartDelay;
        if (right != Seen.Now.Hold && !bootOnly)
            Broken(Why(right, 0));
        // A wrong reason told once is not told again when it turns stale.
        _stale.Restart(bootOnly);
    }

    public override void OnTime()
    {
        if (Right() == Seen.Now.Hold)
            _stale.Clear();
        else
            _stale.Set(true);
    }

    public override void Pass(int ms)
    {
        int ranOut = _stale.Pass(ms, Seen.House.ScanPeriodMs);
        BrokenIn(ranOut, () => Why(Right(), ranOut));
    }

    public override void Walk(StateWalk walk)
    {
        _stale.Walk(walk);
        walk.Bool(ref _asked);
    }

    private HoldReason Right()
    {
        if (Seen.Now.Pump || Seen.Now.Calls == 0)
            return HoldReason.None;
        if (!Seen.Demand)
            return Seen.Now.Lockout ? HoldReason.Lockout : HoldReason.ValveLatched;
        if (Seen.Capacity < Seen.MinimumOpen)
            return Seen.Plan.Reach < Seen.MinimumOpen ? HoldReason.TooFewValves : HoldReason.Proof;
        return Seen.DemandMs < Seen.House.PumpStartDelayMs ? HoldReason.StartDelay : NothingHolds;
    }

    private string Why(HoldReason right, int inMs) => right switch
    {
        NothingHolds => $"there is demand, every condition is met, and the pump is off (published: {Seen.Now.Hold})",
        HoldReason.None => $"published {Seen.Now.Hold}, though "
            + (Seen.Now.Pump ? "the pump is on" : "nobody calls"),
        HoldReason.Lockout => $"published {Seen.Now.Hold}; the first unmet condition is Lockout: calls do nothing this season",
        HoldReason.ValveLatched => $"published {Seen.Now.Hold}; the first unmet condition is ValveLatched: the valve of every "
            + "calling zone is latched",
        HoldReason.TooFewValves => $"published {Seen.Now.Hold}; the first unmet condition is TooFewValves: healthy valves reach "
            + $"{Seen.Plan.Reach} of {Seen.MinimumOpen}",
        HoldReason.Proof => $"published {Seen.Now.Hold}; the first unmet condition is Proof: {Seen.Capacity} of "
            + $"{Seen.MinimumOpen} proven",
        _ => $"published {Seen.Now.Hold}; the first unmet condition is StartDelay: {Words.Seconds(Seen.DemandMs + inMs)} of "
            + $"{Words.Seconds(Seen.House.PumpStartDelayMs)} passed",
    };
}
