using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>What a bypass would have to do in this house, and whether the one that it has does it.</summary>
internal static class BypassFindings
{
    public static IEnumerable<Finding> Of(House house, HouseFlows flows, OpenSets sets)
    {
        BypassNeed need = BypassNeed.Of(house, flows);
        int counts = (house.Bypass?.CountsAs ?? 0) + (house.FixedBypass?.CountsAs ?? 0);
        if (counts > 0)
            yield return Counted(house, flows, counts);
        if (house.Bypass is { } fitted)
            yield return Spring(house, flows, fitted, need);
        else if (house.FixedBypass is not null)
            yield return AlwaysOpen(house, flows, need);
        else if (need.FlowM3s <= 0)
            yield return NotNeeded(house, need);
        else
            yield return None(house, flows, sets, need);
    }

    private static Finding NotNeeded(House house, BypassNeed need) => new("bypass", FindingKind.Fine,
        $"none is fitted and none is needed: {Label(house, need)} alone, the zone that passes least, keeps the pump above its minimum flow",
        "a bypass is there for what one zone leaves of the pump's minimum flow");

    private static Finding None(House house, HouseFlows flows, OpenSets sets, BypassNeed need)
    {
        DisplayUnits units = house.Units;
        double opens = need.SettingM * flows.PascalPerM;
        string asked = $"with {Label(house, need)} alone open it would have to pass {Show.Flow(need.FlowM3s, units)} "
            + $"at {Pressure(need.OneOpenM, flows, units)} ({Valve(need.Kv, units)}), and with all zones open it would have to stay shut "
            + $"against {Pressure(need.AllOpenM, flows, units)}";
        int open = house.Controller.MinimumOpen;
        bool guarded = sets.WorstReaching(open) is { } worst && sets.Flow(worst) >= house.Pump.MinimumFlowM3s.Value;
        const string Flat = "this pump's curve is too flat for a spring to tell one zone from all";
        string set = $"set to open at {Measured.Pressure(opens, units)}";
        string says = guarded
            ? $"none is fitted, and none is needed as long as minimum_open = {open} keeps the pump above its minimum flow. One that is wanted all "
                + $"the same: {asked}" + (need.TooFlat ? $", but {Flat}" : $"; it would be {set}")
            : $"none is fitted, and minimum_open = {open} does not keep the pump above its minimum flow. A bypass could: {asked}";
        (FindingKind kind, string change) = (guarded, need.TooFlat) switch
        {
            (true, _) => (FindingKind.Fine, ""),
            (_, true) => (FindingKind.Advice, $"rely on minimum_open, or on a pump that regulates itself: {Flat}"),
            _ => (FindingKind.Advice, $"see minimum open; a bypass would be {set}"),
        };
        return new Finding("bypass", kind, says, Basis(flows, units), change) { Value = opens, Unit = "Pa" };
    }

