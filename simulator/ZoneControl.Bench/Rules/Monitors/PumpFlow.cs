using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-FLOW, where a flow switch is fitted: a running pump without flow for its limit is off within two scans. Each such
/// stop is counted, alarmed while the count stands, and latched when the retries are used up; an orderly stop, a reset and a
/// power-up clear the count. The alarms follow within two scans, and neither comes without its cause.
/// </summary>
internal sealed class PumpFlow(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private DutyClock _dry;
    private DutyClock _untold;
    private DutyClock _unlatched;
    private int _trips;
    private bool _latched;

    public override void End()
    {
        ForgetTimes();
        _trips = 0;
        _latched = false;
    }

    public override void ForgetTimes()
    {
        _dry.Clear();
        _untold.Clear();
        _unlatched.Clear();
    }

    public override void OnFrame()
    {
        if (!Seen.House.Has(Contact.Flow))
            return;
        if (Seen.ResetPressed)
        {
            _trips = 0;
            _latched = false;
        }

        if (Seen.PumpWentOn)
        {
            Occasion();
            if (_latched)
                Broken("the pump went on though want of flow is latched");
        }

        if (Seen.PumpWentOff)
            CountStop();
        SetClocks();
    }

    public override void OnTime() => SetClocks();

    public override void Pass(int ms)
    {
        BrokenIn(_dry.Pass(ms, TwoScansMs), () =>
            $"the pump has run without flow for {Words.Seconds(Seen.Pump.FlowLimitMs)}, and two scans later is still on");
        BrokenIn(_untold.Pass(ms, TwoScansMs), () => _trips > 0
            ? "the pump was tripped for want of flow, and no alarm says so"
            : "the alarm says that the pump was tripped for want of flow, and it was not");
        BrokenIn(_unlatched.Pass(ms, TwoScansMs), () => _latched
            ? $"the pump was tripped for want of flow after {Seen.House.FlowRetries} retries, and that is not latched"
            : $"want of flow is latched after {_trips} of {Seen.House.FlowRetries} retries");
    }

    public override void Walk(StateWalk walk)
    {
        _dry.Walk(walk);
        _untold.Walk(walk);
        _unlatched.Walk(walk);
        walk.Int(ref _trips);
        walk.Bool(ref _latched);
    }

    private void CountStop()
    {
        if (!Seen.HeldFlowOverdue)
        {
            if (!Seen.ForcedStop)
                _trips = 0;
            return;
        }

        Occasion();
        if (_trips >= Seen.House.FlowRetries)
            _latched = true;
        else
            _trips++;
    }

    private void SetClocks()
    {
        if (!Seen.House.Has(Contact.Flow))
            return;
        _dry.Set(Seen.Pump.FlowOverdue);
        _untold.Set(Seen.Alarmed(Alarm.FlowTrip) != (_trips > 0));
        _unlatched.Set(Seen.Alarmed(Alarm.FlowLatched) != _latched);
    }
}
