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
/// stood before it: <see cref="Held"/> is what would be proven had this scan released nothing. Published alarms are taken at
/// their word by all monitors but the one whose rule they belong to.
/// </remarks>
internal sealed class Evidence
{
    private readonly int _all;
    private readonly ValveStretches _valves;
    private readonly PumpClocks _pump;
    private readonly AskedZones _asked;
    private bool _fresh;
    private bool _outage;

    public Evidence(ControllerSettings house, Func<int, string> nameOf)
    {
        House = house;
        Words = new Words(nameOf);
        _all = (1 << house.ZoneCount) - 1;
        _valves = new ValveStretches(house);
        _pump = new PumpClocks(house);
        _asked = new AskedZones(house);
        Forget();
    }

    /// <summary>What the house file says to a controller.</summary>
    public ControllerSettings House { get; }

    public Words Words { get; }

    /// <summary>The present moment, ms from the start of the run. For reports only: no part of the state.</summary>
    public long NowMs { get; set; }

    /// <summary>What the time of this frame's scan says of its clock. For this frame only: no part of the state.</summary>
    public ClockSign Clock { get; set; }

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

    /// <summary>Zones that were asked before this frame.</summary>
    public int AskedBefore { get; private set; }

    /// <summary>An exercise was seen before this frame.</summary>
    public bool ExercisingBefore { get; private set; }

    /// <summary>The pump ran without flow for its limit, as this frame's contacts and the pump before it have it.</summary>
    public bool HeldFlowOverdue { get; private set; }

    /// <summary>Zones proven now.</summary>
    public int Proven => _valves.Proven;

    /// <summary>
    /// Switched zones whose proof a scan has seen: it was there at a frame, or has stood for a scan period. A full opening
    /// time may pass and a switch open again between two scans; then there was no proof for anybody to act on.
    /// </summary>
    public int Confirmed => _valves.Confirmed;

    /// <summary>Zones that demand asks for, latched ones left out: <see cref="Callers"/>, or those of an exercise.</summary>
    public int Asked => _asked.Zones;

    /// <summary>Zones that a call asks for which nothing withholds, or the freeze contact.</summary>
    public int Callers => _asked.Callers;

    /// <summary>Nothing but an exercise can explain what is shown.</summary>
    public bool Exercising => _asked.Exercising;

    /// <summary>The pump runs in an exercise: whether that is over and its overrun has begun is not to be seen.</summary>
    public bool DemandUnsure => Exercising && Now.Pump;

    /// <summary>A hand governs valves and pump.</summary>
    public bool Service => _asked.Service;

    /// <summary>Calls are withheld for domestic hot water.</summary>
    public bool PriorityHolds => _asked.PriorityHolds;

    /// <summary>Open zones not proven and waiting for it for their whole limit.</summary>
    public int Overdue => _valves.Overdue;

    /// <summary>Zones released for their closing time.</summary>
    public int Shut => _valves.Shut;

    /// <summary>Which companions belong to the asked zones now.</summary>
    public CompanionPlan Plan { get; private set; }

    /// <summary>Proven capacity now, standing capacity included.</summary>
    public int Capacity { get; private set; }

    /// <summary>Energised zones, driven or sensed.</summary>
    public int Open => _valves.Open;

    /// <summary>Energised zones whose switch was made at once, or made too soon, in this stretch.</summary>
    public int Early => _valves.Early;

    /// <summary>Energised zones with a made switch that is not yet believed because it made too soon.</summary>
    public int Doubted => _valves.Doubted;

    /// <summary>Zones whose switch stayed made after their valve was released for its closing time, until it opens.</summary>
    public int Stuck => _valves.Stuck;

    /// <summary>Energised zones that have been so for their full opening time.</summary>
    public int FullyOpened => _valves.FullyOpened;

    public int CapacityBefore => CapacityOf(ProvenBefore);

    public int HeldCapacity => CapacityOf(Held);

    public int MinimumOpen => House.MinimumOpen;

    public bool Demand => Asked != 0;

    public bool DemandEnded => Asked == 0 && AskedBefore != 0;

    /// <summary>Time since demand rose from none, ms, never more than the start delay.</summary>
    public int DemandMs => _asked.DemandMs;

