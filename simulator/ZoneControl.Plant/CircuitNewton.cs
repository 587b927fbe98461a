namespace ZoneControl.Plant;

/// <summary>
/// The quick search: Newton's method on the whole circuit at once, from wherever the last search ended. Every path is
/// replaced by a straight line of its flow by the root of its head, which it nearly is; what is left is one equation for the
/// head across the ends of the mains. Then every path takes a step to its share and is evaluated exactly. It ends when
/// every equation, evaluated and not extrapolated, holds to <see cref="Tolerance"/>; it gives up rather than go on for long.
/// </summary>
/// <remarks>
/// The equations are: each open loop takes the head across its manifold; branch and manifold together take the head across
/// the ends of the mains; these and the mains take the pump's head; and what flows in flows out. Residuals are relative to the
/// head or flow in question, in the pump's equation to its largest head. Nothing is allocated after construction.
/// </remarks>
internal sealed class CircuitNewton
{
    /// <summary>Largest relative residual at the end.</summary>
    public const double Tolerance = 1e-10;

    private const int MostSteps = 30;
    private const double StepTolerance = 1e-6; // leaves about its square

    private readonly Circuit _circuit;
    private readonly PathBank?[] _banks; // by manifold; null for one without loops
    private readonly PathBank? _trunks; // branches, then mains
    private readonly int[] _trunkOfManifold; // -1 for none
    private readonly int _trunkOfMains;
    private readonly int[] _laneOfLoop;
    private readonly bool[] _laneOpen;
    private readonly int[] _openLoops; // by manifold
    private readonly bool[] _changed; // by manifold
    private readonly double[] _root; // √m, by manifold
    private readonly Line[] _lines; // of the trunks

    /// <summary>A search on a circuit, every loop shut.</summary>
    public CircuitNewton(Circuit circuit)
    {
        _circuit = circuit;
        int manifolds = circuit.Branches.Length;
        _laneOfLoop = new int[circuit.Loops.Length];
        _laneOpen = new bool[circuit.Loops.Length];
        _openLoops = new int[manifolds];
        _changed = new bool[manifolds];
        _root = new double[manifolds];
        _banks = new PathBank?[manifolds];
        HeadM = circuit.Pump.MostHeadM / 2;
        for (int m = 0; m < manifolds; m++)
        {
            var lanes = new List<FlowPath>();
            for (int i = 0; i < circuit.Loops.Length; i++)
            {
                if (circuit.ManifoldOfLoop[i] == m)
                {
                    _laneOfLoop[i] = lanes.Count;
                    lanes.Add(circuit.Loops[i]);
                }
            }

            _root[m] = Math.Sqrt(HeadM);
            _banks[m] = lanes.Count == 0 ? null : new PathBank(circuit.Law, lanes);
            for (int lane = 0; lane < lanes.Count; lane++)
            {
                _banks[m]!.Shut(lane);
            }
        }

        var trunks = new List<FlowPath>();
        _trunkOfManifold = [.. circuit.Branches.Select(Trunk)];
        _trunkOfMains = Trunk(circuit.Mains);
        _trunks = trunks.Count == 0 ? null : new PathBank(circuit.Law, trunks);
        _lines = new Line[trunks.Count];

        int Trunk(FlowPath? path)
        {
            if (path is null)
            {
                return -1;
            }

            trunks.Add(path);
            return trunks.Count - 1;
        }
    }

    /// <summary>Head across the ends of the mains, m.</summary>
    public double HeadM { get; private set; }

    /// <summary>Flow through the pump, m³/s.</summary>
    public double FlowM3s { get; private set; }

    /// <summary>Flow through the bypasses, m³/s.</summary>
    public double BypassFlowM3s { get; private set; }

    /// <summary>Largest relative residual where the last search ended, whichever found it.</summary>
    public double Residual { get; private set; }

    /// <summary>Paths evaluated so far.</summary>
    public long Evaluations { get; private set; }

    /// <summary>Flow of a loop, m³/s.</summary>
    public double LoopFlowM3s(int loop) => _banks[_circuit.ManifoldOfLoop[loop]]!.FlowOf(_laneOfLoop[loop]);

    /// <summary>Flow of a manifold, m³/s.</summary>
    public double ManifoldFlowM3s(int manifold) => _openLoops[manifold] > 0 ? _banks[manifold]!.Flow : 0;

    /// <summary>Something lets water through.</summary>
    public bool IsOpen
    {
        get
        {
            bool open = _circuit.Bypass.IsFitted;
            foreach (int loops in _openLoops)
            {
                open |= loops > 0;
            }

            return open;
        }
    }

