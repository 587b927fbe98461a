using ZoneControl.Bench.Scripts;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Houses;

/// <summary>Every setting of a house's warm side that has a default: what is in force, and where it came from.</summary>
public static class HeatSettings
{
    /// <summary>The settings in the order of the file format's reference, keys as in the file.</summary>
    public static IReadOnlyList<SettingLine> Of(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        HouseHeat heat = house.HeatOrCommon();
        return [.. Rooms(house, heat), .. Source(house, heat.Source), .. Weather(house, heat.Weather)];
    }

    private static IEnumerable<SettingLine> Rooms(House house, HouseHeat heat)
    {
        for (int i = 0; i < heat.Rooms.Count; i++)
        {
            HouseRoom room = heat.Rooms[i];
            string key = "zone." + house.Zones[i].Name;
            yield return Line(key + ".room.area", room.AreaM2, value => Show.Area(value, house.Units));
            yield return Line(key + ".room.loss", room.LossWPerK, value => $"{value:0.#} W/K");
            yield return Line(key + ".room.gains", room.GainsW, value => $"{value:0} W");
            yield return Line(key + ".room.capacity", room.CapacityJPerK, value => $"{value / 1e6:0.##} MJ/K");
            yield return Line(key + ".room.use", room.Use, Use);
            yield return Line(key + ".floor.spacing", room.SpacingM, value => $"{value * 100:0.#} cm");
            yield return Line(key + ".floor.screed", room.ScreedM, value => $"{value * 1000:0.#} mm");
            yield return Line(key + ".floor.covering", room.CoveringResistance, Resistance);
            yield return Line(key + ".floor.insulation", room.InsulationResistance, Resistance);
            yield return Line(key + ".thermostat.set", room.SetC, value => Show.Temperature(value, house.Units));
            yield return Line(key + ".thermostat.differential", room.DifferentialK, Kelvin);
            yield return Line(key + ".thermostat.anticipation", room.AnticipationK, Kelvin);
            if (room.AnticipationK.Value > 0)
                yield return Time(key + ".thermostat.anticipation_time", room.AnticipationTime);
            yield return Time(key + ".thermostat.minimum_on", room.MinimumOn);
            yield return Time(key + ".thermostat.minimum_off", room.MinimumOff);
        }
    }

    private static IEnumerable<SettingLine> Source(House house, HouseSource source)
    {
        string Celsius(double value) => Show.Temperature(value, house.Units);
        yield return Line("heat_source.power", source.PowerW, value => $"{value / 1000:0.##} kW");
        yield return Line("heat_source.reset", source.Set, set => set.ColdWaterC == set.MildWaterC
            ? Celsius(set.ColdWaterC)
            : $"{Celsius(set.ColdWaterC)} at {Celsius(set.ColdOutdoorC)}, {Celsius(set.MildWaterC)} at {Celsius(set.MildOutdoorC)}");
        yield return Line("heat_source.differential", source.DifferentialK, Kelvin);
        yield return Time("heat_source.minimum_run", source.MinimumRun);
        yield return Time("heat_source.minimum_rest", source.MinimumRest);
        yield return Line("heat_source.high_limit", source.HighLimitC, Celsius);
        yield return Line("heat_source.water", source.WaterM3, value => Show.Volume(value, house.Units));
        yield return Line("heat_source.loss", source.LossWPerK, value => $"{value:0.##} W/K");
        if (source.TankM3 > 0)
            yield return Line("tank.loss", source.TankLossWPerK, value => $"{value:0.##} W/K");
    }

    private static IEnumerable<SettingLine> Weather(House house, HouseWeather weather)
    {
        string Celsius(double value) => Show.Temperature(value, house.Units);
        yield return Line("weather.first_day", weather.FirstDay, WeatherReader.DayText);
        yield return Line("weather.mean", weather.MeanC, Celsius);
        yield return Line("weather.season_swing", weather.SeasonSwingK, Kelvin);
        yield return Line("weather.day_swing", weather.DaySwingK, Kelvin);
        yield return Line("weather.noise", weather.NoiseK, Kelvin);
        yield return Time("weather.noise_time", weather.NoiseTime);
        yield return Line("weather.cold_snap", weather.SnapK, Kelvin);
        yield return Time("weather.cold_snap_time", weather.SnapTime);
        yield return Line("weather.below", weather.BelowC, Celsius);
        yield return Line("weather.plant_room", weather.PlantRoomC, Celsius);
    }

    private static string Use(FloorUse use) => use switch
    {
        FloorUse.Edge => "edge",
        FloorUse.Bath => "bath",
        _ => "living",
    };

    private static string Kelvin(double value) => $"{value:0.##} K";

    private static string Resistance(double value) => $"{value:0.###} m2K/W";

    private static SettingLine Time(string key, Setting<TimeSpan> setting) => Line(key, setting, Durations.InWords);

    private static SettingLine Line<T>(string key, Setting<T> setting, Func<T, string> text) =>
        new(key, text(setting.Value), setting.DerivedFrom, setting.Line);
}
