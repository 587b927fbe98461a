using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// HEAT-LIMIT, judged on accepted contacts, so debounce has passed already: two scans after the limit opened pump and heat
/// demand are off and the latch is published. Until a reset that finds the limit closed, or a power-up, the pump is not
/// started.
/// </summary>
internal sealed class HeatLimit(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private DutyClock _running;
    private DutyClock _untold;
    private bool _latched;

    public override void End()
    {
        ForgetTimes();
        _latched = false;
    }

    public override void ForgetTimes()
    {
        _running.Clear();
        _untold.Clear();
    }

    public override void OnFrame()
    {
        if (Seen.ResetPressed)
            _latched = false;
        if (Seen.Is(Contact.Limit))
        {
            if (!_latched)
                Occasion();
            _latched = true;
        }

        if (_latched && Seen.PumpWentOn)
            Broken("the pump was started though the high limit has tripped and nobody has reset it");
        _running.Set(_latched && (Seen.Now.Pump || Seen.Now.Heat));
        _untold.Set(Seen.Alarmed(Alarm.LimitLatched) != _latched);
    }

    public override void Pass(int ms)
    {
        BrokenIn(_running.Pass(ms, TwoScansMs), () => "the high limit has tripped, and two scans later "
            + $"{(Seen.Now.Pump ? "the pump is" : "heat demand is")} still on");
        BrokenIn(_untold.Pass(ms, TwoScansMs), () => _latched
            ? "the high limit has tripped, and no latched alarm says so"
            : "the alarm says that the high limit has tripped, and it has not");
    }

    public override void Walk(StateWalk walk)
    {
        _running.Walk(walk);
        _untold.Walk(walk);
        walk.Bool(ref _latched);
    }
}
