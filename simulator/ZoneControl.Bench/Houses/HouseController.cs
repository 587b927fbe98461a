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

    /// <summary>The season contact counts once it has stood this long.</summary>
    public required Setting<TimeSpan> SeasonDebounce { get; init; }

    /// <summary>Time between scans; 10 ms to 1 s.</summary>
    public required Setting<TimeSpan> ScanPeriod { get; init; }

    /// <summary>How often a late valve is tried again before it is latched; 0 to 100.</summary>
    public required Setting<int> ValveRetries { get; init; }
}
