using ZoneControl.Bench.Houses;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>How much fluid is in the circuit, and how much it grows when it warms.</summary>
internal static class FluidFindings
{
    private const double ColdC = 10;
    private const double HotC = 60;

    public static IEnumerable<Finding> Of(House house, HouseFlows flows)
    {
        PlantDescription plant = flows.Plant;
        double loops = plant.Loops.Sum(loop => loop.Tube.VolumeM3);
        double pipes = plant.Mains.VolumeM3 + plant.Manifolds.Sum(manifold => manifold.Branch?.VolumeM3 ?? 0);
        double volume = loops + pipes + plant.Pump.CasingWaterM3;
        double grows = volume * ((new Liquid(ColdC, plant.GlycolShare).Density / new Liquid(HotC, plant.GlycolShare).Density) - 1);
        yield return new Finding("fluid", FindingKind.Fine,
            $"{Show.Volume(volume, house.Units)} without the heat source and its vessel ({Show.Volume(loops, house.Units)} in loops); from "
                + $"{Show.Temperature(ColdC, house.Units)} to {Show.Temperature(HotC, house.Units)} it grows by {Show.Volume(grows, house.Units)}",
            "volume of the tubes; density by IAPWS SR6-08 (water) or Melinder (glycol). The expansion vessel must take the growth of all of it")
        {
            Value = volume * 1000,
            Unit = "L",
        };
    }
}
