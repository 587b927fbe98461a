using System.Globalization;
using ZoneControl.Bench.Files;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads what the invented winter of a house is like.</summary>
internal static class WeatherReader
{
    private const string NoPlace = "no place in particular";
    private const int ReferenceYear = 2024; // a leap year: the 29th of February is a day like others

    private static readonly SyntheticWinter _common = new();

    public static HouseWeather Read(TableReader? table)
    {
        var weather = new HouseWeather
        {
            FirstDay = FirstDay(table),
            MeanC = Double(table, "mean", Dimension.Temperature, "-20 °C", "30 °C", _common.MeanC),
            SeasonSwingK = Double(table, "season_swing", Dimension.Difference, "0 K", "30 K", _common.SeasonSwingK),
            DaySwingK = Double(table, "day_swing", Dimension.Difference, "0 K", "20 K", _common.DaySwingK),
            NoiseK = Double(table, "noise", Dimension.Difference, "0 K", "15 K", _common.NoiseK),
            NoiseTime = Span(table, "noise_time", "2 h", "60 d", _common.NoiseDays),
            SnapK = Double(table, "cold_snap", Dimension.Difference, "0 K", "40 K", _common.SnapK),
            SnapTime = Span(table, "cold_snap_time", "0 s", "60 d", _common.SnapDays),
            BelowC = Double(table, "below", Dimension.Temperature, "-20 °C", "40 °C", 10),
            PlantRoomC = Double(table, "plant_room", Dimension.Temperature, "-20 °C", "60 °C", 20),
        };
        table?.End();
        return weather;
    }

    /// <summary>A day of the year as files write it: "10-01".</summary>
    public static string DayText(int day) => new DateOnly(ReferenceYear, 1, 1).AddDays(day - 1).ToString("MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A day of the year in words: "1 October".</summary>
    public static string DayInWords(int day) => new DateOnly(ReferenceYear, 1, 1).AddDays(day - 1).ToString("d MMMM", CultureInfo.InvariantCulture);

    private static Setting<int> FirstDay(TableReader? table)
    {
        const string Expected = "a month and a day such as \"10-01\"";
        var derived = Setting.Derived(new DateOnly(ReferenceYear, 10, 1).DayOfYear, "the 1st of October");
        if (table?.Word("first_day", Expected) is not { } text)
            return derived;
        if (DateOnly.TryParseExact(
            $"{ReferenceYear}-{text}", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            return Setting.Given(day.DayOfYear, table.PlaceOf("first_day").Line);
        }

        table.Error("first_day", Words.Quote(text), Expected);
        return derived;
    }

    private static Setting<double> Double(
        TableReader? table, string key, Dimension dimension, string least, string most, double common) =>
        table is null
            ? Setting.Derived(common, NoPlace)
            : SettingReader.Quantity(table, key, dimension, least, most, Setting.Derived(common, NoPlace));

    private static Setting<TimeSpan> Span(TableReader? table, string key, string least, string most, double commonDays)
    {
        var derived = Setting.Derived(TimeSpan.FromDays(commonDays), NoPlace);
        return table is null ? derived : SettingReader.Time(table, key, least, most, derived);
    }
}