    /// <summary>
    /// Calls took over from an exercise whose end was not to be seen: the start delay may or may not count from them.
    /// </summary>
    public bool DelayUnsure => _asked.DelayUnsure;

    public bool PumpWentOn => Now.Pump && !Was.Pump;

    public bool PumpWentOff => Was.Pump && !Now.Pump;

    public PumpClocks Pump => _pump;

    /// <summary>The pump is off and still runs down.</summary>
    public bool InRundown => _pump.InRundown;

    /// <summary>The pump is off, and runs down or is still seen to move water.</summary>
    public bool Settling => !Now.Pump && (InRundown || Is(Contact.Flow));

    public int Released => Was.Valves & ~Now.Valves;

    public int Energised => Now.Valves & ~Was.Valves;

    /// <summary>Driven and gated valves that this frame opens.</summary>
    public int Opened { get; private set; }

    /// <summary>This frame is the first since power came back, and the frame before had no supply.</summary>
    public bool AfterOutage { get; private set; }

    /// <summary>The clock of this frame's scan cannot be trusted, or the controller newly says so.</summary>
    public bool TimeFault { get; private set; }

    /// <summary>The reset button went down in this frame.</summary>
    public bool ResetPressed => Is(Contact.Reset) && (Was.Contacts & Contact.Reset) == 0;

    /// <summary>The actuators have their supply, as far as anybody senses it.</summary>
    public bool Supplied => !House.Has(Contact.Supply) || Is(Contact.Supply);

    /// <summary>What stops the pump without order in this frame: proof lost, a limit, want of flow, or the clock.</summary>
    public bool ForcedStop =>
        HeldCapacity < MinimumOpen || TimeFault || HeldFlowOverdue || Alarmed(Alarm.LimitLatched) || Is(Contact.Limit);

    /// <summary>Whether a contact is accepted as asserted.</summary>
    public bool Is(int contact) => (Now.Contacts & contact) != 0;

    /// <summary>Whether an alarm is published.</summary>
    public bool Alarmed(int alarm) => (Now.Alarms & alarm) != 0;

    /// <summary>Standing capacity plus that of the zones in a mask.</summary>
    public int CapacityOf(int zones) => House.StandingCapacity + Capacities.Of(House, zones);

    /// <summary>
    /// Those of the zones that are to be opened for which the transformer has room now, whichever of the zones that
    /// <paramref name="mayOpen"/> is taken first.
    /// </summary>
    public int WithRoom(int missing, int mayOpen)
    {
        if (House.TransformerDeciVa == 0 || missing == 0)
            return missing;
        int load = 0;
        int inrush = 0;
        for (int zone = 0; zone < House.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((Now.Valves & bit) != 0)
                load += _valves.EnergisedMs(zone) < House.InrushMs[zone] ? House.InrushDeciVa[zone] : House.HoldDeciVa[zone];
            else if (((missing | mayOpen) & bit) != 0)
                inrush = Math.Max(inrush, House.InrushDeciVa[zone]);
        }

        return load + inrush <= House.TransformerDeciVa ? missing : 0;
    }

    /// <summary>Power is lost or comes back: nothing counts any more, nothing is asked, nothing runs down.</summary>
    public void Forget()
    {
        _outage = Now.Unpowered;
        _fresh = true;
        Now = new Frame { Ms = NowMs };
        Was = Now;
        _valves.Forget();
        _pump.Forget();
        _asked.Forget();
        Held = HeldOverdue = Opened = 0;
        HeldFlowOverdue = TimeFault = false;
        Derive();
    }

    /// <summary>A frame, already cleaned, of which nobody knows what came before it (<see cref="MonitorSet.Resume"/>).</summary>
    public void Presume(in Frame frame)
    {
        Forget();
        Now = Was = frame with { PowerUp = false };
        _outage = _fresh = false;
        _valves.Presume(Now);
        _pump.Presume(Now);
        _asked.Presume(Now);
        ProvenBefore = Held = Proven;
        Derive();
    }

    /// <summary>A frame without supply: nothing is judged until the next power-up.</summary>
    public void Outage(in Frame frame)
    {
        Forget();
        Now = new Frame { Ms = frame.Ms, Unpowered = true };
    }

