namespace ZoneControl.Plant.Heat;

/// <summary>The warm side of a house: floors, rooms, thermostats and the heat source. SI units.</summary>
public sealed record HeatDescription
{
    /// <summary>Rooms, one a zone, in the plant's order; at least one.</summary>
    public required IReadOnlyList<RoomDescription> Rooms { get; init; }

    /// <summary>The heat source, with its tank.</summary>
    public required SourceDescription Source { get; init; }

    /// <summary>Temperature below the floors, °C; -20 to 40.</summary>
    public double BelowC { get; init; } = 10;
}

/// <summary>
/// A room over its floor: two bodies of one temperature each. The floor takes heat from its tubes and gives it to the room
/// and downwards; the room gives it to the outdoors.
/// </summary>
public sealed record RoomDescription
{
    /// <summary>Its floor.</summary>
    public required FloorDescription Floor { get; init; }

    /// <summary>Heat capacity of air, furniture and the inner skin of the walls, J/K; 1e3 to 1e10.</summary>
    public required double CapacityJPerK { get; init; }

    /// <summary>Heat loss to the outdoors, walls, windows and air change together, W/K; 0.1 to 1e5.</summary>
    public required double LossWPerK { get; init; }

    /// <summary>Internal gains: people, lamps, sun, as a mean, W; 0 to 1e5.</summary>
    public double GainsW { get; init; }

    /// <summary>Its thermostat.</summary>
    public required ThermostatDescription Thermostat { get; init; }

    /// <summary>Temperature of room and floor at the start, °C; -20 to 40.</summary>
    public double StartC { get; init; } = 20;
}

/// <summary>
/// A thermostat with two positions. It asks when what it senses has come down to half the differential below its set point,
/// and ceases half a differential above. It looks once a second.
/// </summary>
public sealed record ThermostatDescription
{
    /// <summary>Set point, °C; 0 to 40.</summary>
    public required double SetC { get; init; }

    /// <summary>Differential, K; 0.05 to 10.</summary>
    public double DifferentialK { get; init; } = 0.5;

    /// <summary>
    /// Anticipation: so much warmer than the room it feels in the end while it asks, K; 0 for none to 5. It thus ceases
    /// early, and droops with load as those with a heater in them do.
    /// </summary>
    public double AnticipationK { get; init; }

    /// <summary>Time constant with which anticipation comes and goes, s; 1 to 86,400.</summary>
    public double AnticipationS { get; init; } = 900;

    /// <summary>It asks at least so long, s; 0 to 86,400.</summary>
    public double MinimumOnS { get; init; }

    /// <summary>It rests at least so long, s; 0 to 86,400.</summary>
    public double MinimumOffS { get; init; }
}

/// <summary>
/// A heat source that is on or off, with one well-mixed body of water: its own, the mains' and the tank's. While heat is
/// asked for it keeps that water about its set point.
/// </summary>
public sealed record SourceDescription
{
    /// <summary>Power while it is on, W; 100 to 1e7.</summary>
    public required double PowerW { get; init; }

    /// <summary>Set point by outdoor temperature.</summary>
    public required ResetCurve Set { get; init; }

    /// <summary>Differential: on half of it below the set point, off half above, K; 0.5 to 40.</summary>
    public double DifferentialK { get; init; } = 8;

    /// <summary>A run lasts at least so long, whatever is asked, unless the high limit ends it, s; 0 to 86,400.</summary>
    public double MinimumRunS { get; init; }

    /// <summary>It rests at least so long, s; 0 to 86,400.</summary>
    public double MinimumRestS { get; init; }

    /// <summary>Its own high limit, °C; 20 to 110. It comes back <see cref="LimitReturnK"/> below.</summary>
    public double HighLimitC { get; init; } = 55;

    /// <summary>Water in it and in the mains, m³; 0.001 to 100.</summary>
    public required double WaterM3 { get; init; }

    /// <summary>Buffer tank, m³; 0 for none to 1,000. Fully mixed, at the source's own temperature.</summary>
    public double TankM3 { get; init; }

    /// <summary>Heat loss of source and tank to the plant room, W/K; 0.01 to 1,000.</summary>
    public double LossWPerK { get; init; } = 2;

    /// <summary>Temperature at the start, °C; 1 to 100.</summary>
    public double StartC { get; init; } = 20;

    /// <summary>How far below the high limit it lets the source run again, K.</summary>
    public const double LimitReturnK = 5;
}

/// <summary>
/// Water temperature by outdoor temperature: a straight line between two points, level beyond them. The same at both ends is a
/// fixed set point.
/// </summary>
/// <param name="ColdOutdoorC">Outdoor temperature of the cold end, °C.</param>
/// <param name="ColdWaterC">Water temperature there, °C; 15 to 95.</param>
/// <param name="MildOutdoorC">Outdoor temperature of the mild end, °C; above that of the cold end.</param>
/// <param name="MildWaterC">Water temperature there, °C; 15 to 95.</param>
public sealed record ResetCurve(double ColdOutdoorC, double ColdWaterC, double MildOutdoorC, double MildWaterC)
{
    /// <summary>The same at any weather.</summary>
    public static ResetCurve Fixed(double waterC) => new(-10, waterC, 20, waterC);

    /// <summary>Set point, °C.</summary>
    public double At(double outdoorC)
    {
        double share = Math.Clamp((outdoorC - ColdOutdoorC) / (MildOutdoorC - ColdOutdoorC), 0, 1);
        return ColdWaterC + share * (MildWaterC - ColdWaterC);
    }
}
