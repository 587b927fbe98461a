namespace ZoneControl.Logic;

/// <summary>
/// Everything that bears on what the controller does next, and nothing else. Ages are ms since something last changed,
/// capped where growing older no longer matters, so that states that behave alike are alike. One bit a zone in masks.
/// </summary>
internal sealed class ControllerState
{
    // Contacts (ContactFilter).
    public readonly ContactFilter Calls;
    public readonly ContactFilter Switches;
    public readonly ContactFilter Senses;
    public readonly ContactFilter Hands;
    public readonly ContactFilter Contacts;

    // Valves (ValveDrive) and what proves them (ValveProof).
    public int Valves;
    public int Open; // energised by us, or sensed as energised by the panel that is gated
    public readonly int[] ValveAgeMs; // since energised, or since released
    public int Proven;
    public int ProvenCapacity; // theirs and the standing capacity
    public int Early;
    public int StuckSwitches;

    // Late valves (LateValves).
    public int Late;
    public int Latched;
    public int Resting;
    public readonly int[] UnprovenMs;
    public readonly int[] Tries;

    // What is asked (Asking) and when it began.
    public bool Demand;
    public int DemandAgeMs; // since demand last came or went
    public int PriorityAgeMs; // since priority was accepted; 0 without
    public int ServiceAgeMs; // since the first hand command; 0 without

    // Exercise.
    public bool Exercising;
    public bool PutOff;
    public int IdleS; // whole seconds since the pump last ran: ms would overflow in four weeks
    public int IdlePartMs;
    public int ExerciseAgeMs;
    public int ExerciseRanMs;

    // Pump (PumpSequence, FlowWatch) and heat (HeatDemand).
    public bool Pump;
    public int RundownMs; // since the pump stopped, counted to the rundown; 0 while it runs
    public int RestMs; // since the pump stopped, counted to the least time off; 0 while it runs
    public int StartAgeMs; // since the pump last started
    public bool FlowSeen; // flow has been seen since that start
    public int NoFlowMs; // the pump has been on so long without flow
    public int FlowTries;
    public bool PumpStuck;
    public int QuietMs; // no flow for so long, while that alarm stands
    public bool Heat;
    public int HeatAgeMs; // since heat demand went off; 0 while it is on
    public int FrostHeatMs; // heat asked for so long by frost in lockout

    public int SupplyWaitMs; // until the lack of the actuators' supply may be told (SupplyWatch); 0 from then on

    // Latches and the clock (Latches, ClockWatch).
    public bool FlowLatched;
    public bool LimitLatched;
    public bool TimeFault;
    public int Stalled; // scans in a row at one and the same time

    /// <summary>A scan has been made since power-up.</summary>
    public bool Scanned;

    // The rest is worked out anew in every scan. What the next scan still looks at is saved with the flags all the same.

    /// <summary>What asks for the pump (Asking).</summary>
    public AskedBy AskedBy;

    /// <summary>Zones for which it asks.</summary>
    public int Asked;

    /// <summary>A hand governs valves and pump (Asking).</summary>
    public bool Service;

    /// <summary>Calls are withheld for domestic hot water (Asking).</summary>
    public bool PriorityHolds;

    /// <summary>The actuators have their supply, as far as anybody senses it (SupplyWatch).</summary>
    public bool Supplied;

    /// <summary>The reset button went down in this scan: nothing goes on in it (Latches).</summary>
    public bool ResetNow;

    /// <summary>
    /// Valves that may still be opening or closing, as far as anything hangs on when they have; not saved, since looking once
    /// more at others harms nothing.
    /// </summary>
    public int Moving;

    /// <summary>Zones that are to be open: asked ones and companions (ZonePlan).</summary>
    public int Planned;

    /// <summary>Gated valves that were energised or let go in this scan (ValveProof).</summary>
    public int SensesTurned;

    /// <summary>The healthy valves that may open cannot reach minimum open (ZonePlan).</summary>
    public bool TooFew;

    /// <summary>The pump has to stop for want of flow (FlowWatch).</summary>
    public bool FlowTrip;

    /// <summary>The first unmet condition of the pump (HoldReasons).</summary>
    public HoldReason Hold;

    /// <summary>The alarms of the house as a whole (Alarms).</summary>
    public int Alarms;

    // What Changed compares with.
    private int _valves;
    private int _proven;
    private int _early;
    private int _stuckSwitches;
    private int _late;
    private int _resting;
    private int _flags;

