using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>What the plant is built from, taken from a house and the conditions of a script.</summary>
public static class PlantFromHouse
{
    /// <summary>The plant of a house under given conditions.</summary>
    public static PlantDescription ToPlant(this House house, ScriptConditions conditions) => new()
    {
        WaterC = conditions.WaterC,
        GlycolShare = house.GlycolShare,
        PlantRoomC = conditions.PlantRoomC,
        Pump = new PumpDescription
        {
            Curve = house.Pump.Curve,
            Speed = house.Pump.Speed.Value,
            Regulation = house.Pump.Regulation,
            PowerW = house.Pump.PowerW,
            PowerByFlow = house.Pump.PowerByFlow,
            HeatToWaterShare = house.Pump.HeatToWater.Value,
            MinimumFlowM3s = house.Pump.MinimumFlowM3s.Value,
            CasingWaterM3 = house.Pump.CasingWaterM3.Value,
            CasingIronKg = house.Pump.CasingIronKg.Value,
            CasingLossWPerK = house.Pump.CasingLossWPerK.Value,
        },
        Mains = house.Mains,
        HeatExchangerKv = house.ExchangerKv ?? double.PositiveInfinity,
        Manifolds = [.. house.Manifolds.Select(Manifold)],
        Actuators = [.. house.Zones.Select(zone => Actuator(zone.Actuator))],
        Loops =
        [
            .. house.Zones.SelectMany((zone, i) => zone.Loops.Select(loop => Loop(loop, i))),
            .. house.StandingLoops.Select(loop => Loop(loop, -1)),
        ],
        Bypass = house.Bypass is { } bypass
            ? new BypassDescription(bypass.OpensAtPa, bypass.BandPa.Value, bypass.Kvs)
            : null,
        FixedBypassKv = house.FixedBypass?.Kv,
    };

    private static ManifoldDescription Manifold(HouseManifold manifold) =>
        new(manifold.Name, manifold.Branch) { Balancing = Balancing(manifold.BalancingKv) };

    private static LoopDescription Loop(HouseLoop loop, int zone) =>
        new(zone, loop.Manifold, loop.Tube, loop.ValveKvs.Value) { Balancing = Balancing(loop.BalancingKv) };

    private static BalancingValveDescription? Balancing(double? kv) =>
        kv is { } set ? BalancingValveDescription.AtKv(set) : null;

    private static ActuatorDescription Actuator(HouseActuator actuator) => new()
    {
        OpenDeadTimeS = actuator.DeadTime.Value.TotalSeconds,
        OpenStrokeS = (actuator.OpeningTime - actuator.DeadTime.Value).TotalSeconds,
        CloseDeadTimeS = actuator.ClosingDeadTime.Value.TotalSeconds,
        CloseStrokeS = (actuator.ClosingTime.Value - actuator.ClosingDeadTime.Value).TotalSeconds,
        SwitchMakesAt = actuator.SwitchAt?.Value,
    };
}
