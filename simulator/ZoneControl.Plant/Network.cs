namespace ZoneControl.Plant;

/// <summary>
/// The water circuit: pump, mains with the heat exchanger, and from their ends side by side the bypasses and the manifolds,
/// each behind its branch, each with its loops side by side. Closed and full, so static pressure and heights cancel; only what
/// friction takes counts. Water does not flow without the pump (thermosiphon is left out).
/// </summary>
/// <remarks>
/// What manifolds and bypasses pass rises with the head across them, and so does what the mains lose; the pump's head falls
/// as flow rises or, regulated in proportion, rises by less than the circuit needs (<see cref="PlantCheck"/> refuses
/// the one arrangement where it may not). So there is exactly one balance. A quick search finds it from the last one, and a
/// slow one that always ends stands behind it.
/// </remarks>
public sealed class Network
{
    private readonly Circuit _circuit;
    private readonly CircuitNewton _quick;
    private readonly CircuitBracket _sure;
    private readonly int[][] _loopsOfZone;
    private readonly double[] _travel;
    private bool _runs;

    /// <summary>Builds the circuit with every valve shut and the pump off.</summary>
    /// <exception cref="ArgumentException">A value of the description cannot be used; the message names it.</exception>
    public Network(PlantDescription description)
    {
        PlantCheck.Demand(description);
        _circuit = new Circuit(description);
        _quick = new CircuitNewton(_circuit);
        _sure = new CircuitBracket(_circuit);
        _travel = new double[description.Actuators.Count];
        _loopsOfZone = [.. Enumerable.Range(0, _travel.Length).Select(zone =>
            Enumerable.Range(0, description.Loops.Count).Where(i => description.Loops[i].Zone == zone).ToArray())];
        for (int i = 0; i < description.Loops.Count; i++)
        {
            if (description.Loops[i].Zone < 0)
            {
                SetTravel(i, 1);
            }
        }
    }

    /// <summary>The ratio that <see cref="Residual"/> is at most unless the search was left to the slow one.</summary>
    public const double Tolerance = CircuitNewton.Tolerance;

    /// <summary>
    /// How nearly the last search balanced: the largest relative residual of all equations, evaluated exactly where it ended.
    /// They are each open loop's head against its manifold's, heads round the circuit, and flows into and out of each
    /// manifold. The slow search may leave more than <see cref="Tolerance"/> in a loop that hardly passes anything.
    /// </summary>
    public double Residual { get; private set; }

    /// <summary>Flow through the pump, m³/s.</summary>
    public double PumpFlowM3s { get; private set; }

    /// <summary>Head of the pump, m; that at no flow when nothing can flow.</summary>
    public double PumpHeadM { get; private set; }

    /// <summary>Head across the ends of the mains, where bypasses and branches begin, m.</summary>
    public double HeadAcrossMainsEndsM { get; private set; }

    /// <summary>Flow through the bypasses together, m³/s; 0 without one.</summary>
    public double BypassFlowM3s { get; private set; }

    /// <summary>Flow through the fixed bypass alone, m³/s; 0 without one.</summary>
    public double FixedBypassFlowM3s => _circuit.Bypass.FixedFlow(HeadAcrossMainsEndsM);

    /// <summary>Flow of a loop, m³/s.</summary>
    public double LoopFlowM3s(int loop) => _runs ? _quick.LoopFlowM3s(loop) : 0;

    /// <summary>Flow through a manifold's branch, m³/s.</summary>
    public double ManifoldFlowM3s(int manifold) => _runs ? _quick.ManifoldFlowM3s(manifold) : 0;

    /// <summary>How often a path's head loss has been evaluated so far, all paths together: the search's effort.</summary>
    public long LoopEvaluations => _quick.Evaluations + _sure.Evaluations;

    /// <summary>Number of searches so far that the quick method gave up.</summary>
    public long SlowSearches { get; private set; }

    /// <summary>The pump.</summary>
    internal Circulator Pump => _circuit.Pump;

    /// <summary>The pump is off: nothing flows.</summary>
    public void Stop()
    {
        _runs = false;
        (PumpFlowM3s, PumpHeadM, HeadAcrossMainsEndsM, BypassFlowM3s) = (0, 0, 0, 0);
    }

    /// <summary>Finds all flows with the pump on.</summary>
    /// <param name="travel">Stem travel of each zone's valves, 0 shut to 1 open; loops without a zone are open.</param>
    public void Solve(ReadOnlySpan<double> travel)
    {
        for (int zone = 0; zone < _travel.Length; zone++)
        {
            if (travel[zone] != _travel[zone])
            {
                _travel[zone] = travel[zone];
                foreach (int loop in _loopsOfZone[zone])
                {
                    SetTravel(loop, travel[zone]);
                }
            }
        }

        _runs = true;
        if (!_quick.IsOpen)
        {
            PumpHeadM = HeadAcrossMainsEndsM = _circuit.Pump.Head(0, out _);
            (PumpFlowM3s, BypassFlowM3s, Residual) = (0, 0, 0);
            return;
        }

        if (!_quick.TrySolve())
        {
            SlowSearches++;
            _quick.TakeOver(_sure.Solve(), _sure.LoopFlows);
        }

        Residual = _quick.Residual;
        HeadAcrossMainsEndsM = _quick.HeadM;
        PumpFlowM3s = _quick.FlowM3s;
        PumpHeadM = _circuit.Pump.Head(PumpFlowM3s, out _);
        BypassFlowM3s = _quick.BypassFlowM3s;
    }

    private void SetTravel(int loop, double travel)
    {
        _circuit.SetTravel(loop, travel);
        _quick.ValveMoved(loop);
    }
}
