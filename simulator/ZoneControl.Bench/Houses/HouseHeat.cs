using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Houses;

/// <summary>The warm side of a house as its file describes it, every default filled in.</summary>
public sealed record HouseHeat
{
    /// <summary>Rooms, one a zone, in the zones' order.</summary>
    public required IReadOnlyList<HouseRoom> Rooms { get; init; }

    /// <summary>The heat source, with its tank.</summary>
    public required HouseSource Source { get; init; }

    /// <summary>The weather where no file gives it.</summary>
    public required HouseWeather Weather { get; init; }
}

/// <summary>A zone's room, floor and thermostat.</summary>
public sealed record HouseRoom
{
    /// <summary>Heated floor area, m².</summary>
    public required Setting<double> AreaM2 { get; init; }

    /// <summary>Heat loss to the outdoors, W/K.</summary>
    public required Setting<double> LossWPerK { get; init; }

    /// <summary>Internal gains, W.</summary>
    public required Setting<double> GainsW { get; init; }

    /// <summary>Heat capacity of air, furniture and the walls' inner skin, J/K.</summary>
    public required Setting<double> CapacityJPerK { get; init; }

    /// <summary>What the floor is used for.</summary>
    public required Setting<FloorUse> Use { get; init; }

    /// <summary>Distance of the tubes, m.</summary>
    public required Setting<double> SpacingM { get; init; }

    /// <summary>Thickness of the screed, m.</summary>
    public required Setting<double> ScreedM { get; init; }

    /// <summary>Thermal resistance of the covering, m²K/W.</summary>
    public required Setting<double> CoveringResistance { get; init; }

    /// <summary>Thermal resistance of the insulation below, m²K/W.</summary>
    public required Setting<double> InsulationResistance { get; init; }

    /// <summary>Set point of the thermostat, °C.</summary>
    public required Setting<double> SetC { get; init; }

    /// <summary>Differential of the thermostat, K.</summary>
    public required Setting<double> DifferentialK { get; init; }

    /// <summary>Anticipation of the thermostat, K; 0 for none.</summary>
    public required Setting<double> AnticipationK { get; init; }

    /// <summary>Time constant of the anticipation.</summary>
    public required Setting<TimeSpan> AnticipationTime { get; init; }

    /// <summary>It asks at least so long.</summary>
    public required Setting<TimeSpan> MinimumOn { get; init; }

    /// <summary>It rests at least so long.</summary>
    public required Setting<TimeSpan> MinimumOff { get; init; }
}

/// <summary>The heat source, with its tank.</summary>
public sealed record HouseSource
{
    /// <summary>Power while on, W.</summary>
    public required Setting<double> PowerW { get; init; }

    /// <summary>Set point by outdoor temperature; level for a fixed set point.</summary>
    public required Setting<ResetCurve> Set { get; init; }

    /// <summary>Differential, K.</summary>
    public required Setting<double> DifferentialK { get; init; }

    /// <summary>Shortest run.</summary>
    public required Setting<TimeSpan> MinimumRun { get; init; }

    /// <summary>Shortest rest.</summary>
    public required Setting<TimeSpan> MinimumRest { get; init; }

    /// <summary>Its own high limit, °C.</summary>
    public required Setting<double> HighLimitC { get; init; }

    /// <summary>Water in it, m³; the mains' is added.</summary>
    public required Setting<double> WaterM3 { get; init; }

    /// <summary>Its heat loss to the plant room, W/K.</summary>
    public required Setting<double> LossWPerK { get; init; }

    /// <summary>Buffer tank, m³; 0 without one.</summary>
    public double TankM3 { get; init; }

    /// <summary>Heat loss of the tank to the plant room, W/K; 0 without one.</summary>
    public required Setting<double> TankLossWPerK { get; init; }
}

/// <summary>The invented winter of a house, and what else is around it.</summary>
public sealed record HouseWeather
{
    /// <summary>First day of a run, as day of the year, 1 to 366.</summary>
    public required Setting<int> FirstDay { get; init; }

    /// <summary>Mean over the year, °C.</summary>
    public required Setting<double> MeanC { get; init; }

    /// <summary>Half of the yearly swing, K.</summary>
    public required Setting<double> SeasonSwingK { get; init; }

    /// <summary>Half of the daily swing, K.</summary>
    public required Setting<double> DaySwingK { get; init; }

    /// <summary>Standard deviation of the noise, K.</summary>
    public required Setting<double> NoiseK { get; init; }

    /// <summary>Time over which the noise forgets itself.</summary>
    public required Setting<TimeSpan> NoiseTime { get; init; }

    /// <summary>Depth of the cold snap, K.</summary>
    public required Setting<double> SnapK { get; init; }

    /// <summary>Length of the cold snap.</summary>
    public required Setting<TimeSpan> SnapTime { get; init; }

    /// <summary>Temperature below the floors, °C.</summary>
    public required Setting<double> BelowC { get; init; }

    /// <summary>Air temperature around pump and heat source, °C.</summary>
    public required Setting<double> PlantRoomC { get; init; }
}
