namespace ZoneControl.Bench.Houses;

/// <summary>What the controller is told, apart from the times that belong to a zone.</summary>
public sealed record HouseController
{
    /// <summary>Capacity that must be proven open before and while the pump runs; at least 1.</summary>
    public required int MinimumOpen { get; init; }

    /// <summary>Companion zones in the order in which they are taken: zone numbers, from 0.</summary>
    public required Setting<IReadOnlyList<int>> Companions { get; init; }

    /// <summary>The pump goes on no sooner than this after demand rose.</summary>
    public required Setting<TimeSpan> PumpStartDelay { get; init; }

    /// <summary>The pump runs on this long after demand ended.</summary>
    public required Setting<TimeSpan> PumpOverrun { get; init; }

    /// <summary>Valves stay open this long after the pump stopped.</summary>
    public required Setting<TimeSpan> PumpRundown { get; init; }

    /// <summary>Heat demand goes off this long before the pump.</summary>
    public required Setting<TimeSpan> HeatLead { get; init; }

    /// <summary>A thermostat counts once its contact has stood this long.</summary>
    public required Setting<TimeSpan> CallDebounce { get; init; }

    /// <summary>An end switch counts once its contact has stood this long; at most 500 ms.</summary>
    public required Setting<TimeSpan> SwitchDebounce { get; init; }

    /// <summary>Time between scans; 10 ms to 1 s.</summary>
    public required Setting<TimeSpan> ScanPeriod { get; init; }

    /// <summary>How often a late valve is tried again before it is latched; 0 to 100.</summary>
    public required Setting<int> ValveRetries { get; init; }

    /// <summary>The pump rests this long after a stop, and first of all after power-up.</summary>
    public required Setting<TimeSpan> PumpMinOff { get; init; }

    /// <summary>How often an hour the pump may start; at least 1.</summary>
    public required Setting<int> PumpMaxStarts { get; init; }

    /// <summary>A start comes at least so long after the last: an hour over <see cref="PumpMaxStarts"/>, to the next ms.</summary>
    public TimeSpan PumpStartInterval => TimeSpan.FromMilliseconds(Math.Ceiling(3_600_000.0 / PumpMaxStarts.Value));

    /// <summary>A start without flow this long is a trip. Without a flow switch it has no effect.</summary>
    public required Setting<TimeSpan> FlowProofTime { get; init; }

    /// <summary>A running pump without flow this long is a trip. Without a flow switch it has no effect.</summary>
    public required Setting<TimeSpan> FlowLossTime { get; init; }

    /// <summary>How often the pump is tried again after such a trip before it is latched; 0 to 100.</summary>
    public required Setting<int> FlowRetries { get; init; }

    /// <summary>Pump and valves are exercised after so long without a run; 0 for never.</summary>
    public required Setting<TimeSpan> ExerciseInterval { get; init; }

    /// <summary>The pump runs so long in an exercise.</summary>
    public required Setting<TimeSpan> ExerciseRun { get; init; }

    /// <summary>An exercise that something forbids is put off by so long.</summary>
    public required Setting<TimeSpan> ExerciseRetry { get; init; }

    /// <summary>In lockout a freeze contact gets heat for at most so long.</summary>
    public required Setting<TimeSpan> FreezeHeatMax { get; init; }

    /// <summary>Priority that lasts longer is alarmed and ignored until it releases.</summary>
    public required Setting<TimeSpan> PriorityMax { get; init; }

    /// <summary>Hand commands end by themselves after so long.</summary>
    public required Setting<TimeSpan> ServiceLimit { get; init; }

    /// <summary>So many scans at one and the same time with the pump on are a fault of the clock; 1 to 1,000.</summary>
    public required Setting<int> StallScans { get; init; }

    /// <summary>A scan so much later than announced is a fault of the clock; at least <see cref="ScanPeriod"/>.</summary>
    public required Setting<TimeSpan> StallLimit { get; init; }
}
