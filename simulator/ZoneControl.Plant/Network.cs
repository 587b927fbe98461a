namespace ZoneControl.Plant;

/// <summary>
/// The water circuit: pump, mains, and from their ends side by side the spring bypass and the manifolds, each behind its
/// branch, each with its loops side by side. Closed and full, so static pressure and heights cancel; only what friction
/// takes counts. Water does not flow without the pump (thermosiphon is left out).
/// </summary>
/// <remarks>
/// Solved for the head across the ends of the mains. What the manifolds and the bypass pass rises with that head, and so
/// does what the mains lose, while the pump's head falls as flow rises: head plus mains loss less pump head is a strictly
/// rising function of one unknown between 0 and the shutoff head, with exactly one root, which a bracketed Newton search
/// always finds. Branches are solved inside it in the same way. Each search begins from the flows of the last one.
/// </remarks>
public sealed class Network
{
    private const double HeadTolerance = 1e-12;

    private readonly FlowPath _mains;
    private readonly PumpCurve _pump;
    private readonly SpringBypass? _bypass;
    private readonly ManifoldFlow[] _manifolds;
    private readonly ManifoldFlow.Loop[] _loops;
    private readonly int[] _zoneOfLoop;
    private double _headAcross;

    /// <summary>Builds the circuit with every valve shut and the pump off.</summary>
    /// <exception cref="ArgumentException">A value of the description cannot be used; the message names it.</exception>
    public Network(PlantDescription description)
    {
        PlantCheck.Demand(description);
        HydraulicRules rules = description.Rules;
        double viscosity = rules.KinematicViscosity ?? Water.KinematicViscosity(description.WaterC);
        _pump = new PumpCurve(description.Pump.Curve);
        _mains = new FlowPath(description.Mains, rules, viscosity);
        _bypass = description.Bypass is null
            ? null
            : new SpringBypass(description.Bypass, Water.Density(description.WaterC), rules.Gravity);
        _manifolds = [.. description.Manifolds.Select(
            m => new ManifoldFlow(m.Branch is null ? null : new FlowPath(m.Branch, rules, viscosity)))];
        _loops = [.. description.Loops.Select(
            l => new ManifoldFlow.Loop(new FlowPath(l.Tube, rules, viscosity), l.ValveKvs, rules.Gravity))];
        _zoneOfLoop = [.. description.Loops.Select(l => l.Zone)];
        for (int i = 0; i < _loops.Length; i++)
        {
            _manifolds[description.Loops[i].Manifold].Add(_loops[i]);
        }

        _headAcross = _pump.ShutoffHeadM / 2;
    }

    /// <summary>Flow through the pump, m³/s.</summary>
    public double PumpFlowM3s { get; private set; }

    /// <summary>Head of the pump, m; the shutoff head when nothing can flow.</summary>
    public double PumpHeadM { get; private set; }

    /// <summary>Head across the ends of the mains, where bypass and branches begin, m.</summary>
    public double HeadAcrossMainsEndsM { get; private set; }

    /// <summary>Flow through the bypass, m³/s; 0 without one.</summary>
    public double BypassFlowM3s { get; private set; }

    /// <summary>Flow of a loop, m³/s.</summary>
    public double LoopFlowM3s(int loop) => _loops[loop].FlowM3s;

    /// <summary>Flow through a manifold's branch, m³/s.</summary>
    public double ManifoldFlowM3s(int manifold) => _manifolds[manifold].FlowM3s;

    /// <summary>How often a loop's head loss has been evaluated so far, all loops together: the solver's effort.</summary>
    public long LoopEvaluations
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

    /// <summary>The pump is off: nothing flows.</summary>
    public void Stop()
    {
        (PumpFlowM3s, PumpHeadM, HeadAcrossMainsEndsM, BypassFlowM3s) = (0, 0, 0, 0);
        foreach (ManifoldFlow manifold in _manifolds)
        {
            manifold.Stop();
        }
    }

    /// <summary>Finds all flows with the pump on.</summary>
    /// <param name="travel">Stem travel of each zone's valves, 0 shut to 1 open; loops without a zone are open.</param>
    public void Solve(ReadOnlySpan<double> travel)
    {
        bool open = _bypass is not null;
        for (int i = 0; i < _loops.Length; i++)
        {
            _loops[i].SetTravel(_zoneOfLoop[i] < 0 ? 1 : travel[_zoneOfLoop[i]]);
        }

        foreach (ManifoldFlow manifold in _manifolds)
        {
            manifold.ValvesMoved();
            open |= manifold.IsOpen;
        }

        double head = open
            ? MonotoneRoot.Find(new AcrossMainsEnds(this), 0, _pump.ShutoffHeadM, _headAcross, HeadTolerance, out _)
            : _pump.ShutoffHeadM;
        _headAcross = head;
        HeadAcrossMainsEndsM = head;
        PumpFlowM3s = FlowAcross(head, out _);
        PumpHeadM = head + _mains.Head(PumpFlowM3s, 0, out _);
    }

    private double FlowAcross(double head, out double slope)
    {
        double sum = BypassFlowM3s = _bypass?.Flow(head, out slope) ?? NoFlow(out slope);
        foreach (ManifoldFlow manifold in _manifolds)
        {
            sum += manifold.Flow(head, out double manifoldSlope);
            slope += manifoldSlope;
        }

        return sum;
    }

    private static double NoFlow(out double slope) => slope = 0;

    /// <summary>Head across the ends, plus what the mains then lose, less the pump's head.</summary>
    private readonly struct AcrossMainsEnds(Network network) : IRising
    {
        public double At(double x, out double slope)
        {
            double flow = network.FlowAcross(x, out double flowSlope);
            double lost = network._mains.Head(flow, 0, out double lostSlope);
            double head = network._pump.Head(flow, out double headSlope);
            slope = 1 + (lostSlope - headSlope) * flowSlope;
            return x + lost - head;
        }
    }
}
