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
    public readonly ContactFilter Season;

    // Valves (ValveDrive) and what proves them (ValveProof).
    public int Valves;
    public readonly int[] ValveAgeMs; // since energised, or since released
    public int Proven;
    public int Early;

    // Late valves (LateValves).
    public int Late;
    public int Latched;
    public int Resting;
    public readonly int[] UnprovenMs;
    public readonly int[] Tries;

    // Demand (Demand), pump (PumpSequence) and heat (HeatDemand).
    public bool Demand;
    public int DemandAgeMs; // since demand last came or went
    public bool Pump;
    public int PumpAgeMs; // since the pump stopped; 0 while it runs
    public bool Heat;
    public int HeatAgeMs; // since heat demand went off; 0 while it is on

    /// <summary>A scan has been made since power-up.</summary>
    public bool Scanned;

    // The rest is worked out anew in every scan and is not saved.

    /// <summary>Zones whose call asks for the pump (Demand).</summary>
    public int Asked;

    /// <summary>Zones that are to be open: asked ones and companions (ZonePlan).</summary>
    public int Planned;

    /// <summary>Capacity of proven valves and standing capacity (ValveProof).</summary>
    public int ProvenCapacity;

    /// <summary>The healthy valves that may open cannot reach minimum open (ZonePlan).</summary>
    public bool TooFew;

    /// <summary>The first unmet condition of the pump (HoldReasons).</summary>
    public HoldReason Hold;

    private readonly int _zones;

    /// <summary>The power-up state: nothing on, nothing proven, and in lockout until the season contact has said otherwise.</summary>
    public ControllerState(ControllerSettings settings)
    {
        _zones = settings.ZoneCount;
        Calls = new ContactFilter(_zones);
        Switches = new ContactFilter(_zones);
        Season = new ContactFilter(1);
        Season.Seen = 1;
        Season.Accepted = 1;
        ValveAgeMs = new int[_zones];
        for (int zone = 0; zone < _zones; zone++)
            ValveAgeMs[zone] = settings.ClosingMs[zone];
        UnprovenMs = new int[_zones];
        Tries = new int[_zones];
        DemandAgeMs = settings.PumpOverrunMs;
        PumpAgeMs = settings.PumpRundownMs;
        HeatAgeMs = settings.HeatLeadMs;
    }

    /// <summary>The season contact, once accepted, says lockout.</summary>
    public bool Lockout => Season.Accepted != 0;

    /// <summary>The pump has stopped but may still turn.</summary>
    public bool RunningDown(ControllerSettings settings) => !Pump && PumpAgeMs < settings.PumpRundownMs;

    /// <summary>How many ints <see cref="Save"/> writes.</summary>
    public int Length => 3 * 2 + 2 * _zones + 1 + 10 + 3 * _zones;

    public void Save(int[] state)
    {
        int at = Calls.Save(state, 0);
        at = Switches.Save(state, at);
        at = Season.Save(state, at);
        state[at++] = Valves;
        state[at++] = Proven;
        state[at++] = Early;
        state[at++] = Late;
        state[at++] = Latched;
        state[at++] = Resting;
        state[at++] = (Demand ? 1 : 0) | (Pump ? 2 : 0) | (Heat ? 4 : 0) | (Scanned ? 8 : 0);
        state[at++] = DemandAgeMs;
        state[at++] = PumpAgeMs;
        state[at++] = HeatAgeMs;
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
        at = Season.Load(state, at);
        Valves = state[at++];
        Proven = state[at++];
        Early = state[at++];
        Late = state[at++];
        Latched = state[at++];
        Resting = state[at++];
        int flags = state[at++];
        Demand = (flags & 1) != 0;
        Pump = (flags & 2) != 0;
        Heat = (flags & 4) != 0;
        Scanned = (flags & 8) != 0;
        DemandAgeMs = state[at++];
        PumpAgeMs = state[at++];
        HeatAgeMs = state[at++];
        for (int zone = 0; zone < _zones; zone++)
        {
            ValveAgeMs[zone] = state[at++];
            UnprovenMs[zone] = state[at++];
            Tries[zone] = state[at++];
        }
    }
}
