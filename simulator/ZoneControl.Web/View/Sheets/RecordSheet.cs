using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Web.View.Sheets;

/// <summary>A record of a season's start or stop as a document, and what it says of the house file.</summary>
public static class RecordSheet
{
    private const string Thermostats =
        "Whether each thermostat calls its own room's zone is not tried here: turn one up at a time and feel which floor gets warm.";

    /// <summary>The document of a record.</summary>
    public static SheetView From(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        var sections = new List<SheetSection>
        {
            new("What is wrong",
            [
                record.Faults.Count == 0
                    ? new SheetText("Nothing that was tried is wrong.")
                    : new SheetFindings([.. record.Faults.Select(fault => new SheetFinding(
                        SheetMark.Fault, Spaced(fault.Fault), fault.Says, "", fault.Change))]),
            ]),
            new("What is not known", [.. record.Unknown.Select(words => new SheetText(words))]),
            new("Strokes with the pump off", [Strokes(house, record)]),
        };
        if (record.Trials.Count > 0)
            sections.Add(new SheetSection("The pump with zones open", [Trials(house, record)]));
        if (record.Notes.Length > 0 || record.PressureBar is not null)
            sections.Add(new SheetSection("Notes", [new SheetText(Notes(house, record))]));
        if (record.Unknown.Count == 0)
            sections.RemoveAt(1);
        return new SheetView("season record", record.Season == "stop" ? "End of the season" : "Start of the season",
            CheckSheet.HouseLine(house),
            $"{record.Date}, {record.Source}{(record.Controller.Length > 0 ? $", {record.Controller}" : "")}. {Thermostats}", sections)
        {
            Verdict = new SheetVerdict(record.Faults.Count == 0,
                record.Faults.Count > 0 ? "FAULT" : record.Unknown.Count > 0 ? "INCOMPLETE" : "GOOD",
                $"{Quantity.Count(record.Faults.Count, "fault")}, {Quantity.Count(record.Unknown.Count, "thing")} not known."),
        };
    }

    /// <summary>The section of a check that offers a record's measured times as settings.</summary>
    public static SheetSection Offered(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        IReadOnlyList<MeasuredSetting> settings = RecordFindings.Settings(house, record);
        SheetBlock block = settings.Count == 0
            ? new SheetText("No measured time differs from the house file's.")
            : new SheetLines("To take over into the house file",
            [
                .. settings.GroupBy(setting => setting.Actuator).SelectMany(actuator => (string[])
                [
                    $"# in the [[actuator]] table with name = \"{actuator.Key}\":",
                    .. actuator.Select(setting => $"{setting.Key} = \"{setting.Value}\"   # was \"{setting.Now}\""),
                ]),
            ]);
        return new SheetSection($"Times measured on {record.Date}", [block]);
    }

    private static SheetTable Strokes(House house, SeasonRecord record) => new(
        "From energised to the end switch and, by a watch, to fully open; from released to the switch breaking",
        [new("zone"), new("switch", true), new("open", true), new("broke", true), new("moved"), new("warm")],
        [
            .. record.Zones.Select(zone => (IReadOnlyList<string>)
            [
                Label(house, zone.Zone),
                zone.NotTried.Length > 0 ? "not tried" : HasSwitch(house, zone) ? Time(zone.SwitchMadeS) : "none",
                Time(zone.OpenedS),
                HasSwitch(house, zone) ? Time(zone.SwitchBrokeS) : "none",
                Names(house, zone.Moved), Names(house, zone.Warmed),
            ]),
        ]);

    private static SheetTable Trials(House house, SeasonRecord record) => new(
        "What showed that water moved",
        [new("open zones"), new("flow switch"), new("pump heard"), new("passing water")],
        [
            .. record.Trials.Select(trial => (IReadOnlyList<string>)
            [
                Names(house, trial.Zones),
                trial.NotRun.Length > 0 ? "not run" : trial.FlowSwitch switch
                {
                    null => "none fitted",
                    true => $"after {Time(trial.FlowAfterS)}",
                    false => "no flow",
                },
                trial.PumpHeard switch { null => "nobody listened", true => "yes", false => "no" },
                Names(house, trial.Passing),
            ]),
        ]);

    private static string Notes(House house, SeasonRecord record) =>
        (record.PressureBar is { } bar ? $"Pressure, cold: {Measured.Pressure(bar * 1e5, house.Units)}. " : "") + record.Notes;

    private static string Names(House house, IReadOnlyList<string>? names) => names switch
    {
        null => "nobody looked",
        { Count: 0 } => "none",
        _ => string.Join(", ", names.Select(name => Label(house, name))),
    };

    private static string Label(House house, string name) =>
        house.ZoneIndex(name) is >= 0 and var zone ? house.Zones[zone].Label : name;

    private static bool HasSwitch(House house, ZoneRecord zone) =>
        house.ZoneIndex(zone.Zone) is not (>= 0 and var index) || house.Zones[index].Actuator.HasSwitch;

    private static string Time(double? seconds) => seconds is { } s ? Durations.InWords((long)Math.Round(s) * 1000) : "-";

    private static string Spaced(string word) =>
        string.Concat(word.Select(c => char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"));
}
