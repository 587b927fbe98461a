using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Web.View.Sheets;

/// <summary>A house's history as a document: opening times over the years and what is getting slow.</summary>
public static class HistorySheet
{
    /// <summary>The document.</summary>
    public static SheetView From(House house, HistoryReading history)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(history);
        IReadOnlyList<ZoneDrift> drift = Drift.Of(house, history.Entries);
        ZoneDrift[] slow = [.. drift.Where(zone => zone.IsTooSlow || zone.IsSlowing)];
        ZoneDrift[] unmeasured = [.. drift.Where(zone => zone.Times.Count == 0)];
        var sections = new List<SheetSection>
        {
            new("Records", [Records(house, history)]),
            new("Opening times over the years", [Times(house, drift), .. Slow(house, slow)]),
        };
        if (unmeasured.Length > 0)
        {
            sections.Add(new SheetSection("Not measured",
            [
                new SheetText($"{house.ZoneLabels(unmeasured.Sum(zone => 1 << zone.Zone))}: no time on record. A two-wire valve reports nothing; "
                    + "only a person's watch can: season HOUSE record --opened ZONE=TIME."),
            ]));
        }

        return new SheetView("season history", "How the valves aged", CheckSheet.HouseLine(house),
            $"{Quantity.Count(history.Entries.Count, "record")} in {Path.GetFileName(history.Folder)}. {Origin(history)}".TrimEnd(), sections)
        {
            Verdict = new SheetVerdict(slow.Length == 0, slow.Length == 0 ? "STEADY" : "SLOWING",
                slow.Length == 0
                    ? "No zone takes notably longer than at first."
                    : $"{house.ZoneLabels(slow.Sum(zone => 1 << zone.Zone))}: getting slow."),
        };
    }

    private static string Origin(HistoryReading history)
    {
        int virtually = history.Entries.Count(entry => entry.Record.Source == SeasonRecord.Virtual);
        return virtually == 0 ? ""
            : virtually == history.Entries.Count ? "All of them come from virtual pins: they show the model's valves, not the house's."
            : "Those from virtual pins show the model's valves, not the house's, and are left out of the times below.";
    }

    private static SheetBlock Records(House house, HistoryReading history) => history.Entries.Count == 0
        ? new SheetText("None yet. A commissioning run with --keep, or season HOUSE record, makes the first.")
        : new SheetTable("Oldest first", [new("day"), new("season"), new("from"), new("pressure", true), new("faults", true)],
            [
                .. history.Entries.Select(entry => (IReadOnlyList<string>)
                [
                    entry.Record.Date, entry.Record.Season, entry.Record.Source,
                    entry.Record.PressureBar is { } bar ? Bench.Choosing.Measured.Pressure(bar * 1e5, house.Units) : "-",
                    $"{entry.Record.Faults.Count}",
                ]),
            ]);

    private static SheetTable Times(House house, IReadOnlyList<ZoneDrift> drift) => new(
        "First and last time on record, by end switch or by a person's watch",
        [new("zone"), new("from"), new("first", true), new("last", true), new("change", true), new("allowed", true)],
        [
            .. drift.Where(zone => zone.Times.Count > 0).Select(zone => (IReadOnlyList<string>)
            [
                house.Zones[zone.Zone].Label,
                zone.Times[0].BySwitch ? "end switch" : "watch",
                Time(zone.Times[0].Seconds),
                Time(zone.Times[^1].Seconds),
                zone.Ratio is { } ratio ? $"{(ratio - 1) * 100:+0;-0;0} %" : "-",
                Time(zone.WorstS),
            ]),
        ]);

    private static SheetFindings[] Slow(House house, ZoneDrift[] slow) => slow.Length == 0
        ? []
        :
        [
            new SheetFindings([.. slow.Select(zone => new SheetFinding(
                zone.IsTooSlow ? SheetMark.Fault : SheetMark.Advice,
                "getting slow",
                $"{house.Zones[zone.Zone].Label} took {Time(zone.Times[0].Seconds)} on {zone.Times[0].Date} and {Time(zone.Times[^1].Seconds)} on {zone.Times[^1].Date}"
                    + (zone.IsTooSlow ? $", more than the {Time(zone.WorstS)} that the house file allows" : ""),
                zone.IsTooSlow ? "opening_time of its actuator in the house file" : $"{(ZoneDrift.SlowTimes - 1) * 100:0} % longer than at first is slow (common practice)",
                zone.IsTooSlow ? "renew the actuator, or give it the longer opening_time" : "watch it; have an actuator ready"))]),
        ];

    private static string Time(double seconds) => Durations.InWords((long)Math.Round(seconds) * 1000);
}
