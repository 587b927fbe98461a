using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>A set of open zones in the table of operating points.</summary>
/// <param name="Name">What it is: "worst", "all zones", "Bath calls".</param>
/// <param name="Open">The operating point.</param>
/// <param name="Capacity">Capacity of the set, with what always stands open.</param>
public sealed record SetLine(string Name, OperatingPoint Open, int Capacity);

/// <summary>Capacity that a zone would count as by its flow.</summary>
/// <param name="Zone">Zone number, from 0.</param>
/// <param name="FlowM3s">Flow with every zone open, m³/s.</param>
/// <param name="Now">Capacity in force.</param>
/// <param name="ByFlow">Capacity in whole units of flow, rounded down, one at least.</param>
public sealed record CapacityLine(int Zone, double FlowM3s, int Now, int ByFlow);

/// <summary>Capacities by flow instead of by number of loops.</summary>
/// <param name="UnitM3s">Flow that one unit stands for, m³/s.</param>
/// <param name="Zones">Each zone's.</param>
/// <param name="MinimumOpen">Least minimum open in these units; null when no set of zones keeps the pump above its minimum flow.</param>
public sealed record CapacityAdvice(double UnitM3s, IReadOnlyList<CapacityLine> Zones, int? MinimumOpen)
{
    /// <summary>Least minimum open as zones count now; null without one.</summary>
    public int? LeastNow { get; init; }

    /// <summary>Companions that are opened with it when each zone calls alone, added up; null without one.</summary>
    public int? HelpersNow { get; init; }

    /// <summary>The same with capacities by flow and their minimum open; null without one.</summary>
    public int? HelpersThen { get; init; }
}

/// <summary>What came of checking a house.</summary>
/// <param name="House">The house.</param>
/// <param name="Assumed">What was taken for granted.</param>
/// <param name="Needs">Heat that floors have to give.</param>
/// <param name="Loops">Every loop with all zones open.</param>
/// <param name="Sets">Operating points of the pump.</param>
/// <param name="Capacity">Capacities by flow, where they were asked for.</param>
/// <param name="Findings">What was found, in the order of the sections.</param>
public sealed record CheckReport(
    House House,
    CheckAssumptions Assumed,
    HeatNeeds Needs,
    IReadOnlyList<LoopFigures> Loops,
    IReadOnlyList<SetLine> Sets,
    CapacityAdvice? Capacity,
    IReadOnlyList<Finding> Findings)
{
    /// <summary>Whether anything found is a fault.</summary>
    public bool HasFaults => Findings.Any(finding => finding.Kind == FindingKind.Fault);
}

/// <summary>Checks a house: whether pump, pipes, valves and times fit together.</summary>
public static class HouseCheck
{
    /// <summary>Everything that can be computed from the house file and a few assumptions.</summary>
    /// <param name="house">The house.</param>
    /// <param name="assumed">What the file does not say.</param>
    /// <param name="withCapacity">Reckon capacities by flow as well.</param>
    public static CheckReport Of(House house, CheckAssumptions assumed, bool withCapacity = false)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(assumed);
        var flows = new HouseFlows(house, assumed.WaterC);
        var counted = HouseFlows.ThatCount(house, assumed.WaterC);
        var sets = new OpenSets(house, counted);
        var needs = new HeatNeeds(house, assumed);
        IReadOnlyList<LoopFigures> loops = LoopFigures.Of(house, flows, needs, assumed);
        return new CheckReport(
            house,
            assumed,
            needs,
            loops,
            SetTable.Of(house, flows, sets),
            withCapacity ? Capacities.ByFlow(house, counted, sets) : null,
            [
                .. PumpFindings.Of(house, flows, sets),
                .. SizeFindings.Of(house, flows, loops),
                .. BypassFindings.Of(house, flows, sets),
                .. TimeFindings.Of(house),
                .. TransformerFindings.Of(house),
                .. LoopFindings.Of(house, flows, loops),
                .. FloorFindings.Of(house, flows, loops, needs),
                .. FluidFindings.Of(house, flows),
            ]);
    }
}