    private readonly int _zones;
    private readonly int _switched;
    private readonly bool _flowSwitch;
    private readonly bool _supplySensed;
    private readonly int _rundownMs;

    /// <summary>
    /// The power-up state: nothing on, nothing proven, the pump just stopped as far as its rest goes, and in lockout, where
    /// a season contact is fitted, until it has said otherwise.
    /// </summary>
    public ControllerState(ControllerSettings settings)
    {
        _zones = settings.ZoneCount;
        _switched = settings.SwitchedZones;
        _flowSwitch = settings.Has(Contact.Flow);
        _supplySensed = settings.Has(Contact.Supply);
        _rundownMs = settings.PumpRundownMs;
        Calls = ContactFilter.ForZones(_zones, settings.CallDebounceMs);
        Switches = ContactFilter.ForZones(_zones, settings.SwitchDebounceMs);
        Senses = ContactFilter.ForZones(settings.GatedZones != 0 ? _zones : 0, settings.SwitchDebounceMs);
        Hands = ContactFilter.ForZones(_zones, settings.CallDebounceMs);
        Contacts = new ContactFilter(settings.ContactDebounceMs);
        Contacts.Accepted = settings.FittedContacts & Contact.Lockout;
        Contacts.Seen = Contacts.Accepted;
        ValveAgeMs = new int[_zones];
        UnprovenMs = new int[_zones];
        Tries = new int[_zones];
        Moving = MayMove;
        ProvenCapacity = settings.StandingCapacity;
        DemandAgeMs = settings.PumpOverrunMs;
        RundownMs = settings.PumpRundownMs;
        HeatAgeMs = settings.HeatLeadMs;
        SupplyWaitMs = SupplyWatch.ToBeAccepted(settings);
        Supplied = !_supplySensed;
    }

    /// <summary>Whether contacts of <see cref="Contact"/> are accepted as asserted.</summary>
    public bool Is(int contact) => (Contacts.Accepted & contact) != 0;

    /// <summary>The pump is on, may still turn, or has not been seen to stop: no valve may close on moving water.</summary>
    public bool WaterMayMove => Pump || RundownMs < _rundownMs || (_flowSwitch && Is(Contact.Flow));

    /// <summary>
    /// Valves whose time bears on anything: open ones, and shut ones with a switch that may stick. When a valve without a
    /// switch was released is forgotten.
    /// </summary>
    public int MayMove => Open | _switched;

    /// <summary>Valves that cannot be counted on.</summary>
    public int Sick => Late | StuckSwitches;

    private int Flags() =>
        (Demand ? 1 : 0) | (Pump ? 2 : 0) | (Heat ? 4 : 0)
        | (Exercising ? 16 : 0) | (PutOff ? 32 : 0) | (FlowSeen ? 64 : 0) | (PumpStuck ? 128 : 0)
        | (Service ? 2048 : 0) | (PriorityHolds ? 4096 : 0) | (TooFew ? 8192 : 0) | ((int)AskedBy << 16);

    /// <summary>Flags that change only together with a contact, the pump or the clock.</summary>
    private int Latches() =>
        (Scanned ? 8 : 0) | (FlowLatched ? 256 : 0) | (LimitLatched ? 512 : 0) | (TimeFault ? 1024 : 0);

    /// <summary>
    /// Whether anything but an age has changed since this was last asked, as it is after every whole scan and load. What
    /// changed late in a scan can bear on what comes early in the next. Not looked at is what changes only together with
    /// something that is: open valves with energised ones and senses; latched ones with energised ones and the reset button;
    /// tries without flow with the pump and that button; <see cref="Latches"/>.
    /// </summary>
    public bool Changed()
    {
        int contacts = Calls.Turned | Switches.Turned | Senses.Turned | Hands.Turned | Contacts.Turned;
        int flags = Flags() | (WaterMayMove ? 1 << 20 : 0) | (SupplyWaitMs > 0 ? 1 << 21 : 0);
        int valves = (Valves ^ _valves) | (Proven ^ _proven) | (Early ^ _early) | (StuckSwitches ^ _stuckSwitches)
            | (Late ^ _late) | (Resting ^ _resting);
        if ((contacts | valves | (flags ^ _flags)) == 0)
            return false;
        _valves = Valves;
        _proven = Proven;
        _early = Early;
        _stuckSwitches = StuckSwitches;
        _late = Late;
        _resting = Resting;
        _flags = flags;
        return true;
    }

