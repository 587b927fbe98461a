namespace ZoneControl.Logic.Tests;

/// <summary>
/// Judges every scan by the rules, from contacts, outputs and settings alone: it works out for itself what is accepted,
/// proven, late and asked, from times of change instead of ages. It must see every scan, in order.
/// </summary>
internal sealed class Judge
{
    private readonly ControllerSettings _s;
    private readonly JudgedContacts _calls;
    private readonly JudgedContacts _switches;
    private readonly JudgedContacts _season;
    private readonly JudgedValves _valves;

    private bool _scanned;
    private long _now;
    private bool _demand;
    private long _demandChanged = long.MinValue / 2;
    private bool _pump;
    private long _pumpStopped = long.MinValue / 2;
    private bool _heat;
    private long _heatStopped = long.MinValue / 2;
    private int _latched;
    private bool _couldRetry;

    public Judge(ControllerSettings settings)
    {
        _s = settings;
        _calls = new JudgedContacts(settings.ZoneCount, settings.CallDebounceMs, 0);
        _switches = new JudgedContacts(settings.ZoneCount, settings.SwitchDebounceMs, 0);
        _season = new JudgedContacts(1, settings.SeasonDebounceMs, 1);
        _valves = new JudgedValves(settings);
    }

    /// <summary>What this scan broke, rule first, or null.</summary>
    public string? Look(long now, InputImage contacts, OutputImage o)
    {
        int zones = (1 << _s.ZoneCount) - 1;
        int rawSwitches = contacts.EndSwitches & _s.SwitchedZones;
        _calls.Look(now, contacts.Calls & zones);
        _switches.Look(now, rawSwitches);
        _season.Look(now, contacts.Lockout ? 1 : 0);
        _now = now;
        string? broken = Accepted(o);
        if (broken != null)
            return At(broken, o);
        if (!_scanned)
        {
            _scanned = true;
            bool quiet = o.PowerUp && (o.Valves | o.ProvenValves | o.LateValves | o.LatchedValves | o.EarlySwitches) == 0
                && !o.Pump && !o.Heat && o.Hold == HoldReason.None;
            return quiet ? null : At("BOOT-SAFE: something is on in the first scan", o);
        }

        if (o.PowerUp)
            return At("BOOT-SAFE: a power-up mark after the first scan", o);
        _valves.Look(now, o, rawSwitches);
        int asked = o.AcceptedLockout ? 0 : o.AcceptedCalls & ~o.LatchedValves;
        bool demandBefore = _demand;
        if ((asked != 0) != _demand)
        {
            _demand = asked != 0;
            _demandChanged = now;
        }

        if (_heat && !o.Heat)
            _heatStopped = now;
        broken = Pump(o) ?? Heat(o, asked) ?? Alarms(o, demandBefore) ?? Valves(o, asked) ?? Why(o, asked);
        Remember(o);
        return broken == null ? null : At(broken, o);
    }

    private string At(string broken, OutputImage o) => $"{broken} (at {_now} ms, {Published.Of(o)})";

    private string? Accepted(OutputImage o)
    {
        if (o.AcceptedCalls != _calls.Accepted)
            return $"debounce: calls accepted should be {_calls.Accepted}";
        if (o.AcceptedSwitches != _switches.Accepted)
            return $"debounce: switches accepted should be {_switches.Accepted}";
        return o.AcceptedLockout == (_season.Accepted != 0) ? null : "debounce: lockout accepted is wrong";
    }

    private bool Enough(int proven) => _s.StandingCapacity + JudgedPlan.Sum(_s, proven) >= _s.MinimumOpen;

    private bool WaterMayMove(OutputImage o) => o.Pump || _pump || _now - _pumpStopped < _s.PumpRundownMs;

    private string? Pump(OutputImage o)
    {
        bool hadProof = Enough(_valves.ProvenBefore);
        if (o.Pump && !Enough(_valves.Proven))
            return "PUMP-PROOF, PUMP-TRIP: the pump is on without proof";
        long since = _now - _demandChanged;
        if (o.Pump && !_pump && (!_demand || since < _s.PumpStartDelayMs))
            return "PUMP-DELAY: the pump started too soon or for nobody";
        if (o.Pump && !_demand && since >= _s.PumpOverrunMs)
            return "PUMP-OVERRUN: the overrun is too long";
        if (o.Pump || !hadProof)
            return null;
        if (_pump && _now - _heatStopped < _s.HeatLeadMs)
            return "HEAT-FIRST-OFF: heat demand went off too late";
        if (_pump && (_demand || since < _s.PumpOverrunMs))
            return "PUMP-OVERRUN: the pump stopped too soon";
        return _demand && since >= _s.PumpStartDelayMs ? "ANSWER-ON: nothing is unmet, yet the pump is off" : null;
    }

