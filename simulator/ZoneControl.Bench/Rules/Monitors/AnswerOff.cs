using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// ANSWER-OFF: without demand, PUMP-STUCK and service, pump and valves are off within heat lead + overrun + rundown + three scans of the end of them
/// all, of a power-up, or of a time fault. An occasion is an end of demand with something on.
/// </summary>
internal sealed class AnswerOff : RuleMonitor
{
    private readonly int _limitMs;
    private DutyClock _idle;
    private bool _on;

    public AnswerOff(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _limitMs = seen.House.HeatLeadMs + seen.House.PumpOverrunMs + seen.House.PumpRundownMs
            + (3 * seen.House.ScanPeriodMs);
    }

    public override void End()
    {
        _idle.Clear();
        _on = false;
    }

    public override void OnFrame()
    {
        bool on = Seen.Now.Pump || Seen.Now.Valves != 0;
        if (Seen.DemandEnded && on)
            Occasion();
        _idle.Set(!Seen.Demand && !Seen.Service && !Seen.Alarmed(Alarm.PumpStuck));
        // Whatever goes on again after the limit is late at once.
        if (_idle.Ms > _limitMs && on && !_on)
            Broken(Why());
        _on = on;
    }

    public override void Pass(int ms)
    {
        int ranOut = _idle.Pass(ms, _limitMs);
        if (_on)
            BrokenIn(ranOut, Why);
    }

    public override void Walk(StateWalk walk)
    {
        _idle.Walk(walk);
        walk.Bool(ref _on);
    }

    private string Why() => "nothing has asked for "
        + $"{Words.Seconds(_limitMs)}, and still on: {(Seen.Now.Pump ? "the pump" : Words.Zones(Seen.Now.Valves))}";
}
