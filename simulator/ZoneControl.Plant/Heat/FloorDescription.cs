namespace ZoneControl.Plant.Heat;

/// <summary>What a floor is used for, which limits how warm its surface may be (EN 1264-2, as quoted in public training texts).</summary>
public enum FloorUse
{
    /// <summary>People stay there: 29 °C.</summary>
    Occupied,

    /// <summary>A strip along an outside wall: 35 °C.</summary>
    Edge,

    /// <summary>A bath, whose room is at 24 °C: 33 °C.</summary>
    Bath,
}

/// <summary>
/// A heated floor of one room: screed with tubes in its middle, a covering above, insulation below. One body of one
/// temperature, that of the tubes' level.
/// </summary>
/// <remarks>
/// Conductances are those of plane layers: half of the screed and the covering up to the surface, EN 1264's 10.8 W/m²K
/// (0.093 m²K/W, from memory) from there into the room; half of the screed and the insulation downwards.
/// </remarks>
public sealed record FloorDescription
{
    /// <summary>EN 1264: total coefficient from floor surface to room, W/m²K.</summary>
    public const double SurfaceCoefficient = 10.8;

    /// <summary>Heated area, m²; 0.5 to 10,000.</summary>
    public required double AreaM2 { get; init; }

    /// <summary>Thickness of the screed, m; 0.01 to 0.5.</summary>
    public double ScreedM { get; init; } = 0.065;

    /// <summary>Conductivity of the screed, W/(m K); 0.1 to 5. Cement screed 1.2 (EN ISO 10456, from memory).</summary>
    public double ScreedConductivity { get; init; } = 1.2;

    /// <summary>Heat capacity of the screed, J/(m³ K); 1e5 to 1e7. 2,000 kg/m³ at 1,000 J/kgK (EN ISO 10456, from memory).</summary>
    public double ScreedHeatPerM3 { get; init; } = 2.0e6;

    /// <summary>Thermal resistance of the covering, m²K/W; 0 to 1. EN 1264-2 allows for 0.15 at most (from memory).</summary>
    public double CoveringResistance { get; init; } = 0.05;

    /// <summary>Thermal resistance of the insulation below, m²K/W; 0.05 to 20.</summary>
    public double InsulationResistance { get; init; } = 1.25;

    /// <summary>Distance of the tubes from each other, m; 0.03 to 1.</summary>
    public double SpacingM { get; init; } = 0.15;

    /// <summary>Wall of the tube, m; 0.0005 to 0.01.</summary>
    public double TubeWallM { get; init; } = 0.002;

    /// <summary>Conductivity of the tube, W/(m K); 0.05 to 400. Cross-linked polyethylene 0.35 (common practice).</summary>
    public double TubeConductivity { get; init; } = 0.35;

    /// <summary>What it is used for.</summary>
    public FloorUse Use { get; init; }

    /// <summary>Heat capacity, J/K: density times heat capacity times thickness times area.</summary>
    public double CapacityJPerK => ScreedHeatPerM3 * ScreedM * AreaM2;

    /// <summary>Conductance from the tubes' level into the room, W/K.</summary>
    public double UpWPerK => AreaM2 / (ScreedM / 2 / ScreedConductivity + CoveringResistance + 1 / SurfaceCoefficient);

    /// <summary>Conductance from the tubes' level to what lies below, W/K.</summary>
    public double DownWPerK => AreaM2 / (ScreedM / 2 / ScreedConductivity + InsulationResistance);
}