    private static string? Heat(OutputImage o, int asked)
    {
        return o.Heat == (o.Pump && asked != 0) ? null : "HEAT-FLOW: heat demand does not go with pump and calls";
    }

    private string? Alarms(OutputImage o, bool demandBefore)
    {
        if (o.ProvenValves != _valves.Proven)
            return $"PUMP-PROOF: proven should be {_valves.Proven}";
        if (o.EarlySwitches != _valves.Early)
            return $"VALVE-EARLY: early should be {_valves.Early}";
        if (o.LateValves != _valves.Late)
            return $"VALVE-LATE: late should be {_valves.Late}";
        if ((_latched & ~o.LatchedValves) != 0 || (o.LatchedValves & (~o.LateValves | o.Valves)) != 0)
            return "VALVE-LATE: a latch was lost, not alarmed or driven";
        bool mayRetry = demandBefore && _couldRetry && (!_pump || Enough(_valves.ProvenBefore));
        bool kept = (_valves.OverdueBefore & ~_valves.ProvenBefore & o.Valves) != 0;
        return mayRetry && kept ? "VALVE-LATE: a late valve is not tried again" : null;
    }

    private string? Valves(OutputImage o, int asked)
    {
        int released = _valves.OnBefore & ~o.Valves;
        bool water = WaterMayMove(o);
        if (water && released != 0 && !Enough(_valves.Proven))
            return "PUMP-ORDER: a valve was released that nothing replaces";
        if (water && released != 0 && !_demand && _now != _demandChanged)
            return "PUMP-OVERRUN: a valve was released before the rundown was over";
        int wanted = JudgedPlan.Wanted(_s, asked, o.LateValves, o.LatchedValves, out _);
        if ((o.Valves & ~_valves.OnBefore & ~wanted) != 0)
            return "OPEN-COMPANION, SEASON-LOCKOUT: a valve was opened for nobody";
        for (int zone = 0; zone < _s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            bool on = (o.Valves & bit) != 0;
            bool asks = (wanted & bit) != 0;
            if (asks && !on && ((o.LateValves & bit) == 0 || _valves.OffFor(zone) >= _s.ClosingMs[zone]))
                return $"OPEN-COMPANION: zone {zone} is wanted and not opened";
            if (!on || asks)
                continue;
            if (!_demand && (!water || _now == _demandChanged && Enough(_valves.Proven) && (_valves.Proven & bit) == 0))
                return $"ANSWER-OFF: zone {zone} is open for nobody";
            bool replaced = Enough(_valves.Proven & ~bit) || !water && (o.LateValves & bit) != 0;
            if (_demand && replaced)
                return $"OPEN-HANDOVER: zone {zone} is replaced and still open";
        }

        return null;
    }

    private string? Why(OutputImage o, int asked)
    {
        JudgedPlan.Wanted(_s, asked, o.LateValves, o.LatchedValves, out bool tooFew);
        HoldReason reason = o switch
        {
            { Pump: true } or { AcceptedCalls: 0 } => HoldReason.None,
            { AcceptedLockout: true } => HoldReason.Lockout,
            _ when asked == 0 => HoldReason.ValveLatched,
            _ when !Enough(_valves.Proven) => tooFew ? HoldReason.TooFewValves : HoldReason.Proof,
            _ => HoldReason.StartDelay,
        };
        return o.Hold == reason ? null : $"ANSWER-WHY: the reason should be {reason}";
    }

    private void Remember(OutputImage o)
    {
        if (_pump && !o.Pump)
            _pumpStopped = _now;
        _pump = o.Pump;
        _heat = o.Heat;
        _latched = o.LatchedValves;
        _couldRetry = o.Pump || _now - _pumpStopped >= _s.PumpRundownMs;
    }
}
