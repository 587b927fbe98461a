using System.Globalization;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Cli.Commands;

/// <summary>Makes a record of what a person measured.</summary>
internal static class RecordByHand
{
    /// <summary>The record.</summary>
    /// <exception cref="BadInputException">Something cannot be used, or nothing was measured.</exception>
    public static SeasonRecord From(House house, SeasonSettings settings, DateOnly date)
    {
        var mistakes = new List<string>();
        string season = settings.Season ?? "start";
        if (season is not ("start" or "stop"))
            mistakes.Add(Words.Unknown("season", season, ["start", "stop"]));
        var opened = Times(house, "--opened", settings.Opened, mistakes);
        var made = Times(house, "--made", settings.Made, mistakes);
        var closed = Times(house, "--closed", settings.Closed, mistakes);
        double? pascal = Try(mistakes, () => SheetDesk.Measure("--pressure", settings.Pressure, Dimension.Pressure, 0, 1e6, "0 to 10 bar"));
        foreach (int zone in made.Keys.Where(zone => !house.Zones[zone].Actuator.HasSwitch))
            mistakes.Add($"--made: {house.Zones[zone].Name} has no end switch; --opened is for a person's watch");
        if (settings is { Opened: [], Made: [], Closed: [], Pressure: null, Note: null })
            mistakes.Add("Nothing to record: give --opened, --made, --closed, --pressure or --note.");
        if (mistakes.Count > 0)
            throw new BadInputException(string.Join('\n', mistakes));
        return new SeasonRecord
        {
            House = house.Name,
            Date = Written(date),
            Season = season,
            Source = SeasonRecord.ByHand,
            PressureBar = pascal is { } pa ? Math.Round(pa / 1e5, 3) : null,
            Notes = settings.Note ?? "",
            Zones =
            [
                .. house.Zones.Select((zone, i) => new ZoneRecord
                {
                    Zone = zone.Name,
                    Actuator = zone.Actuator.Name,
                    OpenedS = Found(opened, i),
                    SwitchMadeS = Found(made, i),
                    ClosedS = Found(closed, i),
                }),
            ],
        };
    }

    /// <summary>The day of a record: that of the option, or today.</summary>
    /// <exception cref="BadInputException">It is no day.</exception>
    public static DateOnly Day(string? text)
    {
        if (text is null)
            return DateOnly.FromDateTime(DateTime.Now);
        if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
            throw new BadInputException($"--date: found \"{text}\", expected a day such as 2026-10-03");
        // A day ahead: somewhere it is tomorrow already.
        return day <= DateOnly.FromDateTime(DateTime.Now).AddDays(1)
            ? day
            : throw new BadInputException($"--date: found \"{text}\", expected a day that is not in the future");
    }

    /// <summary>A day as records write it.</summary>
    public static string Written(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Dictionary<int, double> Times(House house, string option, IEnumerable<string> texts, List<string> mistakes)
    {
        var times = new Dictionary<int, double>();
        foreach (string text in texts)
        {
            string[] parts = text.Split('=', 2);
            if (parts.Length < 2)
            {
                mistakes.Add($"{option}: found \"{text}\", expected a zone and a time, such as bath=\"3 min\"");
                continue;
            }

            int zone = house.ZoneIndex(parts[0].Trim());
            if (zone < 0)
                mistakes.Add($"{option}: " + Words.Unknown("zone", parts[0].Trim(), [.. house.Zones.Select(z => z.Name)]));
            double? ms = Try(mistakes, () => SheetDesk.Measure(option, parts[1], Dimension.Time, 1000, 86_400_000, "1 s to 1 d"));
            if (zone >= 0 && ms is { } time && !times.TryAdd(zone, Math.Round(time / 1000, 1)))
                mistakes.Add($"{option}: found {parts[0]} twice, expected each zone at most once");
        }

        return times;
    }

    /// <summary>A quantity; null, and a mistake more, when it cannot be used.</summary>
    private static double? Try(List<string> mistakes, Func<double?> measure)
    {
        try
        {
            return measure();
        }
        catch (BadInputException mistake)
        {
            mistakes.Add(mistake.Message);
            return null;
        }
    }

    private static double? Found(Dictionary<int, double> times, int zone) => times.TryGetValue(zone, out double time) ? time : null;
}
