namespace ZoneControl.Logic;

/// <summary>
/// The conditions between "wanted" and "on", in the order in which they are looked at. The words a person reads live in a
/// table outside the scan.
/// </summary>
public enum Condition
{
    /// <summary>Pump: a call, frost, an exercise or a hand asks for it, and nothing withholds that.</summary>
    Wanted = 0,

    /// <summary>Pump: the high limit is not latched.</summary>
    NoLimit = 1,

    /// <summary>Pump: it is not latched for want of flow.</summary>
    NoFlowLatch = 2,

    /// <summary>Pump: there is no flow while it is off.</summary>
    NoStrayFlow = 3,

    /// <summary>Pump: the actuators have their supply.</summary>
    Supply = 4,

    /// <summary>Pump: the healthy valves that may open reach minimum open.</summary>
    EnoughValves = 5,

    /// <summary>Pump: proven capacity is at least minimum open.</summary>
    Proof = 6,

    /// <summary>Pump: the start delay has passed.</summary>
    StartDelay = 7,

    /// <summary>Pump: it has rested.</summary>
    Rested = 8,

    /// <summary>Heat: the pump is on.</summary>
    PumpOn = 9,

    /// <summary>Heat: flow is seen, where a flow switch is fitted.</summary>
    Flow = 10,

    /// <summary>Heat: the high limit is closed, where one is fitted.</summary>
    LimitClosed = 11,

    /// <summary>Heat: a call or frost asks, not merely an exercise or a hand.</summary>
    HeatAsked = 12,

    /// <summary>Heat: frost in lockout has not used up its time.</summary>
    FrostTime = 13,
}
