using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>Whether the pump is of the right size for what the loops should get.</summary>
internal static class SizeFindings
{
    /// <summary>More head than this many times what is needed is a pump too large (common practice).</summary>
    private const double Oversize = 1.5;

    public static IEnumerable<Finding> Of(House house, HouseFlows flows, IReadOnlyList<LoopFigures> loops)
    {
        double design = loops.Sum(loop => loop.DesignM3s);
        double needed = Balancing.HeadNeeded(flows, [.. loops.Select(loop => loop.DesignM3s)]);
        double given = flows.Pump.Head(design, out _);
        double ratio = given / needed;
        string says = $"{Show.Flow(design, house.Units)} in all loops would need {Show.Length(needed, house.Units)} of head; there "
            + $"the pump gives {Show.Length(given, house.Units)}, {ratio:0.0} times as much";
        const string Basis = "design flow from heat and temperature drop, as stated below; "
            + "more than 1.5 times the head needed is oversize (common practice)";
        (FindingKind kind, string change) = ratio switch
        {
            > Oversize => (FindingKind.Advice,
                $"a lower speed or a smaller pump: {Show.Length(needed, house.Units)} at {Show.Flow(design, house.Units)} would do"),
            < 1 => (FindingKind.Advice, "the loops get less than their design flow: shorter or wider loops, or a stronger pump"),
            _ => (FindingKind.Fine, ""),
        };
        yield return new Finding("pump size", kind, says, Basis, change) { Value = ratio, Unit = "times" };
    }
}
