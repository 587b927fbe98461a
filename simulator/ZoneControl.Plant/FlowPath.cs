namespace ZoneControl.Plant;

/// <summary>
/// Head lost by flow along a pipe: Darcy-Weisbach, h = (f·L/D + ΣK)·v²/2g, with whatever else in series resists with the
/// square of flow.
/// </summary>
internal sealed class FlowPath
{
    private readonly double _fittings;
    private readonly double _laminarSlope;

    /// <summary>A path through a pipe.</summary>
    /// <param name="pipe">The pipe.</param>
    /// <param name="rules">Friction law and gravity.</param>
    /// <param name="viscosity">Kinematic viscosity, m²/s.</param>
    /// <param name="fixedValve">What a valve that never moves adds, m per (m³/s)².</param>
    public FlowPath(PipeDescription pipe, HydraulicRules rules, double viscosity, double fixedValve = 0)
    {
        double d = pipe.InsideDiameterM;
        Friction = new Friction(rules.Friction, pipe.RoughnessM / d);
        ReynoldsPerFlow = 4 / (Math.PI * d * viscosity);
        FrictionHead = viscosity * viscosity * pipe.LengthM / (2 * rules.Gravity * d * d * d);
        _fittings = pipe.FittingsK * 8 / (rules.Gravity * Math.PI * Math.PI * d * d * d * d) + fixedValve;
        _laminarSlope = 64 * FrictionHead * ReynoldsPerFlow;
    }

    /// <summary>Friction of its pipe.</summary>
    public Friction Friction { get; }

    /// <summary>Reynolds number by flow, s/m³.</summary>
    public double ReynoldsPerFlow { get; }

    /// <summary>Head lost by unit of f·Re², m.</summary>
    public double FrictionHead { get; }

    /// <summary>What fittings, fixed valve and a valve add, m per (m³/s)².</summary>
    public double Square(double valve) => _fittings + valve;

    /// <summary>Head lost, m.</summary>
    /// <param name="flow">Flow, m³/s; 0 or more.</param>
    /// <param name="valve">What a valve in series adds, m per (m³/s)²; finite.</param>
    /// <param name="slope">Derivative of head by flow, s/m².</param>
    public double Head(double flow, double valve, out double slope)
    {
        double square = _fittings + valve;
        double scaled = Friction.ScaledLoss(flow * ReynoldsPerFlow, out double scaledSlope);
        slope = FrictionHead * scaledSlope * ReynoldsPerFlow + 2 * square * flow;
        return FrictionHead * scaled + square * flow * flow;
    }

    /// <summary>
    /// A flow that certainly loses at least that head, m³/s: no law lies below laminar friction, and the fittings' share is
    /// exact.
    /// </summary>
    public double FlowAbove(double head, double valve) =>
        1.000001 * Math.Min(head / _laminarSlope, Math.Sqrt(head / (_fittings + valve)));

    /// <summary>A rough flow for that head, m³/s, to begin a search from: as if the friction factor were 0.03.</summary>
    public double FlowGuess(double head, double valve)
    {
        double square = 0.03 * FrictionHead * ReynoldsPerFlow * ReynoldsPerFlow + _fittings + valve;
        return Math.Min(head / _laminarSlope, Math.Sqrt(head / square));
    }
}
