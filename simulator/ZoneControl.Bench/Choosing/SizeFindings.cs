using ZoneControl.Bench.Houses;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>Whether the pump is of the right size for what the loops should get.</summary>
internal static class SizeFindings
{
    /// <summary>More head than this many times what is needed is a pump too large (common practice).</summary>
    private const double Oversize = 1.5;

    /// <summary>Few pumps can be set slower than this share of their speed (common practice).</summary>
    private const double SlowestShare = 0.3;

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
            > Oversize => (FindingKind.Advice, Smaller(house, flows, design, needed)),
            < 1 => (FindingKind.Advice, "the loops get less than their design flow: shorter or wider loops, or a stronger pump"),
            _ => (FindingKind.Fine, ""),
        };
        yield return new Finding("pump size", kind, says, Basis, change) { Value = ratio, Unit = "times" };
    }

    /// <summary>What a slower pump would mean for the loops and for its own minimum flow.</summary>
    private static string Smaller(House house, HouseFlows flows, double design, double needed)
    {
        string wanted = $"{Show.Length(needed, house.Units)} at {Show.Flow(design, house.Units)} would do";
        if (house.Pump.Regulation is not null)
            return $"a lower setting, or a smaller pump: {wanted}";
        double now = house.Pump.Speed.Value;
        // Rounded up to whole twentieths: nobody sets a pump finer.
        double speed = Math.Ceiling(SpeedFor(flows.Plant.Pump, flows.PascalPerM, design, needed) / now * 20) / 20 * now;
        string share = $"{speed / now * 100:0} % of the speed it has now";
        if (speed < SlowestShare)
            return $"a smaller pump: {wanted}, as this one gives at {share}, slower than most can be set";
        House slower = house with { Pump = house.Pump with { Speed = Setting.Given(speed) } };
        double least = house.Pump.MinimumFlowM3s.Value;
        string minimum = Show.Flow(least, house.Units);
        int? open = new OpenSets(slower, HouseFlows.ThatCount(slower, flows.Plant.WaterC)).LeastMinimumOpen(least);
        // Nobody opens companions for a panel's zones.
        int reach = house.Zones.Where(zone => zone.Gated).Select(zone => zone.Capacity.Value + house.StandingCapacity).DefaultIfEmpty(int.MaxValue).Min();
        return $"a lower speed or a smaller pump: {wanted}, as this one gives at {share}. " + open switch
        {
            null => $"But there not even all zones pass its minimum flow of {minimum}, so choose a smaller pump with less of that",
            { } count when count > reach => $"But there one zone alone does not pass its minimum flow of {minimum}, so choose a smaller pump with "
                + "less of that",
            { } count => $"To keep its minimum flow of {minimum} it would then need minimum_open = {count}"
                + (count == house.Controller.MinimumOpen ? ", as now" : $" (now {house.Controller.MinimumOpen})"),
        };
    }

    /// <summary>Speed at which a pump gives a head, m, at a flow, m³/s.</summary>
    private static double SpeedFor(PumpDescription pump, double pascalPerM, double flowM3s, double headM)
    {
        (double low, double high) = (0.01, pump.Speed);
        for (int i = 0; i < 40; i++)
        {
            double middle = (low + high) / 2;
            bool less = new Circulator(pump with { Speed = middle }, pascalPerM).Head(flowM3s, out _) < headM;
            (low, high) = less ? (middle, high) : (low, middle);
        }

        return high;
    }
}
