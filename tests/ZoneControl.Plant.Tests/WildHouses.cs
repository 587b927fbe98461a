using CsCheck;

namespace ZoneControl.Plant.Tests;

/// <summary>Houses from all over the documented ranges, most of them absurd, each with three positions of its valves.</summary>
internal static class WildHouses
{
    private const int Zones = 4;

    private static readonly Gen<double> _kv = Gen.OneOf(Log(0.001, 1000), Gen.Const(0.001), Gen.Const(double.PositiveInfinity));

    private static readonly Gen<IReadOnlyList<PumpPoint>> _curve =
        from shutoff in Log(0.01, 44)
        from full in Log(1e-6, 1)
        from shape in Houses.AnyCurve
        select (IReadOnlyList<PumpPoint>)[.. shape.Select(p => new PumpPoint(
            p.FlowM3s / shape[^1].FlowM3s * full, p.HeadM / shape[0].HeadM * shutoff))];

    private static readonly Gen<IReadOnlyList<ValvePoint>> _valve = Gen.OneOf(
        Gen.Const(ValveCurve.QuickOpening), Gen.Const(ValveCurve.Linear), Gen.Double[5, 100].Select(ValveCurve.EqualPercentage),
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.999])
            .Select((x, y) => (IReadOnlyList<ValvePoint>)[new(0, 0), new(x, y), new(1, 1)]));

    private static readonly Gen<BalancingValveDescription?> _balancing = Gen.OneOf(
        Gen.Const((BalancingValveDescription?)null),
        Log(0.001, 1000).Select(kv => (BalancingValveDescription?)BalancingValveDescription.AtKv(kv)),
        Gen.Double[1, 4].Select(at => (BalancingValveDescription?)new BalancingValveDescription(
            at, [new(1, 0.2), new(2.5, 0.7), new(4, 2.5)])));

    private static readonly Gen<PipeDescription> _pipe =
        from length in Gen.OneOf(Gen.Const(0.0), Log(1e-6, 10_000))
        from diameter in Log(0.001, 1)
        from roughness in Gen.OneOf(Gen.Const(0.0), Log(1e-9, Friction.RoughestRelative))
        from k in Gen.OneOf(Gen.Const(0.0), Log(1e-6, 1e6))
        select new PipeDescription(length, diameter, roughness * diameter, k);

    private static readonly Gen<LoopDescription> _loop =
        from zone in Gen.Int[-1, Zones - 1]
        from tube in _pipe
        from kvs in _kv
        from table in _valve
        from balancing in _balancing
        select new LoopDescription(
            zone, 0, tube, tube is { LengthM: < 0.001, FittingsK: < 0.001 } ? Math.Min(kvs, 1000) : kvs)
        {
            ValveTable = table,
            Balancing = balancing,
        };

    private static readonly Gen<PumpDescription> _pump =
        from curve in _curve
        from speed in Gen.Double[0.1, 1.5]
        from kind in Gen.Int[0, 2]
        from set in Gen.Double[0.001, 0.999]
        from floor in Gen.Double[0.001, 1]
        from lowest in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 1])
        from power in Gen.OneOf(Gen.Const(0.0), Log(0.1, 100_000))
        from share in Gen.Double[0, 1]
        from metal in Gen.OneOf(Gen.Const(0.0), Log(0.001, 1000))
        select Houses.Pump with
        {
            Curve = curve,
            Speed = speed,
            PowerW = power,
            HeatToWaterShare = share,
            CasingIronKg = metal,
            CasingLossWPerK = metal,
            Regulation = kind == 0 ? null : new RegulationDescription(set * speed * speed * curve[0].HeadM)
            {
                HeadAtNoFlowM = kind == 1 ? null : floor * set * speed * speed * curve[0].HeadM,
                LowestSpeed = lowest * speed,
            },
        };

    /// <summary>Any house within the ranges.</summary>
    public static Gen<PlantDescription> Any { get; } =
        from share in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.001, Glycol.MostShare])
        from warmth in Gen.Double[0.001, 0.999]
        from law in Gen.Enum<FrictionLaw>()
        from gravity in Gen.OneOf(Gen.Const(HydraulicRules.StandardGravity), Gen.Double[1, 30])
        from pump in _pump
        from mains in _pipe
        from exchanger in _kv
        from manifolds in Gen.Select(_pipe, Gen.Bool, _balancing, (pipe, none, valve) =>
            new ManifoldDescription("m", none ? null : pipe) { Balancing = valve }).Array[1, 3]
        from loops in _loop.Array[1, 20]
        from places in Gen.Int[0, 2].Array[20]
        from spring in Gen.OneOf(
            Gen.Const((BypassDescription?)null),
            Gen.Select(Gen.Double[0, 200_000], Log(1, 1e6), Log(0.001, 1000),
                (opening, band, kvs) => (BypassDescription?)new BypassDescription(opening, band, kvs)))
        from fixedKv in Gen.OneOf(Gen.Const((double?)null), Log(0.001, 1000).Select(kv => (double?)kv))
        select new PlantDescription
        {
            GlycolShare = share,
            WaterC = Between(share > 0 ? Glycol.FreezingC(share) : 0, 100, warmth),
            PlantRoomC = 20,
            Rules = new HydraulicRules { Friction = law, Gravity = gravity },
            Pump = pump,
            Mains = mains,
            HeatExchangerKv = exchanger,
            Manifolds = manifolds,
            Actuators = [.. Enumerable.Repeat(Houses.TwoWire, Zones)],
            Loops = [.. loops.Select((loop, i) => loop with { Manifold = places[i] % manifolds.Length })],
            Bypass = pump.Regulation?.HeadAtNoFlowM is null ? spring : null,
            FixedBypassKv = fixedKv,
        };

    private static double Between(double low, double high, double part) => low + part * (high - low);

    private static Gen<double> Log(double low, double high) =>
        Gen.Double[Math.Log(low), Math.Log(high)].Select(x => Math.Clamp(Math.Exp(x), low, high));
}
