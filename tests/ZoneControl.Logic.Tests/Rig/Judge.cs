namespace ZoneControl.Logic.Tests;

/// <summary>
/// Judges every scan by the rules, from contacts, outputs and settings alone: it works out for itself what is accepted,
/// proven, late and asked, from times of change instead of ages. It must see every scan, in order.
/// </summary>
internal sealed class Judge
{
    private const HoldReason Untold = (HoldReason)(-1); // every condition is met: no reason would be true

    private readonly ControllerSettings _s;
    private readonly JudgedInputs _inputs;
    private readonly JudgedValves _valves;
    private readonly JudgedDemand _demand;
    private readonly JudgedPump _pump;
    private readonly JudgedLate _late;
    private readonly JudgedDrive _drive;

    private bool _scanned;
    private long _now;
    private long _announced;
    private int _stalled;
    private bool _timeFault;
    private bool _tooFew;
    private bool _supplyAwaited; // since power-up it has neither been accepted nor had the time to be
    private long _supplySince;

    public Judge(ControllerSettings settings)
    {
        _s = settings;
        _inputs = new JudgedInputs(settings);
        _valves = new JudgedValves(settings, _inputs);
        _demand = new JudgedDemand(settings, _inputs);
        _pump = new JudgedPump(settings, _inputs);
        _late = new JudgedLate(settings, _valves);
        _drive = new JudgedDrive(settings, _inputs, _valves);
    }

    /// <summary>What this scan broke, rule first, or null.</summary>
    public string? Look(long now, InputImage contacts, OutputImage o)
    {
        bool first = !_scanned;
        _stalled = now == _now && _pump.On ? _stalled + 1 : 0;
        bool fault = !first && (now < _now || _stalled >= _s.StallScans
            || (_announced != ZoneController.Never && now - _announced > _s.StallLimitMs));
        long last = _now;
        (_scanned, _now, _announced) = (true, now, o.NextDeadlineMs);
        _inputs.Look(now, contacts, onlyLook: first || fault);
        AwaitSupply(first, fault);
        string? broken = _inputs.Mistake(o) ?? (first ? PowerUp(o) : fault ? TimeFault(o, last) : Ordinary(o, last));
        return broken == null ? null : $"{broken} (at {_now} ms, {Published.Of(o)})";
    }

    private void AwaitSupply(bool first, bool fault)
    {
        if (first || (fault && _supplyAwaited))
            (_supplyAwaited, _supplySince) = (true, _now);
        else
            _supplyAwaited &= !_inputs.Supplied && _now - _supplySince < Math.Max(1, _s.ContactDebounceMs[Contact.Place(Contact.Supply)]);
    }

    private string? PowerUp(OutputImage o)
    {
        _valves.Begin(_now);
        _pump.PowerUp(_now);
        _demand.Begin(_now, _now);
        int any = o.Valves | o.ProvenValves | o.LateValves | o.LatchedValves | o.EarlySwitches | o.StuckSwitches;
        if (!o.PowerUp || any != 0 || o.Pump || o.Heat || o.Hold != HoldReason.None)
            return "BOOT-SAFE: something is on in the first scan";
        return AlarmMistake(o);
    }

    private string? TimeFault(OutputImage o, long last)
    {
        _timeFault = true;
        _stalled = 0;
        _valves.Begin(_now);
        _pump.Begin(_now);
        _demand.Begin(_now, last);
        if (o.Pump || o.Heat || o.ProvenValves != 0)
            return "TIME-FAULT: something is on or proven";
        if (o.Valves != _drive.Valves)
            return "TIME-FAULT: a valve is not held";
        return o.EarlySwitches != _valves.Early ? $"TIME-FAULT, VALVE-EARLY: early should be {_valves.Early}" : AlarmMistake(o) ?? Why(o);
    }

