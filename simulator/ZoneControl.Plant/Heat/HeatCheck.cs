namespace ZoneControl.Plant.Heat;

/// <summary>Finds every value of a heat description that cannot be used.</summary>
public static class HeatCheck
{
    private const double DayS = 86_400;

    /// <summary>One sentence a mistake: the value's place, what was found, what is expected; none when all is well.</summary>
    /// <param name="description">The description.</param>
    /// <param name="zones">Zones of the plant, each of which has a room.</param>
    public static IReadOnlyList<string> Mistakes(HeatDescription description, int zones)
    {
        ArgumentNullException.ThrowIfNull(description);
        var found = new List<string>();
        if (description.Rooms.Count != zones || zones == 0)
        {
            found.Add($"Rooms has {description.Rooms.Count} entries; expected one for each of {zones} zones, at least one.");
        }

        RangeCheck.Between(found, "BelowC", description.BelowC, -20, 40, "°C");
        for (int i = 0; i < description.Rooms.Count; i++)
        {
            Room(found, $"Rooms[{i}]", description.Rooms[i]);
        }

        Source(found, description.Source);
        return found;
    }

    /// <summary>Refuses a description with mistakes.</summary>
    /// <exception cref="ArgumentException">There is at least one; the message holds them all, a line each.</exception>
    public static void Demand(HeatDescription description, int zones)
    {
        IReadOnlyList<string> mistakes = Mistakes(description, zones);
        if (mistakes.Count > 0)
        {
            throw new ArgumentException(string.Join(Environment.NewLine, mistakes), nameof(description));
        }
    }

    private static void Room(List<string> found, string place, RoomDescription room)
    {
        RangeCheck.Between(found, $"{place}.CapacityJPerK", room.CapacityJPerK, 1e3, 1e10, "J/K");
        RangeCheck.Between(found, $"{place}.LossWPerK", room.LossWPerK, 0.1, 1e5, "W/K");
        RangeCheck.Between(found, $"{place}.GainsW", room.GainsW, 0, 1e5, "W");
        RangeCheck.Between(found, $"{place}.StartC", room.StartC, -20, 40, "°C");
        Floor(found, $"{place}.Floor", room.Floor);
        Thermostat(found, $"{place}.Thermostat", room.Thermostat);
    }

    private static void Floor(List<string> found, string place, FloorDescription floor)
    {
        RangeCheck.Between(found, $"{place}.AreaM2", floor.AreaM2, 0.5, 10_000, "m²");
        RangeCheck.Between(found, $"{place}.ScreedM", floor.ScreedM, 0.01, 0.5, "m");
        RangeCheck.Between(found, $"{place}.ScreedConductivity", floor.ScreedConductivity, 0.1, 5, "W/(m K)");
        RangeCheck.Between(found, $"{place}.ScreedHeatPerM3", floor.ScreedHeatPerM3, 1e5, 1e7, "J/(m³ K)");
        RangeCheck.Between(found, $"{place}.CoveringResistance", floor.CoveringResistance, 0, 1, "m²K/W");
        RangeCheck.Between(found, $"{place}.InsulationResistance", floor.InsulationResistance, 0.05, 20, "m²K/W");
        RangeCheck.Between(found, $"{place}.SpacingM", floor.SpacingM, 0.03, 1, "m");
        RangeCheck.Between(found, $"{place}.TubeWallM", floor.TubeWallM, 0.0005, 0.01, "m");
        RangeCheck.Between(found, $"{place}.TubeConductivity", floor.TubeConductivity, 0.05, 400, "W/(m K)");
        if (!Enum.IsDefined(floor.Use))
        {
            found.Add($"{place}.Use is {floor.Use}; expected one of {string.Join(", ", Enum.GetNames<FloorUse>())}.");
        }
    }

    private static void Thermostat(List<string> found, string place, ThermostatDescription thermostat)
    {
        RangeCheck.Between(found, $"{place}.SetC", thermostat.SetC, 0, 40, "°C");
        RangeCheck.Between(found, $"{place}.DifferentialK", thermostat.DifferentialK, 0.05, 10, "K");
        RangeCheck.Between(found, $"{place}.AnticipationK", thermostat.AnticipationK, 0, 5, "K");
        RangeCheck.Between(found, $"{place}.AnticipationS", thermostat.AnticipationS, 1, DayS, "s");
        RangeCheck.Between(found, $"{place}.MinimumOnS", thermostat.MinimumOnS, 0, DayS, "s");
        RangeCheck.Between(found, $"{place}.MinimumOffS", thermostat.MinimumOffS, 0, DayS, "s");
    }

    private static void Source(List<string> found, SourceDescription source)
    {
        RangeCheck.Between(found, "Source.PowerW", source.PowerW, 100, 1e7, "W");
        RangeCheck.Between(found, "Source.DifferentialK", source.DifferentialK, 0.5, 40, "K");
        RangeCheck.Between(found, "Source.MinimumRunS", source.MinimumRunS, 0, DayS, "s");
        RangeCheck.Between(found, "Source.MinimumRestS", source.MinimumRestS, 0, DayS, "s");
        RangeCheck.Between(found, "Source.HighLimitC", source.HighLimitC, 20, 110, "°C");
        RangeCheck.Between(found, "Source.WaterM3", source.WaterM3, 0.001, 100, "m³");
        RangeCheck.Between(found, "Source.TankM3", source.TankM3, 0, 1000, "m³");
        RangeCheck.Between(found, "Source.LossWPerK", source.LossWPerK, 0.01, 1000, "W/K");
        RangeCheck.Between(found, "Source.StartC", source.StartC, 1, 100, "°C");
        ResetCurve set = source.Set;
        RangeCheck.Between(found, "Source.Set.ColdWaterC", set.ColdWaterC, 15, 95, "°C");
        RangeCheck.Between(found, "Source.Set.MildWaterC", set.MildWaterC, 15, 95, "°C");
        RangeCheck.Between(found, "Source.Set.ColdOutdoorC", set.ColdOutdoorC, -60, 60, "°C");
        if (!(set.MildOutdoorC > set.ColdOutdoorC && set.MildOutdoorC <= 60))
        {
            found.Add($"Source.Set.MildOutdoorC is {set.MildOutdoorC}; expected more than the cold end's {set.ColdOutdoorC}"
                + " and at most 60 °C.");
        }

        if (Math.Max(set.ColdWaterC, set.MildWaterC) + source.DifferentialK / 2 > source.HighLimitC)
        {
            found.Add($"Source.HighLimitC is {source.HighLimitC}; expected at least the highest set point and half the"
                + $" differential, {Math.Max(set.ColdWaterC, set.MildWaterC) + source.DifferentialK / 2} °C.");
        }
    }
}
