using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// What the channels show, worked out once a frame for all monitors: how long valves have been energised, what is proven
/// and by how much, what is asked. It never sees the controller's inside.
/// </summary>
/// <remarks>
/// Between frames time passes in spans within which nothing here changes but ages (<see cref="MsToNextChange"/>), so that a
/// monitor may take everything here as constant while a span passes. At a frame, contacts are read with the valves as they
/// stood before it: <see cref="Held"/> is what would be proven had this scan released nothing.
/// </remarks>
internal sealed class Evidence
{
    private readonly int _all;
    private readonly ValveStretches _valves;
    private int _demandMs;
    private int _offMs;
    private bool _fresh;
    private bool _outage;

    public Evidence(ControllerSettings house, Func<int, string> nameOf)
    {
        House = house;
        Words = new Words(nameOf);
        _all = (1 << house.ZoneCount) - 1;
        _valves = new ValveStretches(house);
        Forget();
    }

    /// <summary>What the house file says to a controller.</summary>
    public ControllerSettings House { get; }

    public Words Words { get; }

    /// <summary>The present moment, ms from the start of the run. For reports only: no part of the state.</summary>
    public long NowMs { get; set; }

    /// <summary>The frame before this one; all off after a power-up.</summary>
    public Frame Was { get; private set; }

    /// <summary>The frame that holds now.</summary>
    public Frame Now { get; private set; }

    /// <summary>Zones proven just before this frame.</summary>
    public int ProvenBefore { get; private set; }

    /// <summary>Zones that this frame's contacts prove, with the valves as they stood before it.</summary>
    public int Held { get; private set; }

    /// <summary>Zones that waited for their proof up to the limit, with the valves as they stood before this frame.</summary>
    public int HeldOverdue { get; private set; }

    /// <summary>Zones that had been released for their closing time just before this frame.</summary>
    public int ShutBefore { get; private set; }

    /// <summary>Zones whose call is accepted and withheld by nothing, before this frame.</summary>
    public int AskedBefore { get; private set; }

    /// <summary>Zones proven now.</summary>
    public int Proven => _valves.Proven;

    /// <summary>
    /// Switched zones whose proof a scan has seen: it was there at a frame, or has stood for a scan period. A full opening
    /// time may pass and a switch open again between two scans; then there was no proof for anybody to act on.
    /// </summary>
    public int Confirmed => _valves.Confirmed;

    /// <summary>Zones whose call is accepted and withheld by nothing: neither lockout nor a latched valve.</summary>
    public int Asked { get; private set; }

    /// <summary>Switched zones energised, not proven, and waiting for it for their whole limit.</summary>
    public int Overdue => _valves.Overdue;

    /// <summary>Zones released for their closing time.</summary>
    public int Shut => _valves.Shut;

    /// <summary>Which companions belong to the asked zones now.</summary>
    public CompanionPlan Plan { get; private set; }

    /// <summary>Proven capacity now, standing capacity included.</summary>
    public int Capacity { get; private set; }

    /// <summary>Energised zones whose switch was made at once, or made too soon, in this stretch.</summary>
    public int Early => _valves.Early;

    /// <summary>Energised zones with a made switch that is not yet believed because it made too soon.</summary>
    public int Doubted => _valves.Doubted;

    /// <summary>Energised zones that have been so for their full opening time.</summary>
    public int FullyOpened => _valves.FullyOpened;

    public int CapacityBefore => CapacityOf(ProvenBefore);

    public int HeldCapacity => CapacityOf(Held);

    public int MinimumOpen => House.MinimumOpen;

    public bool Demand => Asked != 0;

    public bool DemandEnded => Asked == 0 && AskedBefore != 0;

    /// <summary>Time since demand rose from none, ms, never more than the start delay.</summary>
    public int DemandMs => _demandMs;

    public bool PumpWentOn => Now.Pump && !Was.Pump;

    public bool PumpWentOff => Was.Pump && !Now.Pump;

    /// <summary>The pump is off and still runs down.</summary>
    public bool InRundown => !Now.Pump && _offMs < House.PumpRundownMs;

    public int Released => Was.Valves & ~Now.Valves;

    public int Energised => Now.Valves & ~Was.Valves;

    /// <summary>This frame is the first since power came back, and the frame before had no supply.</summary>
    public bool AfterOutage { get; private set; }

    /// <summary>Standing capacity plus that of the zones in a mask.</summary>
    public int CapacityOf(int zones) => House.StandingCapacity + Capacities.Of(House, zones);