    /// <summary>How many ints <see cref="Save"/> writes.</summary>
    public int Length =>
        Calls.Length + Switches.Length + Senses.Length + Hands.Length + Contacts.Length + 27 + 3 * _zones;

    /// <summary>Where <see cref="Save"/> puts the idle seconds; their rest in ms comes next. Searches and tests look there.</summary>
    public int IdlePlace => Calls.Length + Switches.Length + Senses.Length + Hands.Length + Contacts.Length + 12;

    public void Save(int[] state)
    {
        int at = Calls.Save(state, 0);
        at = Switches.Save(state, at);
        at = Senses.Save(state, at);
        at = Hands.Save(state, at);
        at = Contacts.Save(state, at);
        state[at++] = Valves;
        state[at++] = Open;
        state[at++] = Proven;
        state[at++] = Early;
        state[at++] = StuckSwitches;
        state[at++] = Late;
        state[at++] = Latched;
        state[at++] = Resting;
        state[at++] = Flags() | Latches();
        state[at++] = DemandAgeMs;
        state[at++] = PriorityAgeMs;
        state[at++] = ServiceAgeMs;
        state[at++] = IdleS;
        state[at++] = IdlePartMs;
        state[at++] = ExerciseAgeMs;
        state[at++] = ExerciseRanMs;
        state[at++] = RundownMs;
        state[at++] = RestMs;
        state[at++] = StartAgeMs;
        state[at++] = NoFlowMs;
        state[at++] = FlowTries;
        state[at++] = QuietMs;
        state[at++] = HeatAgeMs;
        state[at++] = FrostHeatMs;
        state[at++] = Stalled;
        state[at++] = ProvenCapacity;
        state[at++] = SupplyWaitMs;
        for (int zone = 0; zone < _zones; zone++)
        {
            state[at++] = ValveAgeMs[zone];
            state[at++] = UnprovenMs[zone];
            state[at++] = Tries[zone];
        }
    }

    public void Load(int[] state)
    {
        int at = Calls.Load(state, 0);
        at = Switches.Load(state, at);
        at = Senses.Load(state, at);
        at = Hands.Load(state, at);
        at = Contacts.Load(state, at);
        Valves = state[at++];
        Open = state[at++];
        Proven = state[at++];
        Early = state[at++];
        StuckSwitches = state[at++];
        Late = state[at++];
        Latched = state[at++];
        Resting = state[at++];
        int flags = state[at++];
        Demand = (flags & 1) != 0;
        Pump = (flags & 2) != 0;
        Heat = (flags & 4) != 0;
        Scanned = (flags & 8) != 0;
        Exercising = (flags & 16) != 0;
        PutOff = (flags & 32) != 0;
        FlowSeen = (flags & 64) != 0;
        PumpStuck = (flags & 128) != 0;
        FlowLatched = (flags & 256) != 0;
        LimitLatched = (flags & 512) != 0;
        TimeFault = (flags & 1024) != 0;
        Service = (flags & 2048) != 0;
        PriorityHolds = (flags & 4096) != 0;
        TooFew = (flags & 8192) != 0;
        AskedBy = (AskedBy)(flags >> 16);
        DemandAgeMs = state[at++];
        PriorityAgeMs = state[at++];
        ServiceAgeMs = state[at++];
        IdleS = state[at++];
        IdlePartMs = state[at++];
        ExerciseAgeMs = state[at++];
        ExerciseRanMs = state[at++];
        RundownMs = state[at++];
        RestMs = state[at++];
        StartAgeMs = state[at++];
        NoFlowMs = state[at++];
        FlowTries = state[at++];
        QuietMs = state[at++];
        HeatAgeMs = state[at++];
        FrostHeatMs = state[at++];
        Stalled = state[at++];
        ProvenCapacity = state[at++];
        SupplyWaitMs = state[at++];
        for (int zone = 0; zone < _zones; zone++)
        {
            ValveAgeMs[zone] = state[at++];
            UnprovenMs[zone] = state[at++];
            Tries[zone] = state[at++];
        }

        Moving = MayMove;
        Supplied = !_supplySensed || Is(Contact.Supply);
        // A power-up scan decides nothing, so what another state left here would be published.
        Hold = HoldReason.None;
        Asked = 0;
        Planned = 0;
        SensesTurned = 0;
        // What changes from now on changes from this.
        Changed();
    }
}
