namespace ZoneControl.Logic;

/// <summary>
/// Why the pump is held, in the order in which the conditions are looked at: the published reason is the first unmet one
/// (ANSWER-WHY). The words a person reads live in a table outside the scan. The order is new to each version: files keep
/// names, never numbers.
/// </summary>
public enum HoldReason
{
    /// <summary>The pump runs, or nobody asks for it.</summary>
    None = 0,

    /// <summary>Thermostats call, but the season contact says lockout, so their calls do nothing (SEASON-LOCKOUT).</summary>
    Lockout = 1,

    /// <summary>Every calling zone's valve is latched (VALVE-LATE), so there is nothing to open for it.</summary>
    ValveLatched = 2,

    /// <summary>Too many valves are late or latched: the healthy ones that may open cannot reach minimum open together.</summary>
    TooFewValves = 3,

    /// <summary>Proven capacity is still below minimum open: valves are on their way (PUMP-PROOF).</summary>
    Proof = 4,

    /// <summary>The path is proven, but the start delay after demand rose has not passed (PUMP-DELAY).</summary>
    StartDelay = 5,
}
