using System.Text;
using ZoneControl.Bench.Files;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Winters;

/// <summary>What came of reading a weather file.</summary>
/// <param name="Weather">The weather; null when there is a mistake.</param>
/// <param name="Mistakes">Every mistake found, in the order of the file.</param>
public sealed record WeatherReading(Weather? Weather, IReadOnlyList<FileMistake> Mistakes);

/// <summary>
/// Reads hourly outdoor temperatures, line by line: CSV with a heading, or the public EPW layout (eight heading lines, then 35
/// columns a line, dry bulb temperature in the seventh). Bad content is a list of mistakes, never an exception.
/// </summary>
public static class WeatherFile
{
    /// <summary>Most mistakes listed; after that the rest is not looked at.</summary>
    public const int MostMistakes = 50;

    private const long LargestBytes = 64 * 1024 * 1024;
    private const int LongestLine = 10_000;

    /// <summary>Reads a weather file from disk, of at most 64 MiB.</summary>
    /// <param name="path">The file.</param>
    /// <param name="firstDay">
    /// First day that is wanted, as day of a leap year, 1 to 366. A file in EPW layout is taken from there, and from its start again
    /// when it ends and holds a whole year; a CSV file is taken from its first line.
    /// </param>
    /// <param name="days">Length that is wanted, days.</param>
    public static WeatherReading Read(string path, int firstDay, int days)
    {
        var mistakes = new MistakeList(path);
        try
        {
            if (Directory.Exists(path))
                return Refused(mistakes, "a folder", "a weather file");
            // Only digits are read, so any bytes beyond them will do: headings in old files are in many encodings.
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (stream.CanSeek && stream.Length > LargestBytes)
                return Refused(mistakes, "a file of more than 64 MiB", "a file of at most 64 MiB");
            using var reader = new StreamReader(stream, Encoding.Latin1);
            return Parse(reader, path, firstDay, days);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refused(mistakes, "no such file", "a weather file");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(mistakes, "a file that cannot be read", "a weather file", Words.Clean(e.Message));
        }
    }

    /// <summary>Reads weather from text; <paramref name="fileName"/> is what messages call it.</summary>
    public static WeatherReading Parse(TextReader reader, string fileName, int firstDay, int days)
    {
        ArgumentNullException.ThrowIfNull(reader);
        var mistakes = new MistakeList(fileName);
        var lines = new LineReader(reader, LongestLine);
        string? first = lines.Next();
        if (first is null)
            return Refused(mistakes, "an empty file", "hourly temperatures");
        bool epw = first.TrimStart('\uFEFF', 'ï', '»', '¿').StartsWith("LOCATION,", StringComparison.Ordinal);
        var rows = new WeatherRows(mistakes);
        if (epw)
            EpwRows.Read(lines, rows);
        else
            CsvRows.Read(first, lines, rows);
        if (rows.IsFull)
            mistakes.Error(default, "", $"more than {MostMistakes} mistakes", "", "the rest was not looked at");
        double[]? hours = mistakes.HasErrors ? null : Choose(rows, epw, firstDay, days, mistakes);
        return new WeatherReading(
            mistakes.HasErrors || hours is null ? null : new Weather(Path.GetFileName(Words.Clean(fileName)), hours),
            mistakes.InOrder());
    }

    private static double[]? Choose(WeatherRows rows, bool epw, int firstDay, int days, MistakeList mistakes)
    {
        const int YearHours = 8760;
        int wanted = days * 24;
        int from = epw ? rows.FirstOf(firstDay) : 0;
        if (from < 0)
        {
            mistakes.Error(default, "", "no hour of the first day that is wanted",
                $"a file with {Houses.WeatherReader.DayText(firstDay)} in it, month and day");
            return null;
        }

        int held = rows.Celsius.Count;
        int usable = epw && held >= YearHours ? int.MaxValue : held - from;
        if (usable < wanted)
        {
            mistakes.Error(default, "", $"{usable} hours{(from > 0 ? " from the first day on" : "")}",
                $"at least {wanted} for {days} days{(epw ? ", or a whole year" : "")}");
            return null;
        }

        return [.. Enumerable.Range(0, wanted).Select(hour => rows.Celsius[(from + hour) % held])];
    }

    private static WeatherReading Refused(MistakeList mistakes, string found, string expected, string hint = "")
    {
        mistakes.Error(default, "", found, expected, hint);
        return new WeatherReading(null, mistakes.InOrder());
    }
}
