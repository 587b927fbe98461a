namespace ZoneControl.Plant;

/// <summary>
/// The search that always ends: for the head across the ends of the mains, inside it for the head across each manifold,
/// inside that for each loop's flow, each a rising function of one unknown between two bounds. Slow; for what
/// <see cref="CircuitNewton"/> gives up on.
/// </summary>
internal sealed class CircuitBracket
{
    private const double HeadTolerance = 1e-12;

    private readonly Circuit _circuit;
    private readonly ManifoldFlow[] _manifolds;
    private readonly ManifoldFlow.Loop[] _loops;
    private readonly double[] _flows;

    /// <summary>A search on a circuit.</summary>
    public CircuitBracket(Circuit circuit)
    {
        _circuit = circuit;
        _manifolds = [.. circuit.Branches.Select(branch => new ManifoldFlow(branch))];
        _loops = [.. circuit.Loops.Select(path => new ManifoldFlow.Loop(path))];
        _flows = new double[_loops.Length];
        for (int i = 0; i < _loops.Length; i++)
        {
            _manifolds[circuit.ManifoldOfLoop[i]].Add(_loops[i]);
        }
    }

    /// <summary>Flow of each loop, m³/s.</summary>
    public ReadOnlySpan<double> LoopFlows => _flows;

    /// <summary>Loops' head losses evaluated so far.</summary>
    public long Evaluations
    {
        get
        {
            long sum = 0;
            foreach (ManifoldFlow.Loop loop in _loops)
            {
                sum += loop.Steps;
            }

            return sum;
        }
    }

    /// <summary>Finds the flows, something being open; gives the head across the ends of the mains, m.</summary>
    public double Solve()
    {
        for (int i = 0; i < _loops.Length; i++)
        {
            _loops[i].Set(_circuit.IsOpen(i), _circuit.Valve(i));
        }

        foreach (ManifoldFlow manifold in _manifolds)
        {
            manifold.ValvesMoved();
        }

        double most = _circuit.Pump.MostHeadM;
        double head = MonotoneRoot.Find(new AcrossMainsEnds(this), 0, most, most / 2, HeadTolerance, out _);
        FlowAcross(head, out _);
        for (int i = 0; i < _loops.Length; i++)
        {
            _flows[i] = _loops[i].FlowM3s;
        }

        return head;
    }

    private double FlowAcross(double head, out double slope)
    {
        double sum = _circuit.Bypass.Flow(head, out slope);
        foreach (ManifoldFlow manifold in _manifolds)
        {
            sum += manifold.Flow(head, out double manifoldSlope);
            slope += manifoldSlope;
        }

        return sum;
    }

    /// <summary>Head across the ends, plus what the mains then lose, less the pump's head.</summary>
    private readonly struct AcrossMainsEnds(CircuitBracket search) : IRising
    {
        public double At(double x, out double slope)
        {
            double flow = search.FlowAcross(x, out double flowSlope);
            double lostSlope = 0;
            double lost = search._circuit.Mains?.Head(flow, 0, out lostSlope) ?? 0;
            double head = search._circuit.Pump.Head(flow, out double headSlope);
            slope = 1 + (lostSlope - headSlope) * flowSlope;
            return x + lost - head;
        }
    }
}
