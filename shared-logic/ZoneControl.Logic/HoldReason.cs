namespace ZoneControl.Logic;

/// <summary>
/// Why the pump is held, in the order in which the conditions are looked at: the published reason is the first unmet one
/// (ANSWER-WHY). The first four explain calls that ask for nothing, the rest a pump that is wanted. The words a person
/// reads live in a table outside the scan. The order is new to each version: files keep names, never numbers.
/// </summary>
public enum HoldReason
{
    /// <summary>The pump runs, or nobody asks for it.</summary>
    None = 0,

    /// <summary>Thermostats call, but a hand governs valves and pump and does not ask for the pump (SERVICE).</summary>
    Service = 1,

    /// <summary>Thermostats call, but domestic hot water has priority (PRIORITY).</summary>
    Priority = 2,

    /// <summary>Thermostats call, but the season contact says lockout, so their calls do nothing (SEASON-LOCKOUT).</summary>
    Lockout = 3,

    /// <summary>Every calling zone's valve is latched (VALVE-LATE), so there is nothing to open for it.</summary>
    ValveLatched = 4,

    /// <summary>The floor-supply high limit has tripped and waits for a reset (HEAT-LIMIT).</summary>
    Limit = 5,

    /// <summary>The pump was started too often without flow and waits for a reset (PUMP-FLOW).</summary>
    FlowLatched = 6,

    /// <summary>There is flow although the pump is off: pump or flow switch is stuck (PUMP-STUCK).</summary>
    PumpStuck = 7,

    /// <summary>The actuators have no supply (VALVE-SUPPLY).</summary>
    Supply = 8,

    /// <summary>Too many valves are late or latched: the healthy ones that may open cannot reach minimum open together.</summary>
    TooFewValves = 9,

    /// <summary>Proven capacity is still below minimum open: valves are on their way (PUMP-PROOF).</summary>
    Proof = 10,

    /// <summary>The path is proven, but the start delay after demand rose has not passed (PUMP-DELAY).</summary>
    StartDelay = 11,

    /// <summary>The pump has stopped or started too recently (PUMP-REST).</summary>
    Rest = 12,

    /// <summary>The reset button went down in this very scan, in which nothing goes on (ALARM-LATCH).</summary>
    Reset = 13,
}
