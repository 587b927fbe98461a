using CsCheck;

namespace ZoneControl.Plant.Tests;

/// <summary>Houses for tests, all invented.</summary>
internal static class Houses
{
    public const double LitrePerMinute = 1 / 60_000.0;

    public static ActuatorDescription TwoWire { get; } =
        new() { OpenDeadTimeS = 60, OpenStrokeS = 120, CloseDeadTimeS = 90, CloseStrokeS = 180 };

    public static ActuatorDescription FourWire { get; } = TwoWire with { SwitchMakesAt = 0.85 };

    public static PumpDescription Pump { get; } = new()
    {
        Curve = [new(0, 6), new(0.4e-3, 4.5), new(0.8e-3, 0)],
        PowerW = 80,
        MinimumFlowM3s = 3 * LitrePerMinute,
        CasingWaterM3 = 0.35e-3,
        CasingIronKg = 0,
        CasingLossWPerK = 0,
    };

    /// <summary>Two zones of one loop each on one manifold: two-wire and four-wire.</summary>
    public static PlantDescription Small { get; } = new()
    {
        WaterC = 40,
        PlantRoomC = 20,
        Pump = Pump,
        Mains = new PipeDescription(8, 0.02, 1.5e-6, 12),
        Manifolds = [new("only", null)],
        Actuators = [TwoWire, FourWire],
        Loops = [Loop(0, 0, 60), Loop(1, 0, 90)],
    };

    public static LoopDescription Loop(int zone, int manifold, double length) =>
        new(zone, manifold, new PipeDescription(length, 0.012, 1.5e-6, 10), 1.2);

    public static Gen<IReadOnlyList<PumpPoint>> AnyCurve { get; } =
        Gen.Select(Gen.Double[0.5, 15], Gen.Double[1e-4, 5e-3], Gen.Double[0.01, 0.99].Array[0, 5], Gen.Double[0, 1].Array[5])
            .Select(Curve);

    private static Gen<PipeDescription> Pipe(double longest, double narrowest, double widest, double mostK) =>
        Gen.Select(
            Gen.OneOf(Gen.Const(0.0), Gen.Double[0.1, longest]), Gen.Double[narrowest, widest],
            Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 0.0499]), Gen.OneOf(Gen.Const(0.0), Gen.Double[0, mostK]),
            (length, diameter, roughness, k) => new PipeDescription(length, diameter, roughness * diameter, k));

    private static Gen<BypassDescription?> Bypass { get; } = Gen.OneOf(
        Gen.Const((BypassDescription?)null),
        Gen.Select(Gen.Double[0, 100_000], Gen.Double[1, 50_000], Gen.Double[0.01, 10],
            (opening, band, kvs) => (BypassDescription?)new BypassDescription(opening, band, kvs)));

    private static Gen<ActuatorDescription> Actuator { get; } = Gen.Select(
        Gen.Int[0, 5], Gen.Double[0.5, 10], Gen.Double[0, 5], Gen.Double[0.5, 10], Gen.Double[0.1, 1], Gen.Bool,
        (openDead, open, closeDead, close, makes, fitted) => new ActuatorDescription
        {
            OpenDeadTimeS = openDead,
            OpenStrokeS = open,
            CloseDeadTimeS = closeDead,
            CloseStrokeS = close,
            SwitchMakesAt = fitted ? makes : null,
            SwitchHysteresis = 0.05,
        });

    /// <summary>Houses from one loop to two dozen, plain and odd, with four zones.</summary>
    public static Gen<PlantDescription> Any { get; } =
        from water in Gen.Double[1, 99]
        from law in Gen.Enum<FrictionLaw>()
        from curve in AnyCurve
        from mains in Pipe(60, 0.008, 0.06, 200)
        from branches in Gen.OneOf(Gen.Const((PipeDescription?)null), Pipe(30, 0.006, 0.04, 100).Select(p => (PipeDescription?)p))
            .Array[1, 3]
        from actuators in Actuator.Array[4]
        from loops in Gen.Select(Gen.Int[-1, 3], Gen.Int[0, branches.Length - 1], Pipe(200, 0.004, 0.03, 100),
            Gen.OneOf(Gen.Double[0.01, 10], Gen.Const(0.001)),
            (z, m, tube, kvs) => new LoopDescription(z, m, tube, kvs)).Array[1, 24]
        from bypass in Bypass
        from casing in Gen.Select(Gen.Double[0, 5], Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 5]))
        select new PlantDescription
        {
            WaterC = water,
            PlantRoomC = 20,
            Rules = new HydraulicRules { Friction = law },
            Pump = Pump with { Curve = curve, CasingIronKg = casing.Item1, CasingLossWPerK = casing.Item2 },
            Mains = mains,
            Manifolds = [.. branches.Select((b, i) => new ManifoldDescription($"m{i}", b))],
            Actuators = actuators,
            Loops = loops,
            Bypass = bypass,
        };

    /// <summary>Stem travels of four zones: shut, open and between, even hardly open.</summary>
    public static Gen<double[]> AnyTravels { get; } =
        Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0), Gen.Double[0, 1], Gen.Double[0, 1e-6]).Array[4];

    private static IReadOnlyList<PumpPoint> Curve(double shutoff, double full, double[] flows, double[] heads)
    {
        double[] sorted = [.. flows.Order().Distinct()];
        double[] falling = [.. heads.Take(sorted.Length).OrderDescending()];
        return
        [
            new(0, shutoff),
            .. sorted.Select((f, i) => new PumpPoint(f * full, falling[i] * shutoff)),
            new(full, 0),
        ];
    }
}
