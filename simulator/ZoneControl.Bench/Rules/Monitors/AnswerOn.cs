namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// ANSWER-ON: with demand and no late or latched valve published, the pump is on within the longest time that any zone may
/// take to prove, plus the start delay, plus four scans. The time counts from the rise of demand, and afresh from a stop, a
/// power-up, the end of an alarm, and a proof that a switch took back.
/// </summary>
/// <remarks>
/// A change of which zones ask does not begin it afresh: zones already on their way may stay until enough is proven, so a
/// controller that keeps them answers in time however calls come and go.
/// </remarks>
internal sealed class AnswerOn : RuleMonitor
{
    private readonly int _limitMs;
    private DutyClock _waiting;

    public AnswerOn(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        int longest = 0;
        for (int zone = 0; zone < seen.House.ZoneCount; zone++)
        {
            bool switched = (seen.House.SwitchedZones & (1 << zone)) != 0;
            longest = Math.Max(longest, switched ? seen.House.SwitchLimitMs[zone] : seen.House.OpeningMs[zone]);
        }

        _limitMs = longest + seen.House.PumpStartDelayMs + (4 * seen.House.ScanPeriodMs);
    }

    public override void End() => _waiting.Clear();

    public override void OnFrame()
    {
        bool alarmed = (Seen.Now.LateValves | Seen.Now.LatchedValves) != 0;
        bool waiting = Seen.Demand && !Seen.Now.Pump && !alarmed;
        if (waiting && !_waiting.Owed)
            Occasion();
        bool takenBack = (Seen.ProvenBefore & ~Seen.Held) != 0;
        if (takenBack)
            _waiting.Restart(waiting);
        else
            _waiting.Set(waiting);
    }

    public override void Pass(int ms) => BrokenIn(
        _waiting.Pass(ms, _limitMs),
        () => $"demand has waited {Words.Seconds(_limitMs)} without an alarm, and the pump is still off");

    public override void Walk(StateWalk walk) => _waiting.Walk(walk);
}
