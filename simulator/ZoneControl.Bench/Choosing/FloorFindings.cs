using ZoneControl.Bench.Houses;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Choosing;

/// <summary>Temperature limits of the floor.</summary>
public static class FloorFindings
{
    /// <summary>Highest surface temperature of a floor that people live on, °C (EN 1264-2, from training material).</summary>
    public const double HighestSurfaceC = 29;

    /// <summary>Heat that a floor gives at a mean surface temperature: the basic curve of EN 1264-2 / ISO 11855-2, W/m².</summary>
    /// <param name="surfaceC">Mean surface temperature, °C.</param>
    /// <param name="roomC">Room temperature, °C; at most the surface's.</param>
    public static double Flux(double surfaceC, double roomC) => 8.92 * Math.Pow(surfaceC - roomC, 1.1);

    /// <summary>The same turned round: surface temperature that gives a heat, °C.</summary>
    public static double SurfaceC(double fluxWPerM2, double roomC) => roomC + Math.Pow(fluxWPerM2 / 8.92, 1 / 1.1);

    internal static IEnumerable<Finding> Of(
        House house, HouseFlows flows, IReadOnlyList<LoopFigures> loops, CheckAssumptions assumed)
    {
        double most = Flux(HighestSurfaceC, assumed.RoomC);
        double surface = SurfaceC(assumed.FluxWPerM2, assumed.RoomC);
        double area = loops.Sum(loop => loop.LengthM) * assumed.SpacingM;
        bool hot = surface > HighestSurfaceC;
        const string Basis = "basic curve and 29 °C limit of EN 1264-2 (from secondary texts); bathrooms 33 °C at 24 °C, edges 35 °C";
        yield return new Finding("floor", hot ? FindingKind.Fault : FindingKind.Fine,
            $"to give {Measured.Flux(assumed.FluxWPerM2, house.Units)} a floor must be at {Show.Temperature(surface, house.Units)}; at the limit of "
                + $"{Show.Temperature(HighestSurfaceC, house.Units)} it gives {Measured.Flux(most, house.Units)}, {Measured.Heat(most * area, house.Units)} from all "
                + $"{Measured.Area(area, house.Units)}",
            Basis, hot ? "more floor, less heat loss, or another heater besides" : "")
        {
            Value = surface,
            Unit = "°C",
        };
        yield return Drop(house, flows, loops, assumed);
        if (!house.Contacts.Has(Contact.Limit))
        {
            yield return new Finding("high limit", FindingKind.Advice,
                "no high limit on the water to the floor is wired to ZoneControl",
                "HEAT-LIMIT; the heat source's own limit stays in place whatever is wired here (EN 1264-4 asks for one, from memory)",
                "fit one and say limit = true under [contacts], so that the pump stops moving hot water as well");
        }
    }

    private static Finding Drop(House house, HouseFlows flows, IReadOnlyList<LoopFigures> loops, CheckAssumptions assumed)
    {
        double DropOf(LoopFigures loop) => assumed.FluxWPerM2 * loop.LengthM * assumed.SpacingM
            / (flows.Liquid.Density * flows.Liquid.HeatCapacity * loop.FlowM3s);
        LoopFigures worst = loops.MaxBy(DropOf)!;
        double drop = DropOf(worst);
        bool striped = drop > 10;
        return new Finding("temperature drop", striped ? FindingKind.Advice : FindingKind.Fine,
            $"with all zones open and {Measured.Flux(assumed.FluxWPerM2, house.Units)} water cools most in {worst.Label}, by {Measured.Difference(drop, house.Units)}",
            $"more than {Measured.Difference(10, house.Units)} makes warm and cool stripes (common practice)",
            striped ? "shorter loops, or more flow" : "")
        {
            Value = drop,
            Unit = "K",
        };
    }
}
