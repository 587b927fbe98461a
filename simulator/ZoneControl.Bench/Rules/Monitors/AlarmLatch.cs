using System.Numerics;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// ALARM-LATCH: what is latched (valves, want of flow, the high limit, the time fault) stays published until the reset
/// button goes down, is gone in that scan (but a limit that is still open), and forbids meanwhile: a latched valve is not
/// driven, a latched pump not started. In the scan of a reset nothing goes on; a pump that was off waits for its start delay
/// from there. A held button is no edge.
/// </summary>
/// <remarks>Whether a latch came rightly is its own rule's to judge.</remarks>
internal sealed class AlarmLatch(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private const int Latching = Alarm.FlowLatched | Alarm.LimitLatched | Alarm.TimeFault;

    // Owed from a reset with the pump off until the start delay has passed.
    private DutyClock _sinceReset;

    public override void End() => _sinceReset.Clear();

    public override void OnFrame()
    {
        int alarms = Seen.Was.Alarms & Latching;
        int gone = alarms & ~Seen.Now.Alarms;
        int valves = Seen.Was.LatchedValves & ~Seen.Now.LatchedValves;
        if ((Seen.Now.Alarms & ~Seen.Was.Alarms & Latching) != 0 || (Seen.Now.LatchedValves & ~Seen.Was.LatchedValves) != 0)
            Occasion();
        if (Seen.ResetPressed)
            JudgeReset(alarms & ~gone, Seen.Was.LatchedValves & ~valves);
        else if (gone != 0)
            Broken($"the latched alarm {Named(gone)} is gone without a reset");
        else if (valves != 0)
            Broken($"the latch of {Words.Zones(valves)} is gone without a reset");
        JudgeForbidden();
    }

    public override void Pass(int ms)
    {
        _sinceReset.Pass(ms, Seen.House.PumpStartDelayMs);
        if (_sinceReset.Ms >= Seen.House.PumpStartDelayMs)
            _sinceReset.Clear();
    }

    public override void Walk(StateWalk walk) => _sinceReset.Walk(walk);

    private static string Named(int alarm) => (1 << BitOperations.TrailingZeroCount(alarm)) switch
    {
        Alarm.FlowLatched => "for want of flow",
        Alarm.LimitLatched => "of the high limit",
        _ => "of the time fault",
    };

    private void JudgeReset(int alarmsLeft, int valvesLeft)
    {
        Occasion();
        int left = Seen.Is(Contact.Limit) ? alarmsLeft & ~Alarm.LimitLatched : alarmsLeft;
        if (left != 0)
            Broken($"the latched alarm {Named(left)} stands after a reset");
        if (valvesLeft != 0)
            Broken($"the latch of {Words.Zones(valvesLeft)} stands after a reset");
        if (Seen.PumpWentOn || Seen.Energised != 0 || (Seen.Now.Heat && !Seen.Was.Heat))
            Broken("something goes on in the scan of a reset");
        _sinceReset.Restart(!Seen.Was.Pump);
    }

    private void JudgeForbidden()
    {
        if (Seen.PumpWentOn && Seen.Alarmed(Alarm.FlowLatched | Alarm.LimitLatched))
            Broken("the pump was started while an alarm is latched that forbids it");
        if ((Seen.Energised & Seen.Now.LatchedValves) != 0)
            Broken($"{Words.Zones(Seen.Energised & Seen.Now.LatchedValves)} opened though latched");
        if (Seen.PumpWentOn && !Seen.Service && _sinceReset.Owed)
        {
            Broken($"the pump went on {Words.Seconds(_sinceReset.Ms)} after a reset; the start delay is "
                + $"{Words.Seconds(Seen.House.PumpStartDelayMs)}");
        }
    }
}
