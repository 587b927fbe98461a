using ZoneControl.Bench.Scripts;
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
/// In the power-up frame BOOT-SAFE alone keeps the pump off, in that of a time fault TIME-FAULT alone. If all conditions are
/// met there (standing capacity suffices, no delay, no rest), no reason fits; any but a false word about the season, a valve
/// or a latch is let pass until the next scan.
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
        bool bootOnly = right == NothingHolds && (Seen.Now.PowerUp || Seen.TimeFault) && Seen.Now.Hold
            is HoldReason.None or HoldReason.Proof or HoldReason.StartDelay or HoldReason.Rest or HoldReason.Reset;
        if (!Fits(right) && !bootOnly)
            Broken(Why(right, 0));
        // A wrong reason told once is not told again when it turns stale.
        // So is one that only this scan can have.
        _stale.Restart(bootOnly || right == HoldReason.Reset);
    }

    public override void OnTime()
    {
        if (Fits(Right()))
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
        if (Seen.Now.Pump)
            return HoldReason.None;
        bool wanted = Seen.Service ? Seen.Is(Contact.ServicePump) : Seen.Demand;
        return wanted ? FirstUnmet() : Withheld();
    }

    private HoldReason Withheld()
    {
        if ((Seen.Now.Calls | Seen.Now.Senses) == 0)
            return HoldReason.None;
        if (Seen.Service)
            return HoldReason.Service;
        if (Seen.PriorityHolds)
            return HoldReason.Priority;
        return Seen.Now.Lockout ? HoldReason.Lockout : HoldReason.ValveLatched;
    }

    private HoldReason FirstUnmet()
    {
        if (Seen.Alarmed(Alarm.LimitLatched))
            return HoldReason.Limit;
        if (Seen.Alarmed(Alarm.FlowLatched))
            return HoldReason.FlowLatched;
        if (Seen.Alarmed(Alarm.PumpStuck))
            return HoldReason.PumpStuck;
        if (Seen.Capacity < Seen.MinimumOpen)
        {
            if (!Seen.Supplied)
                return HoldReason.Supply;
            bool tooFew = !Seen.Service && Seen.Plan.Reach < Seen.MinimumOpen;
            return tooFew ? HoldReason.TooFewValves : HoldReason.Proof;
        }

        if (!Seen.Service && Seen.DemandMs < Seen.House.PumpStartDelayMs)
            return HoldReason.StartDelay;
        if (Seen.Pump.RestLeftMs > 0)
            return HoldReason.Rest;
        return Seen.ResetPressed && Seen.AtFrame ? HoldReason.Reset : NothingHolds;
    }

    private bool Fits(HoldReason right)
    {
        if (right == Seen.Now.Hold)
            return true;
        // The delay may count from a moment that is not to be seen.
        return Seen.DelayUnsure && Seen.Now.Hold == HoldReason.StartDelay
            && right is HoldReason.Rest or HoldReason.Reset or NothingHolds;
    }

    private string Why(HoldReason right, int inMs)
    {
        string published = $"published \"{HoldWords.Of(Seen.Now.Hold).Word}\"";
        return right switch
        {
            NothingHolds => $"there is demand, every condition is met, and the pump is off ({published})",
            HoldReason.None => $"{published}, though " + (Seen.Now.Pump ? "the pump is on" : "nobody calls"),
            HoldReason.Reset => $"{published}; only the reset holds the pump in this scan",
            _ => $"{published}; the first unmet condition is \"{HoldWords.Of(right).Word}\": {Unmet(right, inMs)}",
        };
    }

    private string Unmet(HoldReason right, int inMs) => right switch
    {
        HoldReason.Service => "a hand governs the pump",
        HoldReason.Priority => "calls are withheld",
        HoldReason.Lockout => "calls do nothing this season",
        HoldReason.ValveLatched => "the valve of every calling zone is latched",
        HoldReason.Limit => "the high limit is latched",
        HoldReason.FlowLatched => "want of flow is latched",
        HoldReason.PumpStuck => "there is flow with the pump off",
        HoldReason.Supply => "the actuators have none",
        HoldReason.TooFewValves => $"healthy valves reach {Seen.Plan.Reach} of {Seen.MinimumOpen}",
        HoldReason.Proof => $"{Seen.Capacity} of {Seen.MinimumOpen} proven",
        HoldReason.Rest => $"{Words.Seconds(Seen.Pump.RestLeftMs - inMs)} to go",
        _ => $"{Words.Seconds(Seen.DemandMs + inMs)} of {Words.Seconds(Seen.House.PumpStartDelayMs)} passed",
    };
}