    /// <summary>To be called for every loop whose valve moved.</summary>
    public void ValveMoved(int loop)
    {
        int manifold = _circuit.ManifoldOfLoop[loop];
        bool open = _circuit.IsOpen(loop);
        if (open)
        {
            _banks[manifold]!.Open(_laneOfLoop[loop], _circuit.Valve(loop), _root[manifold]);
        }
        else
        {
            _banks[manifold]!.Shut(_laneOfLoop[loop]);
        }

        _openLoops[manifold] += (open ? 1 : 0) - (_laneOpen[loop] ? 1 : 0);
        _laneOpen[loop] = open;
        _changed[manifold] = true;
    }

    /// <summary>Finds the flows; false when it did not get there.</summary>
    public bool TrySolve()
    {
        AddUpWhatChanged();
        for (int i = 0; i < MostSteps; i++)
        {
            for (int t = 0; t < _lines.Length; t++)
            {
                _lines[t] = new Line(_trunks!.FlowOf(t), _trunks.RootOf(t), _trunks.RootPerFlow(t));
            }

            HeadM = MonotoneRoot.Find(
                new Balance(this), 0, _circuit.Pump.MostHeadM, HeadM, StepTolerance, out _);
            if (!(HeadM > 0))
            {
                break;
            }

            Residual = Step();
            if (Residual <= Tolerance)
            {
                return true;
            }

            if (double.IsNaN(Residual))
            {
                break;
            }
        }

        HeadM = _circuit.Pump.MostHeadM / 2;
        return false;
    }

    /// <summary>Takes over what another search found.</summary>
    /// <param name="head">Head across the ends of the mains, m.</param>
    /// <param name="loopFlows">Flow of each loop, m³/s.</param>
    public void TakeOver(double head, ReadOnlySpan<double> loopFlows)
    {
        HeadM = head;
        double loops = 0;
        for (int i = 0; i < loopFlows.Length; i++)
        {
            if (_circuit.IsOpen(i))
            {
                _banks[_circuit.ManifoldOfLoop[i]]!.PutAt(_laneOfLoop[i], loopFlows[i]);
            }
        }

        for (int m = 0; m < _banks.Length; m++)
        {
            if (_openLoops[m] > 0)
            {
                PathBank bank = _banks[m]!;
                bank.AddUp();
                loops += bank.Flow;
                if (_trunkOfManifold[m] >= 0)
                {
                    _trunks!.PutAt(_trunkOfManifold[m], bank.Flow);
                }

                // All its open loops have the same; the line's middle is as good as any one of them.
                _root[m] = Math.Max((bank.Flow - bank.FlowAtNone) / bank.FlowPerRoot, 1e-30);
            }
        }

        BypassFlowM3s = BypassFlow(head, loops);
        FlowM3s = loops + BypassFlowM3s;
        if (_trunkOfMains >= 0)
        {
            _trunks!.PutAt(_trunkOfMains, FlowM3s);
        }

        Residual = ResidualAsItIs();
    }

    // A spring that opens within a few pascals in front of a pipe that takes all the head: there the last digit of the head
    // would decide the flow. What pump and mains pass at that head, less the loops' share, says it well.
    private double BypassFlow(double head, double loops)
    {
        double flow = _circuit.Bypass.Flow(head, out double slope);
        double lostSlope = 0;
        _circuit.Mains?.Head(loops + flow, 0, out lostSlope);
        _circuit.Pump.Head(loops + flow, out double headSlope);
        double digit = Math.BitIncrement(head) - head;
        return digit * slope * (lostSlope - headSlope) <= 1e-12 * _circuit.Pump.MostHeadM
            ? flow
            : MonotoneRoot.Find(
                new ThroughMains(_circuit, head, loops), 0, _circuit.Pump.LargestFlowM3s, flow, StepTolerance, out _);
    }

    private double ResidualAsItIs()
    {
        double residual = 0;
        for (int m = 0; m < _banks.Length; m++)
        {
            if (_openLoops[m] > 0)
            {
                double across = _root[m] * _root[m];
                residual = Worse(residual, 2 * _banks[m]!.FurthestFrom(_root[m]) / _root[m]);
                residual = Worse(residual, Math.Abs(across + Lost(_trunkOfManifold[m]) - HeadM) / HeadM);
            }
        }

        double pump = _circuit.Pump.Head(FlowM3s, out _);
        double mains = FlowM3s > 0 ? Lost(_trunkOfMains) : 0;
        return Worse(residual, Math.Abs(HeadM + mains - pump) / _circuit.Pump.MostHeadM);

        double Lost(int trunk) => trunk < 0 ? 0 : _trunks!.RootOf(trunk) * _trunks.RootOf(trunk);
    }

    private void AddUpWhatChanged()
    {
        for (int m = 0; m < _changed.Length; m++)
        {
            if (_changed[m])
            {
                _banks[m]!.AddUp();
                _changed[m] = false;
            }
        }
    }

