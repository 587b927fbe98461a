using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Houses;

/// <summary>What the warm side of the plant and its weather are built from, taken from a house.</summary>
public static class HeatFromHouse
{
    /// <summary>A house's warm side; that of common practice where it was made in code without one.</summary>
    public static HouseHeat HeatOrCommon(this House house)
    {
        if (house.Heat is { } heat)
            return heat;
        var reader = new RoomReader(null, null, null);
        HouseRoom[] rooms = [.. house.Zones.Select(zone => reader.Read(null, zone.Loops.Sum(loop => loop.Tube.LengthM)))];
        return new HouseHeat
        {
            Rooms = rooms,
            Source = SourceReader.Read(null, null, rooms),
            Weather = WeatherReader.Read(null),
        };
    }

    /// <summary>The warm side as the plant takes it. Rooms begin at their set point, the source's water at its own.</summary>
    public static HeatDescription ToHeat(this House house)
    {
        HouseHeat heat = house.HeatOrCommon();
        HouseSource source = heat.Source;
        return new HeatDescription
        {
            Rooms = [.. heat.Rooms.Select(Room)],
            BelowC = heat.Weather.BelowC.Value,
            Source = new SourceDescription
            {
                PowerW = source.PowerW.Value,
                Set = source.Set.Value,
                DifferentialK = source.DifferentialK.Value,
                MinimumRunS = source.MinimumRun.Value.TotalSeconds,
                MinimumRestS = source.MinimumRest.Value.TotalSeconds,
                HighLimitC = source.HighLimitC.Value,
                WaterM3 = source.WaterM3.Value + house.Mains.VolumeM3,
                TankM3 = source.TankM3,
                LossWPerK = source.LossWPerK.Value + source.TankLossWPerK.Value,
                StartC = Math.Max(1, heat.Weather.PlantRoomC.Value),
            },
        };
    }

    /// <summary>
    /// Water temperature for which a season's flows are worked out, °C: the middle of the source's set points. Viscosity changes
    /// flows by a few percent from one end to the other.
    /// </summary>
    public static double SeasonWaterC(this House house)
    {
        ResetCurve set = house.HeatOrCommon().Source.Set.Value;
        return (set.ColdWaterC + set.MildWaterC) / 2;
    }

    /// <summary>The invented winter of a house.</summary>
    public static SyntheticWinter ToWinter(this House house)
    {
        HouseWeather weather = house.HeatOrCommon().Weather;
        return new SyntheticWinter
        {
            FirstDay = weather.FirstDay.Value,
            MeanC = weather.MeanC.Value,
            SeasonSwingK = weather.SeasonSwingK.Value,
            DaySwingK = weather.DaySwingK.Value,
            NoiseK = weather.NoiseK.Value,
            NoiseDays = weather.NoiseTime.Value.TotalDays,
            SnapK = weather.SnapK.Value,
            SnapDays = weather.SnapTime.Value.TotalDays,
        };
    }

    private static RoomDescription Room(HouseRoom room) => new()
    {
        CapacityJPerK = room.CapacityJPerK.Value,
        LossWPerK = room.LossWPerK.Value,
        GainsW = room.GainsW.Value,
        StartC = room.SetC.Value,
        Floor = new FloorDescription
        {
            AreaM2 = room.AreaM2.Value,
            ScreedM = room.ScreedM.Value,
            CoveringResistance = room.CoveringResistance.Value,
            InsulationResistance = room.InsulationResistance.Value,
            SpacingM = room.SpacingM.Value,
            Use = room.Use.Value,
        },
        Thermostat = new ThermostatDescription
        {
            SetC = room.SetC.Value,
            DifferentialK = room.DifferentialK.Value,
            AnticipationK = room.AnticipationK.Value,
            AnticipationS = room.AnticipationTime.Value.TotalSeconds,
            MinimumOnS = room.MinimumOn.Value.TotalSeconds,
            MinimumOffS = room.MinimumOff.Value.TotalSeconds,
        },
    };
}
