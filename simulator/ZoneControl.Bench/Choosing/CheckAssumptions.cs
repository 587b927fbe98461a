namespace ZoneControl.Bench.Choosing;

/// <summary>
/// What a house file does not say and a check has to take for granted. Every default is common practice for floor heating,
/// and every report says which were used.
/// </summary>
public sealed record CheckAssumptions
{
    /// <summary>Water temperature at which flows are computed, °C; above 0, below 100.</summary>
    public double WaterC { get; init; } = 35;

    /// <summary>Room temperature, °C; 5 to 30.</summary>
    public double RoomC { get; init; } = 20;

    /// <summary>How much the water cools on its way through a loop, K; 1 to 20.</summary>
    public double DropK { get; init; } = 5;

    /// <summary>Distance between two runs of tube in the floor, m; 0.05 to 0.6.</summary>
    public double SpacingM { get; init; } = 0.2;

    /// <summary>Heat that a floor has to give on the coldest day, W/m²; 5 to 200.</summary>
    public double FluxWPerM2 { get; init; } = 50;

    /// <summary>Flow that every loop should get, m³/s; null to reckon it from length, spacing, heat and drop.</summary>
    public double? DesignFlowM3s { get; init; }
}