    /// <summary>Power is lost or comes back: nothing counts any more, nothing is asked, nothing runs down.</summary>
    public void Forget()
    {
        _outage = Now.Unpowered;
        _fresh = true;
        Now = new Frame { Ms = NowMs };
        Was = Now;
        _valves.Forget();
        Held = HeldOverdue = Asked = 0;
        _demandMs = 0;
        _offMs = House.PumpRundownMs;
        Derive();
    }

    /// <summary>A frame without supply: nothing is judged until the next power-up.</summary>
    public void Outage(in Frame frame)
    {
        Forget();
        Now = new Frame { Ms = frame.Ms, Unpowered = true };
    }

    /// <summary>A frame with only this house's zones in its masks.</summary>
    public Frame Clean(in Frame frame) => frame with
    {
        Calls = frame.Calls & _all,
        EndSwitches = frame.EndSwitches & House.SwitchedZones,
        Valves = frame.Valves & _all,
        LateValves = frame.LateValves & _all,
        LatchedValves = frame.LatchedValves & _all,
        EarlySwitches = frame.EarlySwitches & _all,
    };

    /// <summary>The next scan's frame, already cleaned.</summary>
    public void Take(in Frame frame)
    {
        ProvenBefore = Proven;
        AskedBefore = Asked;
        ShutBefore = Shut;
        AfterOutage = _fresh && _outage;
        _fresh = false;
        Was = Now;
        Now = frame;
        _valves.ReadSwitches(Was, Now);
        Held = _valves.Proven;
        HeldOverdue = _valves.Overdue;
        _valves.Move(Was, Now);
        Asked = Now.Lockout ? 0 : Now.Calls & ~Now.LatchedValves;
        if (AskedBefore == 0 || Asked == 0)
            _demandMs = 0;
        if (Now.Pump)
            _offMs = House.PumpRundownMs;
        else if (PumpWentOff)
            _offMs = 0;
        Derive();
    }

    /// <summary>Time until something here changes by itself, ms; <see cref="int.MaxValue"/> when only a frame can.</summary>
    public int MsToNextChange()
    {
        int next = _valves.MsToNextChange();
        if (Demand)
            ValveStretches.Sooner(ref next, House.PumpStartDelayMs - _demandMs);
        if (InRundown)
            ValveStretches.Sooner(ref next, House.PumpRundownMs - _offMs);
        return next;
    }

    /// <summary>Lets time pass, no further than <see cref="MsToNextChange"/>.</summary>
    public void Pass(int ms)
    {
        NowMs += ms;
        _valves.Pass(ms);
        if (Demand)
            ValveStretches.Age(ref _demandMs, ms, House.PumpStartDelayMs);
        if (!Now.Pump)
            ValveStretches.Age(ref _offMs, ms, House.PumpRundownMs);
        Derive();
    }

    /// <summary>Names the state for saving and loading.</summary>
    public void Walk(StateWalk walk)
    {
        Frame now = Now;
        int flags = Pack(now);
        int calls = now.Calls, switches = now.EndSwitches, valves = now.Valves;
        int late = now.LateValves, latched = now.LatchedValves, early = now.EarlySwitches;
        walk.Int(ref flags);
        walk.Int(ref calls);
        walk.Int(ref switches);
        walk.Int(ref valves);
        walk.Int(ref late);
        walk.Int(ref latched);
        walk.Int(ref early);
        Now = Unpack(flags) with
        {
            Ms = NowMs,
            Calls = calls,
            EndSwitches = switches,
            Valves = valves,
            LateValves = late,
            LatchedValves = latched,
            EarlySwitches = early,
        };
        _valves.Walk(walk, Now);
        walk.Int(ref _demandMs);
        walk.Int(ref _offMs);
        Asked = Now.Lockout ? 0 : Now.Calls & ~Now.LatchedValves;
        Derive();
    }

    private static int Pack(in Frame f) =>
        (f.PowerUp ? 1 : 0) | (f.Unpowered ? 2 : 0) | (f.Lockout ? 4 : 0) | (f.Pump ? 8 : 0) | (f.Heat ? 16 : 0) | ((int)f.Hold << 5);

    private static Frame Unpack(int flags) => new()
    {
        Ms = 0,
        PowerUp = (flags & 1) != 0,
        Unpowered = (flags & 2) != 0,
        Lockout = (flags & 4) != 0,
        Pump = (flags & 8) != 0,
        Heat = (flags & 16) != 0,
        Hold = (HoldReason)(flags >> 5),
    };

    private void Derive()
    {
        Capacity = CapacityOf(Proven);
        Plan = CompanionPlan.For(House, Asked, Now.LateValves, Now.LatchedValves);
    }
}
