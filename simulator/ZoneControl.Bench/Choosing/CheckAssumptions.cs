namespace ZoneControl.Bench.Choosing;

/// <summary>
/// What a check takes for granted beside the house file. Null is what the house file says, or its common value; every report
/// says which were used.
/// </summary>
public sealed record CheckAssumptions
{
    /// <summary>Water temperature at which flows are computed, °C; above 0, below 100.</summary>
    public double WaterC { get; init; } = 35;

    /// <summary>Room temperature, °C; 5 to 28; null for each thermostat's setting.</summary>
    public double? RoomC { get; init; }

    /// <summary>How much the water is to cool on its way through a loop, K; 1 to 20 (common practice 5).</summary>
    public double DropK { get; init; } = 5;

    /// <summary>Distance between two runs of tube in the floor, m; 0.05 to 0.6; null for each floor's.</summary>
    public double? SpacingM { get; init; }

    /// <summary>
    /// Heat that floors have to give on the coldest day, W/m²; 5 to 200; null for what each room loses at the cold end of the
    /// heat source's curve.
    /// </summary>
    public double? FluxWPerM2 { get; init; }

    /// <summary>Flow that every loop should get, m³/s; null to reckon it from heat and drop.</summary>
    public double? DesignFlowM3s { get; init; }
}
