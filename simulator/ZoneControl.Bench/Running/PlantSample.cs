namespace ZoneControl.Bench.Running;

/// <summary>
/// What the plant did at one moment. Samples are taken whenever something changes, and at least once a second while a
/// valve moves or the pump runs against closed valves; between samples values may be joined by straight lines.
/// </summary>
public sealed record PlantSample
{
    /// <summary>ms from the start of the run.</summary>
    public required long Ms { get; init; }

    /// <summary>Thermostat contacts before debounce, one bit a zone.</summary>
    public required int RawCalls { get; init; }

    /// <summary>End switch contacts before debounce, one bit a zone.</summary>
    public required int RawSwitches { get; init; }

    /// <summary>Gated valves that the panel energises, before debounce, one bit a zone.</summary>
    public int RawSenses { get; init; }

    /// <summary>Contacts of <see cref="Logic.Contact"/> before debounce, 1 for asserted.</summary>
    public int RawContacts { get; init; }

    /// <summary>Stem travel of each zone's valves, 0 shut to 1 open.</summary>
    public required IReadOnlyList<double> Travel { get; init; }

    /// <summary>Flow of each zone, all its loops together, m³/s.</summary>
    public required IReadOnlyList<double> ZoneFlowM3s { get; init; }

    /// <summary>Flow through the pump, m³/s.</summary>
    public required double PumpFlowM3s { get; init; }

    /// <summary>Flow through the bypass, m³/s; 0 without one.</summary>
    public required double BypassFlowM3s { get; init; }

    /// <summary>Pump head, m of the fluid.</summary>
    public required double PumpHeadM { get; init; }

    /// <summary>Temperature of the water in the pump's casing, °C.</summary>
    public required double TrappedWaterC { get; init; }

    /// <summary>Seconds so far that the pump was energised with less than its minimum flow.</summary>
    public required double DeadheadS { get; init; }
}
