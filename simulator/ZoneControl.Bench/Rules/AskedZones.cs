using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// What asks for the pump, as the channels show it: calls and the freeze contact by the contacts, an exercise by what
/// cannot be explained otherwise.
/// </summary>
/// <remarks>
/// An exercise is no channel of its own. It has begun when it is due, nothing else asks, and the published reason, a valve or
/// the pump shows that the pump is wanted. With the pump on, its end and the beginning of its overrun look alike.
/// </remarks>
internal sealed class AskedZones(ControllerSettings house)
{
    private int _demandMs;
    private int _callsMs;

    public int Callers { get; private set; }

    public int Zones { get; private set; }

    public bool Exercising { get; private set; }

    public bool Service { get; private set; }

    public bool PriorityHolds { get; private set; }

    public int DemandMs => _demandMs;

    public bool DelayUnsure => Callers != 0 && _callsMs < house.PumpStartDelayMs && _callsMs < _demandMs;

    public void Forget()
    {
        Callers = Zones = _demandMs = _callsMs = 0;
        Exercising = Service = PriorityHolds = false;
    }

    public void ForgetTimes() => _demandMs = _callsMs = 0;

    /// <summary>What asks in this frame has done so for its start delay.</summary>
    public void Presume(in Frame now)
    {
        Forget();
        Ask(now);
        SetZones(now);
        _demandMs = Zones != 0 ? house.PumpStartDelayMs : 0;
        _callsMs = Callers != 0 ? house.PumpStartDelayMs : 0;
    }

    public void Take(in Frame was, in Frame now, bool exerciseMayBegin, bool resetPressed)
    {
        bool demandBefore = Zones != 0;
        bool callsBefore = Callers != 0;
        bool began = now.Hold >= HoldReason.Limit || (now.Pump && !was.Pump)
            || ((now.Valves & ~was.Valves) != 0 && (now.Alarms & Alarm.PumpStuck) == 0);
        bool goesOn = now.Pump || now.Hold >= HoldReason.Limit;
        bool shown = Exercising ? goesOn : exerciseMayBegin && began;
        Ask(now);
        Exercising = shown && Callers == 0 && !Service && !now.PowerUp;
        SetZones(now);
        // ALARM-LATCH: standing demand goes through its delay again.
        bool again = resetPressed && !was.Pump;
        if (!demandBefore || Zones == 0 || again)
            _demandMs = 0;
        if (!callsBefore || Callers == 0 || again)
            _callsMs = 0;
    }

    public int MsToNextChange()
    {
        int next = int.MaxValue;
        if (Zones != 0)
            ValveStretches.Sooner(ref next, house.PumpStartDelayMs - _demandMs);
        if (Callers != 0)
            ValveStretches.Sooner(ref next, house.PumpStartDelayMs - _callsMs);
        return next;
    }

    public void Pass(int ms)
    {
        if (Zones != 0)
            ValveStretches.Age(ref _demandMs, ms, house.PumpStartDelayMs);
        if (Callers != 0)
            ValveStretches.Age(ref _callsMs, ms, house.PumpStartDelayMs);
    }

    public void Walk(StateWalk walk)
    {
        int callers = Callers, zones = Zones;
        bool exercising = Exercising, service = Service, priority = PriorityHolds;
        walk.Int(ref callers);
        walk.Int(ref zones);
        walk.Bool(ref exercising);
        walk.Bool(ref service);
        walk.Bool(ref priority);
        walk.Int(ref _demandMs);
        walk.Int(ref _callsMs);
        Callers = callers;
        Zones = zones;
        Exercising = exercising;
        Service = service;
        PriorityHolds = priority;
    }

    private void Ask(in Frame now)
    {
        bool hands = now.Hands != 0 || (now.Contacts & Contact.ServicePump) != 0;
        Service = hands && (now.Alarms & Alarm.ServiceEnded) == 0;
        PriorityHolds = (now.Contacts & Contact.Priority) != 0 && (now.Alarms & Alarm.PriorityLong) == 0;
        int calls = (now.Calls | now.Senses) & ~now.LatchedValves;
        if (Service)
            Callers = 0;
        else if ((now.Contacts & Contact.Freeze) != 0)
            Callers = calls | (house.DrivenZones & ~now.LatchedValves);
        else
            Callers = PriorityHolds || now.Lockout ? 0 : calls;
    }

    private void SetZones(in Frame now) =>
        Zones = Exercising ? house.DrivenZones & ~now.LatchedValves : Callers;
}
