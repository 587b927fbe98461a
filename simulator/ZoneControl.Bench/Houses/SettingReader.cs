using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads a value that a file may give, or takes the derived one.</summary>
internal static class SettingReader
{
    public static Setting<TimeSpan> Time(TableReader table, string key, string least, string most, Setting<TimeSpan> derived) =>
        Or(table, key, table.Time(key, least, most), derived);

    public static Setting<int> Whole(TableReader table, string key, int least, int most, Setting<int> derived) =>
        Or(table, key, table.Whole(key, least, most), derived);

    public static Setting<double> Quantity(
        TableReader table, string key, Dimension dimension, string least, string most, Setting<double> derived) =>
        Or(table, key, table.Quantity(key, dimension, least, most), derived);

    /// <summary>What was read under a key, or the derived value without it.</summary>
    public static Setting<T> Or<T>(TableReader table, string key, T? given, Setting<T> derived)
        where T : struct =>
        given is { } value ? Setting.Given(value, table.PlaceOf(key).Line) : derived;

    /// <summary>A derived time, written as files write it.</summary>
    public static Setting<TimeSpan> Fixed(string time, string from) => Setting.Derived(TimeOf(time), from);

    /// <summary>A time written as files write it.</summary>
    public static TimeSpan TimeOf(string time) =>
        TimeSpan.FromMilliseconds(Quantities.Read(time, Dimension.Time).Value!.Value);
}