    // Every path steps to its share of the head and is evaluated there; gives the largest residual.
    private double Step()
    {
        double residual = 0;
        double bypass = _circuit.Bypass.Flow(HeadM, out _);
        double flow = bypass;
        for (int m = 0; m < _banks.Length; m++)
        {
            if (_openLoops[m] == 0)
            {
                continue;
            }

            PathBank bank = _banks[m]!;
            double root = Math.Max(RootAcross(m, HeadM, out _), 0.1 * _root[m]);
            _root[m] = root;
            bank.Follow(root);
            Evaluations += bank.Count;
            flow += bank.Flow;
            residual = Worse(residual, 2 * bank.Worst / root);
            double lost = MoveTrunk(_trunkOfManifold[m], bank.Flow, ref residual);
            residual = Worse(residual, Math.Abs(root * root + lost - HeadM) / HeadM);
        }

        double mains = MoveTrunk(_trunkOfMains, flow, ref residual);
        double pump = _circuit.Pump.Head(flow, out _);
        FlowM3s = flow;
        BypassFlowM3s = bypass;
        return Worse(residual, Math.Abs(HeadM + mains - pump) / _circuit.Pump.MostHeadM);
    }

    private double MoveTrunk(int trunk, double flow, ref double residual)
    {
        if (trunk < 0 || flow <= 0)
        {
            return 0;
        }

        _trunks!.MoveTo(trunk, flow);
        Evaluations++;
        double root = _trunks.RootOf(trunk);
        residual = Worse(residual, Math.Abs(_trunks.FlowOf(trunk) - flow) / flow);
        return root * root;
    }

    // Unlike Math.Max this is meant to be seen to keep NaN.
    private static double Worse(double a, double b) => double.IsNaN(b) || b > a ? b : a;

    /// <summary>
    /// Root of the head that loops of a manifold get from the head before its branch, by the straight lines:
    /// s² + (w + c·(A + B·s − q))² = head.
    /// </summary>
    private double RootAcross(int manifold, double head, out double slope)
    {
        if (_trunkOfManifold[manifold] < 0)
        {
            double root = Math.Sqrt(head);
            slope = 0.5 / root;
            return root;
        }

        PathBank bank = _banks[manifold]!;
        Line branch = _lines[_trunkOfManifold[manifold]];
        double a = branch.Root + branch.RootPerFlow * (bank.FlowAtNone - branch.Flow);
        double b = branch.RootPerFlow * bank.FlowPerRoot;
        double under = (1 + b * b) * head - a * a;
        double s = under > 0 ? (Math.Sqrt(under) - a * b) / (1 + b * b) : 0;
        slope = s > 0 ? 0.5 / Math.Sqrt(under) : 0;
        return Math.Max(s, 0);
    }

    private readonly record struct Line(double Flow, double Root, double RootPerFlow);

    /// <summary>The same by the bypasses' flow, exactly, at a given head across the ends.</summary>
    private readonly struct ThroughMains(Circuit circuit, double head, double loops) : IRising
    {
        public double At(double x, out double slope)
        {
            double lostSlope = 0;
            double lost = circuit.Mains?.Head(loops + x, 0, out lostSlope) ?? 0;
            double pump = circuit.Pump.Head(loops + x, out double headSlope);
            slope = lostSlope - headSlope;
            return head + lost - pump;
        }
    }

    /// <summary>Head across the ends, plus what the mains then lose, less the pump's head; by the straight lines.</summary>
    private readonly struct Balance(CircuitNewton search) : IRising
    {
        public double At(double x, out double slope)
        {
            double flow = search._circuit.Bypass.Flow(x, out double flowSlope);
            for (int m = 0; m < search._banks.Length; m++)
            {
                if (search._openLoops[m] > 0)
                {
                    PathBank bank = search._banks[m]!;
                    double root = search.RootAcross(m, x, out double rootSlope);
                    double through = bank.FlowAtNone + bank.FlowPerRoot * root;
                    if (through > 0)
                    {
                        flow += through;
                        flowSlope += bank.FlowPerRoot * rootSlope;
                    }
                }
            }

            double lost = 0;
            double lostSlope = 0;
            if (search._trunkOfMains >= 0)
            {
                Line mains = search._lines[search._trunkOfMains];
                double root = Math.Max(mains.Root + mains.RootPerFlow * (flow - mains.Flow), 0);
                lost = root * root;
                lostSlope = 2 * root * mains.RootPerFlow;
            }

            double head = search._circuit.Pump.Head(flow, out double headSlope);
            slope = 1 + (lostSlope - headSlope) * flowSlope;
            return x + lost - head;
        }
    }
}
