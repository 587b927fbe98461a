using ZoneControl.Bench.Houses;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Choosing;

/// <summary>Temperature limits of the floor.</summary>
internal static class FloorFindings
{
    private const double StripesK = 10;

    public static IEnumerable<Finding> Of(House house, HouseFlows flows, IReadOnlyList<LoopFigures> loops, HeatNeeds needs)
    {
        yield return Surface(house, needs);
        yield return Drop(house, flows, loops);
        if (!house.Contacts.Has(Contact.Limit))
        {
            yield return new Finding("high limit", FindingKind.Advice,
                "no high limit is wired to ZoneControl: a thermostat on the supply pipe whose contact opens when the water to the floor is too hot",
                "the heat source's own limit stays in place whatever is wired here (EN 1264-4 asks for one, from memory)",
                "fit one and say limit = true under [contacts], so that the pump stops moving hot water as well");
        }
    }

    private static Finding Surface(House house, HeatNeeds needs)
    {
        int worst = Enumerable.Range(0, needs.Zones.Count).MaxBy(zone => needs.Zones[zone].SurfaceC - needs.Zones[zone].LimitC);
        ZoneNeed need = needs.Zones[worst];
        bool hot = need.SurfaceC > need.LimitC;
        double all = needs.Zones.Sum(zone => zone.MostWPerM2 * zone.AreaM2);
        return new Finding("floor", hot ? FindingKind.Fault : FindingKind.Fine,
            $"nearest to its limit is {house.Zones[worst].Label}: to give {Measured.Flux(need.FluxWPerM2, house.Units)} its surface must be at "
                + $"{Show.Temperature(need.SurfaceC, house.Units)}; at the limit of {Show.Temperature(need.LimitC, house.Units)} it gives "
                + $"{Measured.Flux(need.MostWPerM2, house.Units)}, and all floors together {Measured.Heat(all, house.Units)}",
            $"characteristic and limits of EN 1264-2, from secondary texts: {Show.Temperature(29, house.Units)} where people stay, "
                + $"{Show.Temperature(33, house.Units)} in a bath at {Show.Temperature(24, house.Units)}, {Show.Temperature(35, house.Units)} at the edge",
            hot ? "more floor, less heat loss, or another heater besides" : "")
        {
            Value = need.SurfaceC,
            Unit = "°C",
        };
    }

    private static Finding Drop(House house, HouseFlows flows, IReadOnlyList<LoopFigures> loops)
    {
        double DropOf(LoopFigures loop) => loop.HeatW / (flows.Liquid.Density * flows.Liquid.HeatCapacity * loop.FlowM3s);
        LoopFigures worst = loops.MaxBy(DropOf)!;
        double drop = DropOf(worst);
        bool striped = drop > StripesK;
        return new Finding("temperature drop", striped ? FindingKind.Advice : FindingKind.Fine,
            $"with all zones open on the coldest day water cools most in {worst.Label}, by {Measured.Difference(drop, house.Units)}",
            $"more than {Measured.Difference(StripesK, house.Units)} makes warm and cool stripes (common practice)",
            striped ? "shorter loops, or more flow" : "")
        {
            Value = drop,
            Unit = "K",
        };
    }
}
