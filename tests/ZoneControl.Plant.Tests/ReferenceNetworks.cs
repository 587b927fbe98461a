using System.Text.Json;
using System.Text.Json.Serialization;

namespace ZoneControl.Plant.Reference;

/// <summary>The networks of tests/reference/engine, as they stand in networks.json: SI units, Kv in m³/h at 1 bar.</summary>
internal sealed record ReferenceNetwork
{
    /// <summary>Gravity inside the reference engine, m/s²: 32.2 ft/s².</summary>
    public const double EngineGravity = 32.2 * 0.3048;

    private static readonly JsonSerializerOptions _json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    public required string Name { get; init; }

    public required double Celsius { get; init; }

    public double? GlycolShare { get; init; }

    [JsonPropertyName("viscosity_m2s")]
    public required double Viscosity { get; init; }

    [JsonPropertyName("density_kgm3")]
    public required double Density { get; init; }

    public required double[][] PumpCurve { get; init; }

    public required Pipe Mains { get; init; }

    public required Manifold[] Manifolds { get; init; }

    public Spring? SpringBypass { get; init; }

    public double? FixedBypassKv { get; init; }

    public static string Folder { get; } = Path.Combine(AppContext.BaseDirectory, "reference", "engine");

    public static ReferenceNetwork[] All { get; } =
        JsonSerializer.Deserialize<File>(System.IO.File.ReadAllText(Path.Combine(Folder, "networks.json")), _json)!.Networks;

    public static ReferenceNetwork Named(string name) => All.Single(n => n.Name == name);

    public string ToJson() => JsonSerializer.Serialize(this, _json);

    /// <summary>
    /// The plant's description of it, every loop a zone of its own as long as zones last; further loops share them. Zones'
    /// travels say what is open. With glycol the plant finds the viscosity itself, else it is the one stated.
    /// </summary>
    public PlantDescription ToPlant(FrictionLaw law, double gravity = EngineGravity) => new()
    {
        WaterC = Celsius,
        GlycolShare = GlycolShare ?? 0,
        PlantRoomC = 20,
        Rules = new HydraulicRules
        {
            Friction = law,
            Gravity = gravity,
            KinematicViscosity = GlycolShare is null ? Viscosity : null,
        },
        Pump = new PumpDescription
        {
            Curve = [.. PumpCurve.Select(p => new PumpPoint(p[0], p[1]))],
            PowerW = 80,
            MinimumFlowM3s = 1e-5,
            CasingWaterM3 = 1e-3,
            CasingIronKg = 0,
            CasingLossWPerK = 0,
        },
        Mains = Mains.ToPlant(),
        Manifolds = [.. Manifolds.Select((m, i) => new ManifoldDescription($"m{i}", m.Branch?.ToPlant()))],
        Actuators = [.. Enumerable.Repeat(
            new ActuatorDescription { OpenDeadTimeS = 1, OpenStrokeS = 1, CloseDeadTimeS = 1, CloseStrokeS = 1 },
            Math.Min(Loops.Count, PlantCheck.MostZones))],
        Loops = [.. Loops.Select((loop, i) => new LoopDescription(
            ZoneOf(i), loop.Manifold, loop.Loop.ToPlant(), loop.Loop.Kv ?? double.PositiveInfinity)
        {
            ValveTable = ValveCurve.Linear,
        })],
        Bypass = SpringBypass is null ? null : new(SpringBypass.OpeningPa, SpringBypass.BandPa, SpringBypass.Kvs),
        FixedBypassKv = FixedBypassKv,
    };

    /// <summary>Zones' travels for the loops that the definition says are open.</summary>
    public double[] Travels()
    {
        var travels = new double[Math.Min(Loops.Count, PlantCheck.MostZones)];
        for (int i = 0; i < Loops.Count; i++)
        {
            travels[ZoneOf(i)] = Loops[i].Loop.Open == false ? 0 : 1;
        }

        return travels;
    }

    /// <summary>All loops with their manifolds.</summary>
    [JsonIgnore]
    public IReadOnlyList<(int Manifold, Loop Loop)> Loops => [.. Manifolds.SelectMany((m, i) => m.Loops.Select(l => (i, l)))];

    // Shut loops of large networks are put together in one zone, the first open one has a zone of its own.
    private int ZoneOf(int loop)
    {
        int zones = Math.Min(Loops.Count, PlantCheck.MostZones);
        if (Loops.Count <= zones)
        {
            return loop;
        }

        return Loops[loop].Loop.Open == false ? zones - 1 : loop == FirstOpen ? 0 : 1 + loop % (zones - 2);
    }

    private int FirstOpen => Loops.Select((l, i) => (l, i)).First(x => x.l.Loop.Open != false).i;

    internal sealed record File(ReferenceNetwork[] Networks);

    internal sealed record Pipe(
        [property: JsonPropertyName("length_m")] double Length,
        [property: JsonPropertyName("diameter_m")] double Diameter,
        [property: JsonPropertyName("roughness_m")] double Roughness,
        double K)
    {
        public PipeDescription ToPlant() => new(Length, Diameter, Roughness, K);
    }

    internal sealed record Loop(
        [property: JsonPropertyName("length_m")] double Length,
        [property: JsonPropertyName("diameter_m")] double Diameter,
        [property: JsonPropertyName("roughness_m")] double Roughness,
        double K, double? Kv, bool? Open)
    {
        public PipeDescription ToPlant() => new(Length, Diameter, Roughness, K);
    }

    internal sealed record Manifold(Pipe? Branch, Loop[] Loops);

    internal sealed record Spring(double OpeningPa, double BandPa, double Kvs);
}
