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
                    + $"{report.Findings.Count - faults - advice} fine."),
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

    private static SheetTable Sets(CheckReport report)
    {
        DisplayUnits units = report.House.Units;
        bool bypass = report.House.Bypass is not null || report.House.FixedBypass is not null;
        string flow = Measured.FlowUnit(units);
        return new SheetTable(
            $"The pump wants {Show.Flow(report.House.Pump.MinimumFlowM3s.Value, units)} at least. \"Counts as\" is what minimum_open = "
                + $"{report.House.Controller.MinimumOpen} asks for: loops, or what the file says; \"least flow\" is the worst set that reaches it"
                + (bypass ? "; what the bypass passes is part of the pump's flow" : ""),
            [
                new("open"), new("counts as", true), new($"pump, {flow}", true),
                .. bypass ? (SheetColumn[])[new($"bypass, {flow}", true)] : [],
                new($"head, {Measured.LengthUnitOf(units)}", true),
            ],
            [
                .. report.Sets.Select(set => (IReadOnlyList<string>)
                [
                    set.Name,
                    $"{set.Capacity}",
                    Measured.FlowIn(set.Open.PumpFlowM3s, units),
                    .. bypass ? (string[])[Measured.FlowIn(set.Open.BypassFlowM3s, units)] : [],
                    Measured.HeadIn(set.Open.PumpHeadM, units),
                ]),
            ]);
    }

    private static SheetTable Loops(CheckReport report)
    {
        DisplayUnits units = report.House.Units;
        string flow = Measured.FlowUnit(units);
        string length = Measured.LengthUnitOf(units);
        return new SheetTable(
            "Head is what tube, bends and the open valve take; wanted is the design flow",
            [
                new("loop"), new($"length, {length}", true), new($"flow, {flow}", true), new($"wanted, {flow}", true),
                new($"head, {length}", true), new($"velocity, {Measured.VelocityUnit(units)}", true),
            ],
            [
                .. report.Loops.Select(loop => (IReadOnlyList<string>)
                [
                    loop.Label,
                    Measured.LengthIn(loop.LengthM, units),
                    Measured.FlowIn(loop.FlowM3s, units),
                    Measured.FlowIn(loop.DesignM3s, units),
                    Measured.HeadIn(loop.HeadM, units),
                    Measured.VelocityIn(loop.VelocityMPerS, units),
                ]),
            ]);
    }

    private static SheetBlock[] Capacity(CheckReport report, CapacityAdvice advice)
    {
        DisplayUnits units = report.House.Units;
        return
        [
            new SheetText($"One unit stands for {Show.Flow(advice.UnitM3s, units)}, a tenth of the pump's minimum flow. Fewer than ten units may "
                + "carry the pump all the same: units are counted with all zones open, and with few open each loop passes more."),
            new SheetTable(
                "Each zone's flow with all zones open, and what it would count as",
                [new("zone"), new($"flow, {Measured.FlowUnit(units)}", true), new("counts as now", true), new("by flow", true)],
                [
                    .. advice.Zones.Select(line => (IReadOnlyList<string>)
                    [
                        report.House.Zones[line.Zone].Label, Measured.FlowIn(line.FlowM3s, units), $"{line.Now}", $"{line.ByFlow}",
                    ]),
                ]),
            new SheetText(CapacityWords(report.House, advice)),
        ];
    }

    private static string CapacityWords(House house, CapacityAdvice advice)
    {
        if (advice is not { MinimumOpen: { } open, HelpersThen: { } then })
            return "With these no minimum_open keeps the pump above its minimum flow.";
        string these = $"With these, minimum_open = {open} is the least that keeps the pump above its minimum flow with every set of zones; "
            + $"each zone calling alone would open {Quantity.Count(then, "companion")} in all";
        string now = advice is { LeastNow: { } least, HelpersNow: { } helpers }
            ? $", and {helpers} as zones count now with minimum_open = {least}"
            : ", and as zones count now there is no such minimum_open";
        return $"{these}{now}. " + (advice.HelpersNow <= then
            ? "So they gain nothing here."
            : $"To use them, write the last column as capacity = ... in each [[zone]], and minimum_open = {open} under [controller].");
    }

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