    /// <summary>A frame with only this house's zones and contacts in its masks.</summary>
    public Frame Clean(in Frame frame) => frame with
    {
        Calls = frame.Calls & House.DrivenZones,
        EndSwitches = frame.EndSwitches & House.SwitchedZones,
        Senses = frame.Senses & House.GatedZones,
        Hands = frame.Hands & House.DrivenZones,
        Contacts = frame.Contacts & House.FittedContacts,
        Valves = frame.Valves & _all,
        LateValves = frame.LateValves & _all,
        LatchedValves = frame.LatchedValves & _all,
        EarlySwitches = frame.EarlySwitches & _all,
        StuckSwitches = frame.StuckSwitches & _all,
        ProvenValves = 0, // never read
        ClockAheadMs = 0, // read by ScanClock
    };

    /// <summary>Whether a frame's scan cannot trust its clock, or the controller newly says so.</summary>
    public bool IsTimeFault(in Frame frame, bool clockFails) =>
        clockFails || (frame.Alarms & ~Now.Alarms & Alarm.TimeFault) != 0;

    /// <summary>The next scan's frame, already cleaned.</summary>
    public void Take(in Frame frame, bool timeFault)
    {
        ProvenBefore = Proven;
        AskedBefore = Asked;
        ExercisingBefore = Exercising;
        ShutBefore = Shut;
        int openBefore = Open;
        AfterOutage = _fresh && _outage;
        _fresh = false;
        TimeFault = timeFault;
        AtFrame = true;
        Was = Now;
        Now = frame;
        _valves.ReadContacts(Was, Now);
        _pump.ReadFlow(Was, Now);
        if (timeFault)
        {
            _valves.ForgetTimes(Now);
            _pump.ForgetTimes(Now);
            _asked.ForgetTimes();
        }

        Held = _valves.Proven;
        HeldOverdue = _valves.Overdue;
        HeldFlowOverdue = _pump.FlowOverdue && !timeFault;
        bool exerciseMayBegin = _pump.ExerciseMayBegin;
        _valves.Move(Now);
        _pump.Move(Was, Now);
        Opened = Open & ~openBefore;
        _asked.Take(Was, Now, exerciseMayBegin, ResetPressed);
        if (ExercisingBefore && !Exercising && !Now.Pump && Alarmed(Alarm.ExercisePutOff))
            _pump.PutOff();
        Derive();
    }

    /// <summary>Time until something here changes by itself, ms; <see cref="int.MaxValue"/> when only a frame can.</summary>
    public int MsToNextChange()
    {
        int next = Math.Min(_valves.MsToNextChange(), _pump.MsToNextChange(Now));
        return Math.Min(next, _asked.MsToNextChange());
    }

    /// <summary>More than one scan has been made at one time by the controller's clock.</summary>
    public void NoteStandingClock() => _valves.NoteStandingClock();

    /// <summary>Time is about to pass.</summary>
    public void LeaveFrame() => AtFrame = false;

    /// <summary>Lets time pass, no further than <see cref="MsToNextChange"/>.</summary>
    public void Pass(int ms)
    {
        NowMs += ms;
        _valves.Pass(ms);
        _pump.Pass(ms, Now);
        _asked.Pass(ms);
        Derive();
    }

    /// <summary>True while this frame is being judged, false once time has passed since.</summary>
    public bool AtFrame { get; private set; }

    /// <summary>Names the state for saving and loading.</summary>
    public void Walk(StateWalk walk)
    {
        Now = FrameWalk.Walk(walk, Now) with { Ms = NowMs };
        _valves.Walk(walk, Now);
        _pump.Walk(walk, Now);
        _asked.Walk(walk);
        Derive();
    }

    private void Derive()
    {
        Capacity = CapacityOf(Proven);
        int unhealthy = Now.LateValves | Now.LatchedValves | Now.StuckSwitches;
        bool opens = Demand || (Alarmed(Alarm.PumpStuck) && !Service);
        Plan = opens ? CompanionPlan.For(House, Asked, unhealthy, Now.LatchedValves) : CompanionPlan.None(House);
    }
}
