using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>Whether minimum open keeps the pump off its minimum flow, and what happens where nothing does.</summary>
internal static class PumpFindings
{
    private const double BoilingC = 100;

    public static IEnumerable<Finding> Of(House house, HouseFlows flows, OpenSets sets)
    {
        yield return MinimumOpen(house, sets);
        if (Trapped(house) is { } trapped)
            yield return trapped;
    }

    private static Finding MinimumOpen(House house, OpenSets sets)
    {
        double needed = house.Pump.MinimumFlowM3s.Value;
        int open = house.Controller.MinimumOpen;
        int? least = sets.LeastMinimumOpen(needed);
        int worst = sets.WorstReaching(open) ?? 0;
        double flow = sets.Flow(worst);
        string basis = "pump's minimum flow "
            + (house.Pump.MinimumFlowM3s.DerivedFrom is { } from ? $"({from})" : "as the house file gives it")
            + "; flows by Darcy-Weisbach with Colebrook's friction";
        string says = $"the worst set of zones that reaches minimum_open = {open} ({house.ZoneLabels(worst)}) passes "
            + $"{Show.Flow(flow, house.Units)}; the pump wants {Show.Flow(needed, house.Units)}";
        (FindingKind kind, string change) = (flow >= needed, least) switch
        {
            (false, null) => (FindingKind.Fault,
                "not even all zones together pass the minimum flow: a smaller pump, a lower speed, or a bypass"),
            (false, { } enough) => (FindingKind.Fault, $"set minimum_open = {enough}, the least that does"),
            (true, { } enough) when enough < open => (FindingKind.Advice,
                $"minimum_open = {enough} would do; more opens companions oftener than the pump needs"),
            _ => (FindingKind.Fine, ""),
        };
        return new Finding("minimum open", kind, says, basis, change)
        {
            Value = Measured.LitresPerMinute(flow),
            Unit = "L/min",
        };
    }

    private static Finding? Trapped(House house)
    {
        if (house.StandingLoops.Count > 0 || house.Bypass is not null || house.FixedBypass is not null)
            return null;
        PlantDescription plant = house.ToPlant(new ScriptConditions(30, 20));
        var model = new PlantModel(plant);
        model.Drive(0, pump: true, heat: false);
        double? seconds = model.SecondsToTrappedC(BoilingC);
        string boiling = Show.Temperature(BoilingC, house.Units);
        string says = seconds is { } s
            ? $"against closed valves its trapped water would go from {Show.Temperature(30, house.Units)} to {boiling} in "
                + $"{Durations.InWords((long)(Math.Round(s / 60) * 60_000))} at the soonest"
            : $"against closed valves its trapped water would stay below {boiling}";
        return new Finding("deadhead", FindingKind.Fine, says,
            "energy balance of the casing with all of the pump's power as heat: an upper bound, no measure of how long a pump lasts")
        {
            Value = seconds,
            Unit = seconds is null ? "" : "s",
        };
    }
}
