namespace ZoneControl.Plant;

/// <summary>
/// What the plant is made of, in SI units. Built by the house file's reader, which has already refused what cannot be;
/// <see cref="PlantModel"/> checks again and names the value that it cannot use.
/// </summary>
public sealed record PlantDescription
{
    /// <summary>Water temperature at the start and wherever no later model moves it, °C; above 0, below 100.</summary>
    public required double WaterC { get; init; }

    /// <summary>Air temperature around the pump, °C; -20 to 60.</summary>
    public required double PlantRoomC { get; init; }

    /// <summary>How head loss is computed.</summary>
    public HydraulicRules Rules { get; init; } = new();

    /// <summary>The circulator.</summary>
    public required PumpDescription Pump { get; init; }

    /// <summary>
    /// Piping from the pump to the manifolds and back, common to all, the heat source's own resistance in its fittings.
    /// </summary>
    public required PipeDescription Mains { get; init; }

    /// <summary>Manifolds, each with the branch that feeds it; at least one.</summary>
    public required IReadOnlyList<ManifoldDescription> Manifolds { get; init; }

    /// <summary>Actuators, one entry a zone, in the house file's order; at most 31.</summary>
    public required IReadOnlyList<ActuatorDescription> Actuators { get; init; }

    /// <summary>All loops of the house; at least one.</summary>
    public required IReadOnlyList<LoopDescription> Loops { get; init; }

    /// <summary>Spring bypass between the mains' supply and return; null when there is none.</summary>
    public BypassDescription? Bypass { get; init; }
}

/// <summary>How head loss is computed.</summary>
public sealed record HydraulicRules
{
    /// <summary>Standard acceleration of gravity, m/s² (ISO 80000-3).</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>Friction law of turbulent flow and of the transition to it.</summary>
    public FrictionLaw Friction { get; init; } = FrictionLaw.Colebrook;

    /// <summary>Acceleration of gravity, m/s²; 1 to 30.</summary>
    public double Gravity { get; init; } = StandardGravity;

    /// <summary>
    /// Kinematic viscosity, m²/s, 1e-8 to 1e-3, where a test must state it; null for that of water at the stated temperature.
    /// </summary>
    public double? KinematicViscosity { get; init; }
}

/// <summary>Friction law of turbulent flow and of the transition to it; laminar flow is 64/Re in both.</summary>
public enum FrictionLaw
{
    /// <summary>
    /// Colebrook (1939), solved; between Re 2,000 and 4,000 the head loss is joined so that it never falls as flow rises.
    /// </summary>
    Colebrook,

    /// <summary>
    /// Swamee and Jain (1976) above Re 4,000 with Dunlop's cubic between 2,000 and 4,000: the EPANET engine's law.
    /// </summary>
    SwameeJainDunlop,
}

/// <summary>A run of pipe or tube.</summary>
/// <param name="LengthM">Length, m; 0 to 10,000.</param>
/// <param name="InsideDiameterM">Inside diameter, m; 0.001 to 1.</param>
/// <param name="RoughnessM">Absolute roughness, m; 0 to 5 % of the inside diameter.</param>
/// <param name="FittingsK">Sum of loss coefficients K of bends and fittings, on this inside diameter; 0 to 1e6.</param>
public sealed record PipeDescription(double LengthM, double InsideDiameterM, double RoughnessM, double FittingsK)
{
    /// <summary>Volume, m³.</summary>
    public double VolumeM3 => Math.PI / 4 * InsideDiameterM * InsideDiameterM * LengthM;
}

/// <summary>A manifold and the branch that feeds it.</summary>
/// <param name="Name">Name in the house file.</param>
/// <param name="Branch">Supply and return branch together, from the mains; null when the manifold sits on the mains.</param>
public sealed record ManifoldDescription(string Name, PipeDescription? Branch);

/// <summary>A loop.</summary>
/// <param name="Zone">Zone that opens it, from 0; -1 for a loop without an actuator, always open.</param>
/// <param name="Manifold">Manifold that it hangs on, from 0.</param>
/// <param name="Tube">The tube; its K holds bends.</param>
/// <param name="ValveKvs">
/// Kv of its valve when fully open, m³/h at 1 bar (IEC 60534-1); 0.001 or more, infinite for no valve.
/// </param>
public sealed record LoopDescription(int Zone, int Manifold, PipeDescription Tube, double ValveKvs);

/// <summary>The circulator at its fixed speed.</summary>
public sealed record PumpDescription
{
    /// <summary>
    /// Curve points: flow in m³/s rising from 0, head in m never rising, at most 100, the last head 0; at least two.
    /// <see cref="PumpCurve"/> says how they are joined.
    /// </summary>
    public required IReadOnlyList<PumpPoint> Curve { get; init; }

    /// <summary>Electrical power, W, 0 to 100,000; the upper bound on heat into the water at no flow.</summary>
    public required double PowerW { get; init; }

    /// <summary>Flow below which the maker does not want it run, m³/s; more than 0, at most 1.</summary>
    public required double MinimumFlowM3s { get; init; }

    /// <summary>Water in the casing, m³; 1e-6 to 1.</summary>
    public required double CasingWaterM3 { get; init; }

    /// <summary>Metal of the casing that warms with it, kg of iron; 0 to 1,000.</summary>
    public required double CasingIronKg { get; init; }

    /// <summary>Heat loss of the casing to the plant room, W/K; 0 to 1,000.</summary>
    public required double CasingLossWPerK { get; init; }
}

/// <summary>A point of a pump curve.</summary>
/// <param name="FlowM3s">Flow, m³/s.</param>
/// <param name="HeadM">Head, m.</param>
public readonly record struct PumpPoint(double FlowM3s, double HeadM);

/// <summary>Spring bypass: shut below its opening pressure, then opening in proportion over its band.</summary>
/// <param name="OpeningPa">Differential pressure at which it begins to open, Pa; 0 to 1e6.</param>
/// <param name="BandPa">Further pressure over which it opens fully, Pa; 1 to 1e6.</param>
/// <param name="Kvs">Kv when fully open, m³/h at 1 bar; 0.001 to 1,000.</param>
public sealed record BypassDescription(double OpeningPa, double BandPa, double Kvs);

/// <summary>The actuators of one zone; all its loops' valves move together. Normally closed.</summary>
public sealed record ActuatorDescription
{
    /// <summary>From energised to the first movement, s; 0 to 86,400 (warm-up of a thermal actuator).</summary>
    public required double OpenDeadTimeS { get; init; }

    /// <summary>Stroke from shut to open, s, after the dead time; 0.001 to 86,400.</summary>
    public required double OpenStrokeS { get; init; }

    /// <summary>From released to the first movement, s; 0 to 86,400.</summary>
    public required double CloseDeadTimeS { get; init; }

    /// <summary>Stroke from open to shut, s, after the dead time; 0.001 to 86,400.</summary>
    public required double CloseStrokeS { get; init; }

    /// <summary>Travel at which the end switch makes when opening, more than 0, at most 1; null without a switch.</summary>
    public double? SwitchMakesAt { get; init; }

    /// <summary>How far below that travel it breaks when closing, 0 to <see cref="SwitchMakesAt"/>.</summary>
    public double SwitchHysteresis { get; init; } = 0.05;
}
