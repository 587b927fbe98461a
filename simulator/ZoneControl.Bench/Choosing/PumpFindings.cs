using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>Whether minimum open keeps the pump off its minimum flow, and what happens where nothing does.</summary>
internal static class PumpFindings
{
    private const double BoilingC = 100;
    private const double HotC = 90;
    private const double WarmC = 60;
    private const double RoomC = 20;

    public static IEnumerable<Finding> Of(House house, HouseFlows flows, OpenSets sets)
    {
        yield return MinimumOpen(house, flows, sets);
        yield return Trapped(house, flows.Plant.WaterC);
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
            (true, _) when open > 0 && house.StandingCapacity >= open => (FindingKind.Advice,
                $"{Standing}. minimum_open = {house.StandingCapacity + 1} has it wait for a valve"),
            _ => (FindingKind.Fine, ""),
        };
        return new Finding("minimum open", kind, says, basis, change)
        {
            Value = Measured.LitresPerMinute(counted),
            Unit = "L/min",
        };
    }

    private const string Standing =
        "what always stands open reaches that by itself: the pump may then start before any valve has opened";

    private static string Fewer(House house, int fewer) =>
        $"minimum_open = {fewer} would do with the pump as it is, not together with a slower or smaller one; more opens companions oftener than the "
        + "pump needs" + (fewer <= house.StandingCapacity ? $". But {Standing}" : "");

    private static Finding Trapped(House house, double startC)
    {
        const string Basis = "energy balance of the casing with all of the pump's power as heat: an upper bound, no measure of how long a "
            + "pump lasts; 90 °C or more is hot for a small circulator (common practice; its plate has the last word)";
        string basis = Basis.Replace("90 °C", Show.Temperature(HotC, house.Units), StringComparison.Ordinal);
        if (house.StandingLoops.Count > 0 || house.Bypass is not null || house.FixedBypass is not null)
        {
            string what = house.StandingLoops.Count > 0 ? "a loop that always stands open" : "the bypass";
            return new Finding("deadhead", FindingKind.Fine, $"not reckoned: {what} lets some water pass while every zone's valve is shut",
                "heat in the casing is reckoned only where nothing passes");
        }

        PlantDescription plant = house.ToPlant(new ScriptConditions(startC, RoomC));
        var model = new PlantModel(plant);
        model.Drive(0, pump: true, heat: false);
        string Reaches(double celsius) => celsius > startC && model.SecondsToTrappedC(celsius) is { } after
            ? $" (past {Show.Temperature(celsius, house.Units)} in {Words(after)})"
            : "";
        string start = $"against closed valves the water in the pump's casing would go from {Show.Temperature(startC, house.Units)} to ";
        const string Change = "let nothing but ZoneControl's relay switch this pump, and ask its maker whether it stops by itself when it gets hot; a "
            + "smaller pump warms its water more slowly";
        if (model.SecondsToTrappedC(BoilingC) is { } seconds)
        {
            return new Finding("deadhead", FindingKind.Advice,
                $"{start}{Show.Temperature(BoilingC, house.Units)} in {Words(seconds)} at the soonest{Reaches(WarmC)}, where water without pressure "
                    + $"boils; the slowest valve takes {Durations.InWords(house.Zones.Max(zone => zone.Actuator.OpeningTime))} to open", basis, Change)
            {
                Value = seconds,
                Unit = "s",
            };
        }

        double settles = RoomC + (HouseFlows.PumpOf(plant).HeatToWaterW(0) / plant.Pump.CasingLossWPerK);
        string soon = model.SecondsToTrappedC(startC + (0.9 * (settles - startC))) is { } most and > 0 ? $", nine tenths of the way in {Words(most)}" : "";
        bool hot = settles >= HotC;
        return new Finding("deadhead", hot ? FindingKind.Advice : FindingKind.Fine,
            settles > startC
                ? $"{start}{Show.Temperature(Math.Round(settles), house.Units)}{soon}{Reaches(WarmC)}, and no further: the casing loses what the pump gives"
                : $"{start}no more than that: the casing loses what the pump gives",
            basis, hot ? Change : "")
        {
            Value = settles,
            Unit = "°C",
        };
    }

    private static string Words(double seconds) => Durations.InWords((long)Math.Max(1, Math.Round(seconds / 60)) * 60_000);
}
