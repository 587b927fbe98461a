using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>Loops that the pump cannot clear of air by itself.</summary>
public static class AirBound
{
    /// <summary>Labels of loops in which water stays too slow to carry air along though their zone alone is open.</summary>
    public static IReadOnlyList<string> Loops(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        var assumed = new CheckAssumptions();
        return
        [
            .. LoopFigures.Of(house, new HouseFlows(house, assumed.WaterC), new HeatNeeds(house, assumed), assumed)
                .Where(loop => loop.AloneVelocityMPerS < LoopFindings.AirCarryingMPerS).Select(loop => loop.Label),
        ];
    }
}
