namespace ZoneControl.Plant;

/// <summary>Spring bypass and fixed bypass side by side, either or both or none.</summary>
internal sealed class Bypasses
{
    private readonly SpringBypass? _spring;
    private readonly double _fixedFlowPerRoot; // m³/s by √m

    public Bypasses(BypassDescription? spring, double? fixedKv, double density, double gravity)
    {
        _spring = spring is null ? null : new SpringBypass(spring, density, gravity);
        _fixedFlowPerRoot = fixedKv is { } kv ? 1 / Math.Sqrt(ValveCurve.Resistance(kv, gravity)) : 0;
        IsFitted = spring is not null || fixedKv is not null;
    }

    /// <summary>There is one.</summary>
    public bool IsFitted { get; }

    /// <summary>Flow of both at a head across them (m, 0 or more), m³/s, and its derivative by head.</summary>
    public double Flow(double head, out double slope)
    {
        slope = 0;
        double flow = _spring?.Flow(head, out slope) ?? 0;
        if (_fixedFlowPerRoot > 0)
        {
            double root = Math.Sqrt(head);
            flow += _fixedFlowPerRoot * root;
            slope += _fixedFlowPerRoot / (2 * root);
        }

        return flow;
    }

    /// <summary>Flow of the fixed one alone, m³/s.</summary>
    public double FixedFlow(double head) => _fixedFlowPerRoot * Math.Sqrt(head);
}
