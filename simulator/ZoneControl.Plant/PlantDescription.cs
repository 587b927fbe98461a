namespace ZoneControl.Plant;

/// <summary>
/// What the plant is made of, in SI units. The circuit is closed and full of water, so static pressure and heights cancel and
/// are not asked for. Built by the house file's reader, which has already refused what cannot be; <see cref="PlantModel"/>
/// checks again and names the value that it cannot use.
/// </summary>
public sealed record PlantDescription
{
    /// <summary>
    /// Water temperature at the start and wherever no later model moves it, °C; below 100, and above 0 for water, above the
    /// freezing point for a mixture with glycol.
    /// </summary>
    public required double WaterC { get; init; }

    /// <summary>Share of the water's mass that is propylene glycol, 0 for none to 0.6; see <see cref="Glycol"/>.</summary>
    public double GlycolShare { get; init; }

    /// <summary>Air temperature around the pump, °C; -20 to 60.</summary>
    public required double PlantRoomC { get; init; }

    /// <summary>How head loss is computed.</summary>
    public HydraulicRules Rules { get; init; } = new();

    /// <summary>The circulator.</summary>
    public required PumpDescription Pump { get; init; }

    /// <summary>
    /// Piping from the pump to the manifolds and back, common to all. The heat source's own resistance is in its fittings or
    /// in <see cref="HeatExchangerKv"/>.
    /// </summary>
    public required PipeDescription Mains { get; init; }

    /// <summary>
    /// Kv of a heat exchanger or heat source in the mains, m³/h at 1 bar (IEC 60534-1): 0.001 or more, infinite for none.
    /// </summary>
    public double HeatExchangerKv { get; init; } = double.PositiveInfinity;

    /// <summary>Manifolds, each with the branch that feeds it; at least one.</summary>
    public required IReadOnlyList<ManifoldDescription> Manifolds { get; init; }

    /// <summary>Actuators, one entry a zone, in the house file's order; at most 31.</summary>
    public required IReadOnlyList<ActuatorDescription> Actuators { get; init; }

    /// <summary>All loops of the house; at least one.</summary>
    public required IReadOnlyList<LoopDescription> Loops { get; init; }

    /// <summary>Spring bypass between the mains' supply and return; null when there is none.</summary>
    public BypassDescription? Bypass { get; init; }

    /// <summary>
    /// Kv of a bypass that always stands open between the mains' supply and return, m³/h at 1 bar, 0.001 to 1,000; null when
    /// there is none.
    /// </summary>
    public double? FixedBypassKv { get; init; }
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
public sealed record ManifoldDescription(string Name, PipeDescription? Branch)
{
    /// <summary>Balancing valve in the branch; null for none.</summary>
    public BalancingValveDescription? Balancing { get; init; }
}

/// <summary>A loop.</summary>
/// <param name="Zone">Zone that opens it, from 0; -1 for a loop without an actuator, always open.</param>
/// <param name="Manifold">Manifold that it hangs on, from 0.</param>
/// <param name="Tube">The tube; its K holds bends.</param>
/// <param name="ValveKvs">
/// Kv of its valve when fully open, m³/h at 1 bar (IEC 60534-1); 0.001 or more, infinite for no valve.
/// </param>
public sealed record LoopDescription(int Zone, int Manifold, PipeDescription Tube, double ValveKvs)
{
    /// <summary>
    /// Characteristic of its valve: points of opening by travel from (0, 0) to (1, 1), both rising, 2 to 100 of them. See
    /// <see cref="ValveCurve"/> for the usual ones.
    /// </summary>
    public IReadOnlyList<ValvePoint> ValveTable { get; init; } = ValveCurve.QuickOpening;

