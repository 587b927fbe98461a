using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Web.View.Sheets;

/// <summary>A house's history as a document: opening times over the years, what is getting slow, and the pressure.</summary>
public static class HistorySheet
{
    /// <summary>The document.</summary>
    public static SheetView From(House house, HistoryReading history)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(history);
        IReadOnlyList<ZoneDrift> drift = Drift.Of(house, history.Entries);
        ZoneDrift[] measured = [.. drift.Where(zone => zone.Times.Count > 0)];
        int unmeasured = drift.Where(zone => zone.Times.Count == 0 && !house.Zones[zone.Zone].Gated).Sum(zone => 1 << zone.Zone);
        Finding[] pressure = [.. PressureDrift.Of(house, history.Entries)];
        var sections = new List<SheetSection> { new("Records", [Records(house, history)]) };
        if (measured.Length > 0)
            sections.Add(new SheetSection("Opening times over the years", [Times(house, measured), .. Slow(house, measured)]));
        if (pressure.Length > 0)
            sections.Add(new SheetSection("Pressure", [CheckSheet.Findings(pressure)]));
        if (unmeasured != 0)
        {
            sections.Add(new SheetSection("Not measured",
            [
                new SheetText($"{house.ZoneLabels(unmeasured)}: no time on record. A two-wire valve reports nothing; only a person's watch can tell: "
                    + "season HOUSE record --opened ZONE=TIME."),
            ]));
        }

        return new SheetView("season history", "How the valves aged", CheckSheet.HouseLine(house),
            $"{Quantity.Count(history.Entries.Count, "record")} in {Path.GetFileName(history.Folder)}. {Origin(history)}".TrimEnd(), sections)
        {
            Verdict = Verdict(house, measured, pressure.Length > 0),
            FromModel = history.Entries.Count > 0 && history.Entries.All(entry => entry.Record.Source == SeasonRecord.Virtual),
        };
    }

    private static SheetVerdict Verdict(House house, ZoneDrift[] measured, bool pressure)
    {
        string Names(Func<ZoneDrift, bool> which) => house.ZoneLabels(measured.Where(which).Aggregate(0, (mask, zone) => mask | (1 << zone.Zone)));
        const string Look = " The pressure wants a look.";
        string more = pressure ? Look : "";
        if (measured.Any(zone => zone.IsFault && zone.IsImpossible))
            return new SheetVerdict(false, "FAULT", $"{Names(zone => zone.IsFault)}: times that cannot be, or do not fit the house file.{more}");
        if (measured.Any(zone => zone.IsFault))
            return new SheetVerdict(false, "FAULT", $"{Names(zone => zone.IsFault)}: too slow for the times in the house file.{more}");
        if (measured.Any(zone => zone.IsSlowing))
            return new SheetVerdict(true, "SLOWING", $"{Names(zone => zone.IsSlowing)}: getting slow.{more}");
        if (measured.Any(zone => zone.IsTooSlow))
            return new SheetVerdict(true, "SLOW", $"{Names(zone => zone.IsTooSlow)}: slower than the house file says.{more}");
        if (pressure)
            return new SheetVerdict(true, "PRESSURE", "The pressure wants a look; no valve is slow.");
        if (measured.Length == 0)
            return new SheetVerdict(true, "NOTHING MEASURED YET", "No zone has an opening time on record.");
        return measured.Any(zone => zone.Ratio is not null)
            ? new SheetVerdict(true, "STEADY", "No zone takes notably longer than at first.")
            : new SheetVerdict(true, "FIRST TIMES", "Within the house file's; whether a valve gets slower shows with the next record.");
    }

    private static string Origin(HistoryReading history)
    {
        int virtually = history.Entries.Count(entry => entry.Record.Source == SeasonRecord.Virtual);
        return virtually == 0 ? ""
            : virtually == history.Entries.Count ? "All of them come from virtual pins: they show the model's valves, not the house's."
            : "Those from virtual pins show the model's valves, not the house's, and are left out of the times below.";
    }

    private static SheetBlock Records(House house, HistoryReading history) => history.Entries.Count == 0
        ? new SheetText("None yet. season HOUSE record makes the first from what was written down; a rehearsal with --keep can be filed too.")
        : new SheetTable("Oldest first", [new("day"), new("season"), new("from"), new("pressure", true), new("faults", true)],
            [
                .. history.Entries.Select(entry => (IReadOnlyList<string>)
                [
                    entry.Record.Date, entry.Record.Season,
                    entry.Record.Source == SeasonRecord.Virtual ? "a model" : entry.Record.Source,
                    entry.Record.PressureBar is { } bar ? Measured.Pressure(bar * 1e5, house.Units) : "-",
                    $"{RecordFindings.Faults(house, entry.Record)}",
                ]),
            ]);

    private static SheetTable Times(House house, ZoneDrift[] measured) => new(
        "First and last time on record; allowed is what the house file calls the worst time to fully open",
        [new("zone"), new("by"), new("first", true), new("last", true), new("change", true), new("allowed", true)],
        [
            .. measured.Select(zone => (IReadOnlyList<string>)
            [
                house.Zones[zone.Zone].Label,
                zone.Times[0].BySwitch ? "end switch" : "watch",
                Time(zone.Times[0].Seconds),
                zone.Times.Count > 1 ? Time(zone.Times[^1].Seconds) : "-",
                zone.Ratio is { } ratio ? $"{(ratio - 1) * 100:+0;-0;0} %" : "-",
                Time(zone.WorstS),
            ]),
        ]);

    private static SheetFindings[] Slow(House house, ZoneDrift[] measured)
    {
        Finding[] found =
        [
            .. measured.Where(zone => zone.IsTooSlow).Select(zone => zone.Judged! with { Says = $"{zone.Times[^1].Date}, {zone.Judged.Says}" }),
            .. measured.Where(zone => zone.IsSlowing).Select(zone => new Finding(
                "getting slow", FindingKind.Advice,
                $"{house.Zones[zone.Zone].Label} took {Dated(zone.First!)} and {Dated(zone.Times[^1])}",
                $"{(ZoneDrift.SlowTimes - 1) * 100:0} % longer than at first is slow (common practice)", "watch it; have an actuator ready")),
        ];
        return found.Length == 0 ? [] : [CheckSheet.Findings(found)];
    }

    private static string Dated(OpeningTime time) => $"{Time(time.Seconds)} on {time.Date}";

    private static string Time(double seconds) => Durations.InWords((long)Math.Round(seconds) * 1000);
}
