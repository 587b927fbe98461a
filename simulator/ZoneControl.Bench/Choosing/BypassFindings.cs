using ZoneControl.Bench.Houses;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>What a spring bypass would have to do in this house, and whether the one that it has does it.</summary>
internal static class BypassFindings
{
    /// <summary>Head room between the pressure with all zones open and the opening pressure (common practice).</summary>
    private const double Margin = 1.1;

    private const string Basis = "it must stay shut with all zones open and pass what one zone leaves of the pump's minimum flow; "
        + "opening pressure a tenth above that with all zones open (common practice)";

    public static IEnumerable<Finding> Of(House house, HouseFlows flows)
    {
        BypassNeed need = BypassNeed.Of(house, flows);
        int counts = (house.Bypass?.CountsAs ?? 0) + (house.FixedBypass?.CountsAs ?? 0);
        if (counts > 0)
            yield return Counted(house, flows, counts);
        if (need.FlowM3s <= 0)
        {
            yield return new Finding("bypass", FindingKind.Fine,
                $"{house.Zones[need.Zone].Label} alone, the zone that passes least, keeps the pump above its minimum flow: no bypass is needed "
                    + "once a valve is open", Basis);
            yield break;
        }

        double all = need.AllOpenM * flows.PascalPerM;
        double one = need.OneOpenM * flows.PascalPerM;
        double opens = all * Margin;
        string asked = $"with {house.Zones[need.Zone].Label} alone open a bypass would have to pass {Show.Flow(need.FlowM3s, house.Units)} "
            + $"at {Measured.Pressure(one, house.Units)} ({Measured.Kv(need.Kv, house.Units)} then)";
        bool flat = opens >= one;
        if (flat && house.Bypass is null)
        {
            yield return new Finding("bypass", FindingKind.Advice,
                $"{asked}, but with all zones open the pressure is {Measured.Pressure(all, house.Units)} already: the pump's curve is too "
                    + "flat for a spring to tell them apart", Basis, "rely on minimum_open, or on a pump that regulates itself")
            {
                Value = Measured.LitresPerMinute(need.FlowM3s),
                Unit = "L/min",
            };
            yield break;
        }

        string setting = $"{asked}; with all zones open there are {Measured.Pressure(all, house.Units)}";
        yield return house.Bypass is { } fitted
            ? Fitted(house, flows, fitted, need, setting, flat ? (all + one) / 2 : opens, one)
            : new Finding("bypass", FindingKind.Fine,
                $"none is fitted and minimum_open does its work. {Capital(setting)}", Basis,
                $"where one is wanted: set to open at {Measured.Pressure(opens, house.Units)}")
            {
                Value = opens,
                Unit = "Pa",
            };
    }

    private static Finding Fitted(
        House house, HouseFlows flows, HouseBypass fitted, BypassNeed need, string setting, double opens, double one)
    {
        double wasted = flows.With(flows.AllZones).BypassFlowM3s;
        OperatingPoint alone = flows.With(1 << need.Zone);
        bool tooLittle = alone.PumpFlowM3s < house.Pump.MinimumFlowM3s.Value;
        string does = $"the fitted one opens at {Measured.Pressure(fitted.OpensAtPa, house.Units)} and passes "
            + $"{Show.Flow(alone.BypassFlowM3s, house.Units)} with {house.Zones[need.Zone].Label} alone, {Show.Flow(wasted, house.Units)} with all zones";
        (FindingKind kind, string change) = (tooLittle, wasted > 0) switch
        {
            (true, _) => (FindingKind.Advice,
                $"set it to open between {Measured.Pressure(opens, house.Units)} and {Measured.Pressure(one, house.Units)}; if it then still "
                    + "passes too little, a wider one. Until then minimum_open alone guards the pump"),
            (false, true) => (FindingKind.Advice, $"set it higher, to {Measured.Pressure(opens, house.Units)}: it wastes flow while all zones are open"),
            _ => (FindingKind.Fine, ""),
        };
        return new Finding("bypass", kind, $"{setting}; {does}", Basis, change) { Value = fitted.OpensAtPa, Unit = "Pa" };
    }

    private static Finding Counted(House house, HouseFlows flows, int counts)
    {
        double flow = flows.With(0).PumpFlowM3s;
        double needed = house.Pump.MinimumFlowM3s.Value;
        return new Finding("bypass counts", flow >= needed ? FindingKind.Fine : FindingKind.Fault,
            $"it counts as {counts} that is always open; with every zone shut the pump passes {Show.Flow(flow, house.Units)} and wants "
                + Show.Flow(needed, house.Units),
            "standing capacity is always counted as proven, so it must carry the pump's minimum flow by itself",
            flow >= needed ? "" : "take counts_as out, or open it sooner or wider")
        {
            Value = Measured.LitresPerMinute(flow),
            Unit = "L/min",
        };
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}

/// <summary>What a bypass must do when one zone alone is open.</summary>
/// <param name="Zone">The zone that passes least alone.</param>
/// <param name="FlowM3s">What the bypass must pass so that the pump has its minimum flow, m³/s; 0 or less when nothing.</param>
/// <param name="OneOpenM">Head across it then, m.</param>
/// <param name="AllOpenM">Head across it with all zones open and no bypass, m.</param>
/// <param name="Kv">Kv that it then has to have, m³/h at 1 bar; 0 when it has to pass nothing.</param>
public sealed record BypassNeed(int Zone, double FlowM3s, double OneOpenM, double AllOpenM, double Kv)
{
    /// <summary>
    /// The need of a house. The bypass is stood in for by a fixed opening that is searched until the pump has exactly its
    /// minimum flow.
    /// </summary>
    public static BypassNeed Of(House house, HouseFlows flows)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(flows);
        PlantDescription bare = flows.Plant with { Bypass = null, FixedBypassKv = null };
        var without = new HouseFlows(bare);
        int zone = Enumerable.Range(0, house.Zones.Count).MinBy(z => without.With(1 << z).PumpFlowM3s);
        double allOpen = without.With(without.AllZones).EndsHeadM;
        OperatingPoint alone = without.With(1 << zone);
        double needed = house.Pump.MinimumFlowM3s.Value;
        if (alone.PumpFlowM3s >= needed)
            return new BypassNeed(zone, 0, alone.EndsHeadM, allOpen, 0);

        (double low, double high) = (0.001, 1000);
        for (int i = 0; i < 60; i++)
        {
            double middle = Math.Sqrt(low * high);
            bool less = new HouseFlows(bare with { FixedBypassKv = middle }).With(1 << zone).PumpFlowM3s < needed;
            (low, high) = less ? (middle, high) : (low, middle);
        }

        OperatingPoint met = new HouseFlows(bare with { FixedBypassKv = high }).With(1 << zone);
        return new BypassNeed(zone, met.BypassFlowM3s, met.EndsHeadM, allOpen, high);
    }
}