    /// <summary>Balancing valve in the loop; null for none.</summary>
    public BalancingValveDescription? Balancing { get; init; }
}

/// <summary>A balancing valve as it is set. Set once, it stays.</summary>
/// <param name="Setting">Setting, in the unit of the table (turns, a number on the scale); within the table.</param>
/// <param name="Table">
/// Kv by setting as the maker states it, m³/h at 1 bar, 0.001 to 1,000: settings rising, Kv rising; 1 to 100 points.
/// </param>
public sealed record BalancingValveDescription(double Setting, IReadOnlyList<BalancingPoint> Table)
{
    /// <summary>Kv at the setting, m³/h at 1 bar, by a smooth monotone curve through the table.</summary>
    public double Kv => Table.Count == 1
        ? Table[0].Kv
        : new MonotoneCurve([.. Table.Select(p => p.Setting)], [.. Table.Select(p => p.Kv)]).At(Setting, out _);

    /// <summary>A valve of which only the Kv as it stands is known.</summary>
    public static BalancingValveDescription AtKv(double kv) => new(0, [new BalancingPoint(0, kv)]);
}

/// <summary>A point of a balancing valve's table.</summary>
/// <param name="Setting">Setting, in the maker's unit.</param>
/// <param name="Kv">Kv there, m³/h at 1 bar.</param>
public readonly record struct BalancingPoint(double Setting, double Kv);

/// <summary>The circulator.</summary>
public sealed record PumpDescription
{
    /// <summary>
    /// Curve points: flow in m³/s rising from 0, head in m never rising, at most 100, the last head 0; at least two.
    /// <see cref="PumpCurve"/> says how they are joined.
    /// </summary>
    public required IReadOnlyList<PumpPoint> Curve { get; init; }

    /// <summary>Speed at which it runs, of the curve's speed; 0.1 to 1.5. Curve and power follow by the affinity laws.</summary>
    public double Speed { get; init; } = 1;

    /// <summary>How it regulates its head by itself; null at fixed speed.</summary>
    public RegulationDescription? Regulation { get; init; }

    /// <summary>
    /// Electrical power at the curve's speed, W, 0 to 100,000, the same at every flow; where <see cref="PowerByFlow"/> is
    /// given, that holds instead.
    /// </summary>
    public required double PowerW { get; init; }

    /// <summary>
    /// Electrical power by flow at the curve's speed: flow rising from 0, power 0 to 100,000 W and nowhere less than
    /// what the water gets, 2 to 100 points; beyond the last it stays. Null where only one figure is known.
    /// </summary>
    public IReadOnlyList<PumpPowerPoint>? PowerByFlow { get; init; }

    /// <summary>
    /// Part of the pump's losses that ends in the water, 0 to 1; the rest warms the plant room. The default, all of it, is
    /// an upper bound.
    /// </summary>
    public double HeatToWaterShare { get; init; } = 1;

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

/// <summary>A point of a pump's power curve.</summary>
/// <param name="FlowM3s">Flow, m³/s.</param>
/// <param name="PowerW">Electrical power, W.</param>
public readonly record struct PumpPowerPoint(double FlowM3s, double PowerW);

/// <summary>
/// Head kept by the pump itself. Constant difference: the same head at every flow that it can reach. Proportional difference:
/// from a floor at no flow it rises in a straight line to the set head where the curve at full speed passes it.
/// </summary>
/// <param name="SetHeadM">Set head, m; more than 0 and less than the curve's head at no flow.</param>
public sealed record RegulationDescription(double SetHeadM)
{
    /// <summary>The floor: head at no flow, m, more than 0, at most the set head; null for constant difference.</summary>
    public double? HeadAtNoFlowM { get; init; }

    /// <summary>Lowest speed that it goes down to, of the curve's speed; 0 to the speed at which it runs at full.</summary>
    public double LowestSpeed { get; init; }
}

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

    /// <summary>Travel, as a share of the stroke, at which the end switch makes when opening, more than 0, at most 1; null without a switch.</summary>
    public double? SwitchMakesAt { get; init; }

    /// <summary>How far below that travel it breaks when closing, as a share of the stroke, 0 to <see cref="SwitchMakesAt"/>.</summary>
    public double SwitchHysteresis { get; init; } = 0.05;
}
