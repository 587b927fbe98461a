using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Web.View.Sheets;

/// <summary>A house check as a document.</summary>
public static class CheckSheet
{
    /// <summary>The document.</summary>
    /// <param name="report">What the check found.</param>
    /// <param name="extra">Sections to put after the findings, such as a comparison with a record.</param>
    public static SheetView From(CheckReport report, params IReadOnlyList<SheetSection> extra)
    {
        ArgumentNullException.ThrowIfNull(report);
        House house = report.House;
        int faults = report.Findings.Count(f => f.Kind == FindingKind.Fault);
        int advice = report.Findings.Count(f => f.Kind == FindingKind.Advice);
        var sections = new List<SheetSection>
        {
            new("What was found", [Findings(report.Findings)]),
        };
        sections.AddRange(extra);
        sections.Add(new SheetSection("The pump with zones open", [Sets(report)]));
        sections.Add(new SheetSection("Loops, all zones open", [Loops(report)]));
        if (report.Capacity is { } capacity)
            sections.Add(new SheetSection("Capacity by flow", Capacity(report, capacity)));
        sections.Add(new SheetSection("What was taken for granted", [new SheetText(Assumed(report))]));
        return new SheetView("House check", "Do pump, pipes, valves and times fit together?", HouseLine(house), "", sections)
        {
            Verdict = new SheetVerdict(
                faults == 0, faults > 0 ? "FAULT" : advice > 0 ? "ADVICE" : "FINE",
                $"{Quantity.Count(faults, "fault")}, {Quantity.Count(advice, "piece")} of advice, "
                    + $"{report.Findings.Count - faults - advice} as they should be."),
        };
    }

    /// <summary>Findings, faults first.</summary>
    public static SheetFindings Findings(IReadOnlyList<Finding> findings) => new(
    [
        .. findings.OrderByDescending(f => f.Kind).Select(f => new SheetFinding(
            f.Kind switch
            {
                FindingKind.Fault => SheetMark.Fault,
                FindingKind.Advice => SheetMark.Advice,
                _ => SheetMark.Fine,
            },
            f.Topic, Capital(f.Says), f.Basis, f.Change)),
    ]);

    /// <summary>The house's name and what it consists of.</summary>
    public static string HouseLine(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        int loops = house.Zones.Sum(zone => zone.Loops.Count) + house.StandingLoops.Count;
        return $"{house.Name}: {Quantity.Count(house.Zones.Count, "zone")}, {Quantity.Count(loops, "loop")}, "
            + Quantity.Count(house.Manifolds.Count, "manifold");
    }

    private static SheetTable Sets(CheckReport report) => new(
        $"The pump's operating point; it wants {Show.Flow(report.House.Pump.MinimumFlowM3s.Value, report.House.Units)} at least",
        [new("open"), new("capacity", true), new("flow", true), new("head", true)],
        [
            .. report.Sets.Select(set => (IReadOnlyList<string>)
            [
                set.Name,
                $"{set.Capacity}",
                Show.Flow(set.Open.PumpFlowM3s, report.House.Units),
                Show.Length(set.Open.PumpHeadM, report.House.Units),
            ]),
        ]);

    private static SheetTable Loops(CheckReport report) => new(
        "Head is what tube, bends and the open valve take",
        [new("loop"), new("length", true), new("flow", true), new("wanted", true), new("head", true), new("velocity", true)],
        [
            .. report.Loops.Select(loop => (IReadOnlyList<string>)
            [
                loop.Label,
                Show.Length(loop.LengthM, report.House.Units),
                Show.Flow(loop.FlowM3s, report.House.Units),
                Show.Flow(loop.DesignM3s, report.House.Units),
                Show.Length(loop.HeadM, report.House.Units),
                Measured.Velocity(loop.VelocityMPerS, report.House.Units),
            ]),
        ]);

    private static SheetBlock[] Capacity(CheckReport report, CapacityAdvice advice) =>
    [
        new SheetText($"One unit stands for {Show.Flow(advice.UnitM3s, report.House.Units)}, a tenth of the pump's minimum flow."),
        new SheetTable(
            "Each zone's flow with all zones open, and what it would count as",
            [new("zone"), new("flow", true), new("capacity now", true), new("by flow", true)],
            [
                .. advice.Zones.Select(line => (IReadOnlyList<string>)
                [
                    report.House.Zones[line.Zone].Label, Show.Flow(line.FlowM3s, report.House.Units), $"{line.Now}", $"{line.ByFlow}",
                ]),
            ]),
        new SheetText(advice.MinimumOpen is { } open
            ? $"With these, minimum_open = {open} is the least that keeps the pump above its minimum flow with every set of zones."
            : "With these no minimum_open keeps the pump above its minimum flow."),
    ];

    private static string Assumed(CheckReport report)
    {
        DisplayUnits units = report.House.Units;
        CheckAssumptions assumed = report.Assumed;
        string heat = assumed.DesignFlowM3s is { } flow
            ? $"{Show.Flow(flow, units)} are wanted in each loop"
            : (assumed.FluxWPerM2 is { } flux
                ? $"the floor is to give {Measured.Flux(flux, units)}"
                : $"the floor is to give what its room loses at {Show.Temperature(report.Needs.ColdestC, units)} outdoors")
                + $", and the water to cool by {Measured.Difference(assumed.DropK, units)} meanwhile";
        return $"Water at {Show.Temperature(assumed.WaterC, units)}; {heat}. Rooms and floors are as the house file says, or common where it "
            + "does not. Flows come from the model of the house file; they are no measurement.";
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