    /// <summary>A fitted spring bypass: whether it stays shut with all zones open, and what it gives the pump with the least zone.</summary>
    private static Finding Spring(House house, HouseFlows flows, HouseBypass fitted, BypassNeed need)
    {
        DisplayUnits units = house.Units;
        double all = need.AllOpenM * flows.PascalPerM;
        double leastOpensAt = fitted.OpensAtPa;
        double wasted = flows.With(flows.AllZones).BypassFlowM3s;
        OperatingPoint alone = flows.With(1 << need.Zone);
        double needed = house.Pump.MinimumFlowM3s.Value;
        bool staysShut = leastOpensAt >= all;
        bool tooLittle = alone.PumpFlowM3s < needed;
        bool idle = need.FlowM3s <= 0;
        string shut = staysShut
            ? $"with all zones open there are {Measured.Pressure(all, units)} across it, so it stays shut then"
            : $"with all zones open and the bypass shut there would be {Measured.Pressure(all, units)} across it, so it never shuts while the "
                + $"pump runs, and then passes {Show.Flow(wasted, units)} past the floor";
        string one = $"with {Label(house, need)} alone, the zone that passes least, it passes {Show.Flow(alone.BypassFlowM3s, units)} of the "
            + $"pump's {Show.Flow(alone.PumpFlowM3s, units)}; the pump wants {Show.Flow(needed, units)}"
            + (idle ? " and has that without it" : "");
        string set = Measured.Pressure(need.SettingM * flows.PascalPerM, units);
        (FindingKind kind, string change) = (tooLittle, staysShut, idle) switch
        {
            (true, _, _) => (FindingKind.Advice, TooLittle(flows, need, leastOpensAt, set, units)),
            (_, false, true) => (FindingKind.Advice,
                "take it out, since no zone needs it"
                    + (need.TooFlat ? "" : $"; or set it to open at {set}, so that it stays shut with all zones open")),
            (_, false, _) => (FindingKind.Advice, $"set it higher, to {set}, so that it stays shut with all zones open"),
            _ => (FindingKind.Fine, ""),
        };
        return new Finding("bypass", kind, $"a spring bypass is fitted and opens at {Measured.Pressure(leastOpensAt, units)}: {shut}; {one}",
            Basis(flows, units), change)
        {
            Value = leastOpensAt,
            Unit = "Pa",
        };
    }

    private static string TooLittle(HouseFlows flows, BypassNeed need, double opensAt, string set, DisplayUnits units)
    {
        string wider = $"a wider one ({Valve(need.Kv, units)} at {Pressure(need.OneOpenM, flows, units)} is what it takes)";
        return (opensAt > need.SettingM * flows.PascalPerM ? $"set it to open at {set}; if it then still passes too little, {wider}" : wider)
            + ". Until then minimum_open alone guards the pump";
    }

    private static Finding AlwaysOpen(House house, HouseFlows flows, BypassNeed need)
    {
        DisplayUnits units = house.Units;
        double wasted = flows.With(flows.AllZones).BypassFlowM3s;
        OperatingPoint alone = flows.With(1 << need.Zone);
        double needed = house.Pump.MinimumFlowM3s.Value;
        bool tooLittle = alone.PumpFlowM3s < needed;
        bool idle = need.FlowM3s <= 0;
        return new Finding("bypass", tooLittle || idle ? FindingKind.Advice : FindingKind.Fine,
            $"a bypass is fitted that always stands open: it passes {Show.Flow(wasted, units)} past the floor with all zones open, and "
                + $"with {Label(house, need)} alone, the zone that passes least, {Show.Flow(alone.BypassFlowM3s, units)} of the pump's "
                + $"{Show.Flow(alone.PumpFlowM3s, units)}; the pump wants {Show.Flow(needed, units)}" + (idle ? " and has that without it" : ""),
            "a bypass is there for what one zone leaves of the pump's minimum flow; what it passes warms no room",
            tooLittle ? $"open it further ({Valve(need.Kv, units)} is what it takes); until then minimum_open alone guards the pump"
                : idle ? "shut it, or take it out: no zone needs it" : "")
        {
            Value = Measured.LitresPerMinute(alone.BypassFlowM3s),
            Unit = "L/min",
        };
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

    private static string Basis(HouseFlows flows, DisplayUnits units) =>
        "it must stay shut with all zones open and pass what one zone leaves of the pump's minimum flow; opening pressure a tenth above "
        + $"that with all zones open (common practice), water at {Show.Temperature(flows.Plant.WaterC, units)}";

    private static string Label(House house, BypassNeed need) => house.Zones[need.Zone].Label;

    private static string Pressure(double headM, HouseFlows flows, DisplayUnits units) => Measured.Pressure(headM * flows.PascalPerM, units);

    /// <summary>What a valve must let through, with what the number means.</summary>
    private static string Valve(double kv, DisplayUnits units) =>
        $"{Measured.Kv(kv, units)}: {(units == DisplayUnits.Us ? "gpm at a drop of 1 psi" : "m³/h at a drop of 1 bar")}";
}
