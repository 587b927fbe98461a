using System.Globalization;
using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Winters;

/// <summary>Hours as they are read, with the mistakes on the way.</summary>
internal sealed class WeatherRows(MistakeList mistakes)
{
    private readonly Dictionary<int, int> _firstOfDay = [];

    /// <summary>Outdoor temperatures in the file's order, °C.</summary>
    public List<double> Celsius { get; } = [];

    /// <summary>As many mistakes as are listed.</summary>
    public bool IsFull => mistakes.Count >= WeatherFile.MostMistakes;

    /// <summary>Number of the first hour of a day of a leap year; -1 without one.</summary>
    public int FirstOf(int day) => _firstOfDay.GetValueOrDefault(day, -1);

    /// <summary>The next hour begins such a day, 1 to 366.</summary>
    public void BeginDay(int day) => _firstOfDay.TryAdd(day, Celsius.Count);

    /// <summary>Notes a mistake in a line.</summary>
    public void Error(int line, string column, string found, string expected, string hint = "") =>
        mistakes.Error(new Place(line, 1), column, found, expected, hint);

    /// <summary>Adds a temperature written in a line, or notes what is wrong with it.</summary>
    public void Add(int line, string column, string text, bool fahrenheit, double? missing)
    {
        string unit = fahrenheit ? "°F" : "°C";
        if (!double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !double.IsFinite(value))
        {
            string hint = text.Contains(';', StringComparison.Ordinal) ? "columns are parted by commas" : "";
            Error(line, column, text.Length == 0 ? "nothing" : Words.Quote(text.Trim()), $"a temperature in {unit}", hint);
            return;
        }

        if (value == missing)
        {
            Error(line, column, $"{value:0.#}, which stands for a missing value", $"a temperature in {unit}");
            return;
        }

        double celsius = fahrenheit ? (value - 32) / 1.8 : value;
        if (celsius is >= -90 and <= 60)
            Celsius.Add(celsius);
        else
            Error(line, column, $"{value:0.#} {unit}", fahrenheit ? "-130 to 140 °F" : "-90 to 60 °C");
    }
}

/// <summary>
/// Comma separated values: a heading of which one column is "outdoor_c" or "outdoor_f", then a line an hour. Other columns may
/// be there and are not read.
/// </summary>
internal static class CsvRows
{
    private static readonly string[] _known = ["outdoor_c", "outdoor_f"];

    public static void Read(string heading, LineReader lines, WeatherRows rows)
    {
        string[] columns = [.. heading.TrimStart('\uFEFF', 'ï', '»', '¿').Split(',').Select(column => column.Trim().Trim('"'))];
        int at = Array.FindIndex(columns, column => _known.Contains(column));
        if (at < 0)
        {
            rows.Error(1, "", Words.Quote(heading), "a heading with a column \"outdoor_c\" or \"outdoor_f\"",
                columns.Select(column => Words.DidYouMean(column, _known)).FirstOrDefault(meant => meant.Length > 0) ?? "");
            return;
        }

        bool fahrenheit = columns[at] == _known[1];
        while (!rows.IsFull && lines.Next() is { } line)
        {
            if (line.Length == 0)
                continue;
            string[] cells = line.Split(',');
            if (cells.Length != columns.Length)
            {
                rows.Error(lines.Number, "", $"{cells.Length} columns", $"{columns.Length} as in the heading");
                continue;
            }

            rows.Add(lines.Number, columns[at], cells[at].Trim().Trim('"'), fahrenheit, missing: null);
        }

        if (rows.Celsius.Count == 0 && !rows.IsFull)
            rows.Error(lines.Number, "", "no hour at all", "a line an hour below the heading");
    }
}

/// <summary>
/// The public EPW layout: eight heading lines, then a line an hour: year, month, day, hour 1 to 24, minute, flags, dry bulb °C, and
/// 28 more columns; 99.9 for a missing dry bulb.
/// </summary>
internal static class EpwRows
{
    private const int HeadingLines = 8;
    private const int LeastColumns = 7;
    private const double Missing = 99.9;
    private const int LeapYear = 2024;

    public static void Read(LineReader lines, WeatherRows rows)
    {
        for (int i = 1; i < HeadingLines; i++)
        {
            if (lines.Next() is null)
            {
                rows.Error(lines.Number, "", $"{i} heading lines and the end of the file", $"{HeadingLines} heading lines");
                return;
            }
        }

        int hourBefore = 24;
        int before = rows.Celsius.Count;
        while (!rows.IsFull && lines.Next() is { } line)
        {
            if (line.Length == 0)
                continue;
            string[] cells = line.Split(',');
            if (cells.Length < LeastColumns)
            {
                rows.Error(lines.Number, "", $"{cells.Length} columns", $"35 columns, at least {LeastColumns}");
                continue;
            }

            if (Day(cells) is not { } day || Whole(cells[3], 24) is not { } hour || hour < 1)
            {
                rows.Error(lines.Number, "date", Words.Quote(string.Join(',', cells.Take(4))), "year, month, day and hour 1 to 24");
                continue;
            }

            if (hour != hourBefore % 24 + 1)
                rows.Error(lines.Number, "hour", $"hour {hour} after hour {hourBefore}", $"hour {(hourBefore % 24) + 1}, since each line is an hour");
            hourBefore = hour;
            if (hour == 1)
                rows.BeginDay(day);
            rows.Add(lines.Number, "dry bulb", cells[6], fahrenheit: false, Missing);
        }

        if (rows.Celsius.Count == before && !rows.IsFull)
            rows.Error(lines.Number, "", "no hour at all", "a line an hour below the heading");
    }

    private static int? Day(string[] cells) =>
        Whole(cells[1], 12) is { } month and > 0 && Whole(cells[2], 31) is { } day and > 0
            && day <= DateTime.DaysInMonth(LeapYear, month)
            ? new DateOnly(LeapYear, month, day).DayOfYear
            : null;

    private static int? Whole(string text, int most) =>
        int.TryParse(text, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out int value)
            && value <= most ? value : null;
}
