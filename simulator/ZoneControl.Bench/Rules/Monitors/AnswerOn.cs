using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// ANSWER-ON: with demand other than an exercise and no alarm published (early switches apart), the pump is on within the
/// longest time that any zone may take to prove, plus the inrush of all, the start delay and the pump's rest, plus four
/// scans. The time counts from the rise of demand, and afresh from a stop, a power-up, the end of an alarm, a reset, and a
/// proof that a switch took back; and from each valve that opens where others may wait for the transformer: that they do not
/// wait longer is OPEN-COMPANION's to judge. A pump that runs for a call and no heat would be half an answer: with flow
/// where it is seen, heat demand is on within two scans.
/// </summary>
/// <remarks>
/// A change of which zones ask does not begin it afresh: zones already on their way may stay until enough is proven, so a
/// controller that keeps them answers in time however calls come and go.
/// </remarks>
internal sealed class AnswerOn : RuleMonitor
{
    private readonly int _limitMs;
    private DutyClock _waiting;
    private DutyClock _cold;

    public AnswerOn(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        int longest = 0;
        for (int zone = 0; zone < seen.House.ZoneCount; zone++)
        {
            bool switched = (seen.House.SwitchedZones & (1 << zone)) != 0;
            longest = Math.Max(longest, switched ? seen.House.SwitchLimitMs[zone] : seen.House.OpeningMs[zone]);
        }

        ControllerSettings house = seen.House;
        _limitMs = longest + StaggerMs(house) + house.PumpStartDelayMs
            + Math.Max(house.PumpMinOffMs, house.PumpStartIntervalMs) + (4 * house.ScanPeriodMs);
    }

    public override void End()
    {
        _waiting.Clear();
        _cold.Clear();
    }

    public override void OnFrame()
    {
        bool alarmed = (Seen.Now.LateValves | Seen.Now.LatchedValves | Seen.Now.StuckSwitches | Seen.Now.Alarms) != 0;
        bool waiting = Seen.Callers != 0 && !Seen.Now.Pump && !alarmed;
        if (waiting && !_waiting.Owed)
            Occasion();
        bool takenBack = (Seen.ProvenBefore & ~Seen.Held) != 0;
        bool staggered = Seen.House.TransformerDeciVa != 0 && Seen.Energised != 0;
        if (takenBack || staggered || Seen.ResetPressed)
            _waiting.Restart(waiting);
        else
            _waiting.Set(waiting);
        bool flows = !Seen.House.Has(Contact.Flow) || Seen.Is(Contact.Flow);
        _cold.Set(Seen.Callers != 0 && Seen.Now.Pump && !Seen.Now.Heat && flows && !alarmed);
    }

    public override void Pass(int ms)
    {
        BrokenIn(_waiting.Pass(ms, _limitMs), () =>
            $"demand has waited {Words.Seconds(_limitMs)} without an alarm, and the pump is still off");
        BrokenIn(_cold.Pass(ms, TwoScansMs), () => "the pump runs for a call, without an alarm, and heat is not asked for");
    }

    private static int StaggerMs(ControllerSettings house)
    {
        long sum = 0;
        for (int zone = 0; house.TransformerDeciVa != 0 && zone < house.ZoneCount; zone++)
            sum += house.InrushMs[zone] + house.ScanPeriodMs;
        return (int)Math.Min(sum, ControllerSettings.LongestMs);
    }

    public override void Walk(StateWalk walk)
    {
        _waiting.Walk(walk);
        _cold.Walk(walk);
    }
}
