namespace ZoneControl.Logic.Tests;

/// <summary>Pump, flow and heat as the judge expects them: from the moments of starts, stops and changes of flow.</summary>
internal sealed class JudgedPump(ControllerSettings s, JudgedInputs inputs)
{
    private const long LongAgo = long.MinValue / 4;

    private long _flowChanged = LongAgo;
    private bool _flowSeen;
    private long _started;
    private long _restSince;
    private long _heatOff = LongAgo;
    private long _frostHeatMs;
    private long _last;

    public bool On { get; private set; }

    public bool Heat { get; private set; }

    /// <summary>When it last stopped; long ago after power-up, whose rest is counted apart.</summary>
    public long Stopped { get; private set; } = LongAgo;

    public int FlowTries { get; private set; }

    public bool FlowLatched { get; private set; }

    public bool LimitLatched { get; private set; }

    /// <summary>PUMP-STUCK: flow although the pump is off.</summary>
    public bool Stuck { get; private set; }

    /// <summary>The pump must stop for want of flow in this scan.</summary>
    public bool FlowTrip { get; private set; }

    public bool Forbidden => LimitLatched || FlowLatched || Stuck;

    /// <summary>Water may be moving, or may have been until this scan.</summary>
    public bool WaterMayMove(long now) => On || now - Stopped < s.PumpRundownMs || inputs.Flow;

    /// <summary>Power-up: a stop and a start are assumed, so the rest begins.</summary>
    public void PowerUp(long now) => (_started, _restSince, _last) = (now, now, now);

    /// <summary>A clock that cannot be trusted: off, and everything begins anew but what has been counted.</summary>
    public void Begin(long now)
    {
        (On, Heat, _flowSeen) = (false, false, false);
        (Stopped, _started, _restSince, _heatOff, _flowChanged, _last) = (now, now, now, now, now, now);
    }

    public void LookAtContacts(long now, bool reset)
    {
        if (reset)
            (FlowLatched, LimitLatched, FlowTries) = (false, false, 0);
        LimitLatched |= inputs.Is(Contact.Limit);
        FlowTrip = false;
        bool frost = inputs.Was(Contact.Lockout) && inputs.Was(Contact.Freeze);
        _frostHeatMs = !inputs.Is(Contact.Freeze) ? 0 : Heat && frost ? _frostHeatMs + now - _last : _frostHeatMs;
        _last = now;
        if (!inputs.FlowFitted)
            return;
        if (((inputs.Contacts.Rose | inputs.Contacts.Fell) & Contact.Flow) != 0)
            _flowChanged = now;
        if (On)
            LookForFlow(now);
        else
            LookForStrayFlow(now);
    }

    private void LookForFlow(long now)
    {
        _flowSeen |= inputs.Flow;
        int limit = _flowSeen ? s.FlowLossMs : s.FlowProofMs;
        FlowTrip = !inputs.Flow && now - Math.Max(_started, _flowChanged) >= limit;
        if (FlowTrip && FlowTries >= s.FlowRetries)
            FlowLatched = true;
        else if (FlowTrip)
            FlowTries++;
    }

    private void LookForStrayFlow(long now)
    {
        _flowSeen = false;
        if (inputs.Flow)
            Stuck |= now - Stopped >= s.PumpRundownMs;
        else if (now - _flowChanged >= s.PumpRundownMs)
            Stuck = false;
    }

    /// <summary>Whether the pump is to be on after this scan, and by which rule.</summary>
    public (bool On, string Rule) Expected(long now, JudgedDemand d, bool enough, bool reset)
    {
        if (!enough)
            return (false, "PUMP-PROOF, PUMP-TRIP");
        if (LimitLatched)
            return (false, "HEAT-LIMIT");
        if (On && FlowTrip)
            return (false, "PUMP-FLOW");
        return On ? ExpectedRunning(now, d) : ExpectedStart(now, d, reset);
    }

    private (bool On, string Rule) ExpectedRunning(long now, JudgedDemand d)
    {
        if (d.PumpWanted)
            return (true, "PUMP-OVERRUN, ANSWER-ON");
        if (Heat || now - _heatOff < s.HeatLeadMs)
            return (true, "HEAT-FIRST-OFF");
        if (d.Service)
            return (false, "SERVICE");
        if (d.Priority)
            return (false, "PRIORITY");
        return (now - d.Since < s.PumpOverrunMs, "PUMP-OVERRUN");
    }

    private (bool On, string Rule) ExpectedStart(long now, JudgedDemand d, bool reset)
    {
        if (!d.PumpWanted)
            return (false, "PUMP-DELAY: for nobody");
        if (FlowLatched)
            return (false, "PUMP-FLOW");
        if (Stuck)
            return (false, "PUMP-STUCK");
        if (DelayLeft(now, d) > 0)
            return (false, "PUMP-DELAY");
        if (RestLeft(now) > 0)
            return (false, "PUMP-REST");
        return reset ? (false, "ALARM-LATCH") : (true, "ANSWER-ON");
    }

    public long DelayLeft(long now, JudgedDemand d) => d.Service ? 0 : s.PumpStartDelayMs - (now - d.Since);

    public long RestLeft(long now) =>
        Math.Max(s.PumpMinOffMs - (now - _restSince), s.PumpStartIntervalMs - (now - _started));

    /// <summary>Whether heat is to be asked for after this scan.</summary>
    public bool ExpectedHeat(bool pump, JudgedDemand d, bool reset)
    {
        bool frostTimeLeft = !(d.Frost && inputs.Is(Contact.Lockout)) || _frostHeatMs < s.FreezeHeatMaxMs;
        return pump && d.ForHeat && frostTimeLeft && !inputs.Is(Contact.Limit) && (inputs.Flow || !inputs.FlowFitted) && (Heat || !reset);
    }

    public void LookAtOutputs(long now, bool pump, bool heat)
    {
        if (Heat && !heat)
            _heatOff = now;
        if (pump && !On)
            _started = now;
        if (On && !pump)
        {
            Stopped = now;
            _restSince = now;
            if (!FlowTrip && !LimitLatched && Enough)
                FlowTries = 0;
        }

        (On, Heat) = (pump, heat);
    }

    /// <summary>Proven capacity is enough in this scan: what tells an orderly stop from a trip.</summary>
    public bool Enough { get; set; }
}
