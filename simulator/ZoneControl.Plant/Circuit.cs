namespace ZoneControl.Plant;

/// <summary>What both searches for the flows work on: the circuit's parts and how its valves stand.</summary>
internal sealed class Circuit
{
    // A run of pipe that takes less of the shutoff head than this at the pump's largest flow takes nothing.
    private const double Nothing = 1e-13;

    private readonly double[] _openResistance;
    private readonly MonotoneCurve[] _characteristic;
    private readonly double[] _valve;
    private readonly bool[] _open;

    /// <summary>The circuit of a checked description, every valve with an actuator shut.</summary>
    public Circuit(PlantDescription description)
    {
        HydraulicRules rules = description.Rules;
        var liquid = new Liquid(description.WaterC, description.GlycolShare);
        double viscosity = rules.KinematicViscosity ?? liquid.KinematicViscosity;
        Law = rules.Friction;
        Pump = new Circulator(description.Pump, liquid.Density * rules.Gravity);
        Bypass = new Bypasses(description.Bypass, description.FixedBypassKv, liquid.Density, rules.Gravity);
        Mains = Trunk(description.Mains, description.HeatExchangerKv);
        Branches = [.. description.Manifolds.Select(m => Trunk(m.Branch, m.Balancing?.Kv ?? double.PositiveInfinity))];
        Loops = [.. description.Loops.Select(l => new FlowPath(
            l.Tube, rules, viscosity, ValveCurve.Resistance(l.Balancing?.Kv ?? double.PositiveInfinity, rules.Gravity)))];
        ManifoldOfLoop = [.. description.Loops.Select(l => l.Manifold)];
        _openResistance = [.. description.Loops.Select(l => ValveCurve.Resistance(l.ValveKvs, rules.Gravity))];
        _characteristic = [.. description.Loops.Select(l => ValveCurve.Through(l.ValveTable))];
        _valve = new double[Loops.Length];
        _open = new bool[Loops.Length];

        FlowPath? Trunk(PipeDescription? pipe, double kv)
        {
            if (pipe is null && double.IsInfinity(kv))
            {
                return null;
            }

            var path = new FlowPath(
                pipe ?? new PipeDescription(0, 0.02, 0, 0), rules, viscosity, ValveCurve.Resistance(kv, rules.Gravity));
            return path.Head(Pump.LargestFlowM3s, 0, out _) > Nothing * Pump.MostHeadM ? path : null;
        }
    }

    /// <summary>Friction law of all paths.</summary>
    public FrictionLaw Law { get; }

    /// <summary>The pump.</summary>
    public Circulator Pump { get; }

    /// <summary>The bypasses, side by side with the manifolds.</summary>
    public Bypasses Bypass { get; }

    /// <summary>The mains; null when they take nothing.</summary>
    public FlowPath? Mains { get; }

    /// <summary>Each manifold's branch; null when it takes nothing.</summary>
    public FlowPath?[] Branches { get; }

    /// <summary>The loops' tubes, with what stands still in them.</summary>
    public FlowPath[] Loops { get; }

    /// <summary>Manifold of each loop.</summary>
    public int[] ManifoldOfLoop { get; }

    /// <summary>The loop's valve lets water through.</summary>
    public bool IsOpen(int loop) => _open[loop];

    /// <summary>What the loop's valve adds, m per (m³/s)²; 0 while it is shut.</summary>
    public double Valve(int loop) => _valve[loop];

    /// <summary>Sets a loop's valve to a stem travel, 0 shut to 1 open.</summary>
    public void SetTravel(int loop, double travel)
    {
        double opening = ValveCurve.Opening(_characteristic[loop], travel);
        _open[loop] = opening > 0;
        _valve[loop] = opening > 0 ? _openResistance[loop] / (opening * opening) : 0;
    }
}
