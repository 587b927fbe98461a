using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// SEASON-LOCKOUT: from the frame that accepts lockout on, no heat demand, no start, no valve opening, unless frost,
/// an exercise, a hand or PUMP-STUCK has it so by its own rule. The orderly stop that
/// a running pump gets is judged by PUMP-OVERRUN and HEAT-FIRST-OFF, the end of a handover by OPEN-COMPANION.
/// </summary>
/// <remarks>An occasion is lockout accepted while something runs, or a call accepted in lockout.</remarks>
internal sealed class SeasonLockout(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private bool _tested;

    public override void End() => _tested = false;

    public override void OnFrame()
    {
        if (!Seen.Now.Lockout)
        {
            _tested = false;
            return;
        }

        bool entered = !Seen.Was.Lockout && (Seen.Was.Pump || Seen.Was.Valves != 0);
        if (!_tested && (entered || Seen.Now.Calls != 0))
        {
            _tested = true;
            Occasion();
        }

        bool other = Seen.Is(Contact.Freeze) || Seen.Exercising || Seen.Service;
        if (Seen.Now.Heat && !Seen.Is(Contact.Freeze))
            Broken("heat is asked for in lockout");
        if (Seen.PumpWentOn && !other)
            Broken("the pump was started in lockout");
        if (Seen.Energised != 0 && !other && !Seen.Alarmed(Alarm.PumpStuck))
            Broken($"{Words.Zones(Seen.Energised)} opened in lockout");
    }

    public override void Walk(StateWalk walk) => walk.Bool(ref _tested);
}
