using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>Whether minimum open keeps the pump off its minimum flow, and what happens where nothing does.</summary>
internal static class PumpFindings
{
    private const double BoilingC = 100;
    private const double StartC = 30;
    private const double RoomC = 20;

    public static IEnumerable<Finding> Of(House house, HouseFlows flows, OpenSets sets)
    {
        yield return MinimumOpen(house, flows, sets);
        if (Trapped(house) is { } trapped)
            yield return trapped;
    }

    private static Finding MinimumOpen(House house, HouseFlows flows, OpenSets sets)
    {
        double needed = house.Pump.MinimumFlowM3s.Value;
        int open = house.Controller.MinimumOpen;
        int? least = sets.LeastMinimumOpen(needed);
        int worst = sets.WorstReaching(open) ?? 0;
        double counted = sets.Flow(worst);
        double whole = flows.With(worst).PumpFlowM3s;
        bool bypassed = house is { Bypass.CountsAs: 0 } or { FixedBypass.CountsAs: 0 };
        string basis = "pump's minimum flow "
            + (house.Pump.MinimumFlowM3s.DerivedFrom is { } from ? $"({from})" : "as the house file gives it")
            + "; flows by Darcy-Weisbach with Colebrook's friction"
            + (bypassed ? "; a bypass counts for nothing here unless counts_as says so, since a spring may stick or be set anew" : "");
        string which = worst == 0 ? "nothing but what always stands open" : house.ZoneLabels(worst);
        string says = $"the worst set of zones that reaches minimum_open = {open} ({which}) passes "
            + $"{Show.Flow(counted, house.Units)}{(bypassed ? " with the bypass shut" : "")}; the pump wants {Show.Flow(needed, house.Units)}"
            + (bypassed ? $" and with the bypass as it is set gets {Show.Flow(whole, house.Units)}" : "");
        bool enough = counted >= needed;
        (FindingKind kind, string change) = (enough, least) switch
        {
            (false, _) when whole >= needed => (FindingKind.Advice,
                "only the bypass keeps the pump above its minimum flow then: "
                    + (least is { } without ? $"set minimum_open = {without}, the least that does without it" : "see to it that it cannot be shut")),
            (false, null) => (FindingKind.Fault,
                "not even all zones together pass the minimum flow: a smaller pump, a lower speed, or a bypass"),
            (false, { } needs) => (FindingKind.Fault, $"set minimum_open = {needs}, the least that does"),
            (true, { } fewer) when fewer < open => (FindingKind.Advice, Fewer(house, fewer)),
            _ => (FindingKind.Fine, ""),
        };
        return new Finding("minimum open", kind, says, basis, change)
        {
            Value = Measured.LitresPerMinute(counted),
            Unit = "L/min",
        };
    }

    private static string Fewer(House house, int fewer) =>
        $"minimum_open = {fewer} would do; more opens companions oftener than the pump needs"
        + (fewer <= house.StandingCapacity
            ? ". What always stands open reaches that by itself: the pump may then start before any valve has opened"
            : "");

    private static Finding? Trapped(House house)
    {
        if (house.StandingLoops.Count > 0 || house.Bypass is not null || house.FixedBypass is not null)
            return null;
        PlantDescription plant = house.ToPlant(new ScriptConditions(StartC, RoomC));
        var model = new PlantModel(plant);
        model.Drive(0, pump: true, heat: false);
        const string Basis = "energy balance of the casing with all of the pump's power as heat: an upper bound, no measure of how long a "
            + "pump lasts";
        string start = $"against closed valves the water in the pump's casing would go from {Show.Temperature(StartC, house.Units)} to ";
        if (model.SecondsToTrappedC(BoilingC) is { } seconds)
        {
            return new Finding("deadhead", FindingKind.Advice,
                $"{start}{Show.Temperature(BoilingC, house.Units)} in {Words(seconds)} at the soonest, where water without pressure boils; the "
                    + $"slowest valve takes {Durations.InWords(house.Zones.Max(zone => zone.Actuator.OpeningTime))} to open", Basis,
                "let nothing but ZoneControl's relay switch this pump, and ask its maker whether it stops by itself when it gets hot; a "
                    + "smaller pump warms its water more slowly")
            {
                Value = seconds,
                Unit = "s",
            };
        }

        double settles = RoomC + (HouseFlows.PumpOf(plant).HeatToWaterW(0) / plant.Pump.CasingLossWPerK);
        string soon = model.SecondsToTrappedC(StartC + (0.9 * (settles - StartC))) is { } most and > 0 ? $", nine tenths of the way in {Words(most)}" : "";
        return new Finding("deadhead", FindingKind.Fine,
            settles > StartC
                ? $"{start}{Show.Temperature(Math.Round(settles), house.Units)}{soon}, and no further: the casing loses what the pump gives"
                : $"{start}no more than that: the casing loses what the pump gives",
            Basis)
        {
            Value = settles,
            Unit = "°C",
        };
    }

    private static string Words(double seconds) => Durations.InWords((long)Math.Max(1, Math.Round(seconds / 60)) * 60_000);
}