    private string? Ordinary(OutputImage o, long last)
    {
        if (o.PowerUp)
            return "BOOT-SAFE: a power-up mark after the first scan";
        bool reset = (_inputs.Contacts.Rose & Contact.Reset) != 0;
        if (reset)
        {
            _timeFault = false;
            _demand.ForgetPutOff();
        }

        bool waterBefore = _pump.WaterMayMove(_now);
        // A retry after a rundown may come a scan later than the rundown's end.
        bool waterLast = _pump.WaterMayMove(last);
        _valves.LookAtContacts(_now);
        _pump.LookAtContacts(_now, reset);
        bool enough = JudgedPlan.Enough(_s, _valves.ProvenBefore);
        _pump.Enough = enough;
        _demand.Govern(_now);
        bool trip = !enough || _pump.LimitLatched || _pump.FlowTrip;
        bool mayRetry = _pump.On ? !trip && _demand.KeepsPumpOn : (_demand.Demand || _demand.Service) && !waterLast;
        string? broken = _late.Look(o, reset, mayRetry);
        _demand.Look(_now, o.LatchedValves, _pump.On, _valves, reset, _pump.Forbidden);
        _valves.LookAtOutputs(o.Valves);

        (bool on, string rule) = _pump.Expected(_now, _demand, enough, reset);
        if (o.Pump != on)
            broken ??= $"{rule}: the pump should be {(on ? "on" : "off")}";
        if (o.Heat != _pump.ExpectedHeat(o.Pump, _demand, reset))
            broken ??= "HEAT-FLOW, FREEZE: heat demand does not go with pump, flow and who asks";
        bool waterMayMove = waterBefore || o.Pump;
        int wanted = Wanted(o);
        _pump.LookAtOutputs(_now, o.Pump, o.Heat);
        broken ??= _drive.Look(_now, o, wanted, _late.Resting, _demand, waterMayMove, reset) ?? ZoneMistake(o) ?? AlarmMistake(o) ?? Why(o);
        return broken;
    }

    private int Wanted(OutputImage o)
    {
        _tooFew = false;
        if (_demand.Service)
            return o.AcceptedHands & ~o.LatchedValves;
        if (_demand.Asked == 0 && !_pump.Stuck)
            return 0;
        return JudgedPlan.Wanted(_s, _demand.Asked, o.LateValves | o.StuckSwitches, o.LatchedValves, out _tooFew);
    }

    private string? ZoneMistake(OutputImage o)
    {
        if (o.ProvenValves != _valves.Proven)
            return $"PUMP-PROOF, VALVE-SUPPLY, GATE: proven should be {_valves.Proven}";
        if (o.EarlySwitches != _valves.Early)
            return $"VALVE-EARLY: early should be {_valves.Early}";
        if (o.StuckSwitches != _valves.Stuck)
            return $"VALVE-STUCK: stuck should be {_valves.Stuck}";
        return o.LateValves == _valves.Late ? null : $"VALVE-LATE: late should be {_valves.Late}";
    }

    private string? AlarmMistake(OutputImage o)
    {
        int alarms = 0;
        Raise(_pump.FlowTries > 0, Alarm.FlowTrip);
        Raise(_pump.FlowLatched, Alarm.FlowLatched);
        Raise(_pump.Stuck, Alarm.PumpStuck);
        Raise(_pump.LimitLatched, Alarm.LimitLatched);
        Raise(_inputs.Is(Contact.Freeze) && _inputs.Is(Contact.Lockout), Alarm.FrostInLockout);
        Raise(_inputs.Is(Contact.Priority) && !_demand.Priority, Alarm.PriorityLong);
        Raise(_demand.PutOff, Alarm.ExercisePutOff);
        Raise(_timeFault, Alarm.TimeFault);
        Raise(!_inputs.Supplied && !_supplyAwaited, Alarm.NoSupply);
        Raise(_inputs.AnyHand && !_demand.Service, Alarm.ServiceEnded);
        return o.Alarms == alarms ? null : $"ALARM-LATCH: alarms should be {alarms:b}, not {o.Alarms:b}";

        void Raise(bool cause, int alarm) => alarms |= cause ? alarm : 0;
    }

    private string? Why(OutputImage o)
    {
        HoldReason reason = o.Pump ? HoldReason.None : _demand.PumpWanted ? Unmet() : Withheld();
        return o.Hold == reason ? null : $"ANSWER-WHY: the reason should be {reason}";
    }

    private HoldReason Unmet()
    {
        if (_pump.LimitLatched)
            return HoldReason.Limit;
        if (_pump.FlowLatched)
            return HoldReason.FlowLatched;
        if (_pump.Stuck)
            return HoldReason.PumpStuck;
        if (!JudgedPlan.Enough(_s, _valves.Proven))
            return !_inputs.Supplied ? HoldReason.Supply : _tooFew ? HoldReason.TooFewValves : HoldReason.Proof;
        if (_pump.DelayLeft(_now, _demand) > 0)
            return HoldReason.StartDelay;
        if (_pump.RestLeft(_now) > 0)
            return HoldReason.Rest;
        return (_inputs.Contacts.Rose & Contact.Reset) != 0 ? HoldReason.Reset : Untold;
    }

    private HoldReason Withheld()
    {
        if (_inputs.Calls == 0)
            return HoldReason.None;
        if (_demand.Service)
            return HoldReason.Service;
        return _demand.Priority ? HoldReason.Priority : _inputs.Is(Contact.Lockout) ? HoldReason.Lockout : HoldReason.ValveLatched;
    }
}
