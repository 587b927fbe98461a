namespace ZoneControl.Plant;

/// <summary>
/// One manifold: its branch in series with its loops side by side. Given the head across branch and manifold it finds all
/// flows; they are kept as the next search's first guess.
/// </summary>
internal sealed class ManifoldFlow
{
    private const double LoopTolerance = 1e-9;
    private const double ManifoldTolerance = 1e-12;

    private readonly FlowPath? _branch;
    private readonly List<Loop> _loops = [];
    private double _lastShare = 0.9;

    public ManifoldFlow(FlowPath? branch) => _branch = branch;

    /// <summary>At least one loop lets water through.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>Flow through the branch, m³/s.</summary>
    public double FlowM3s { get; private set; }

    public void Add(Loop loop) => _loops.Add(loop);

    /// <summary>To be called after valves were set and before <see cref="Flow"/>.</summary>
    public void ValvesMoved()
    {
        IsOpen = false;
        foreach (Loop loop in _loops)
        {
            IsOpen |= loop.IsOpen;
        }

        if (!IsOpen)
        {
            Stop();
        }
    }

    /// <summary>No head, no flow.</summary>
    public void Stop()
    {
        FlowM3s = 0;
        foreach (Loop loop in _loops)
        {
            loop.Stop();
        }
    }

    /// <summary>
    /// Flow through the branch at a head across branch and manifold (m, more than 0), m³/s, and its slope by head.
    /// </summary>
    public double Flow(double head, out double slope)
    {
        slope = 0;
        if (!IsOpen)
        {
            return 0;
        }

        if (_branch is null)
        {
            return FlowM3s = LoopFlow(head, out slope);
        }

        double across = MonotoneRoot.Find(new AcrossLoops(this, head), 0, head, _lastShare * head, ManifoldTolerance, out _);
        _lastShare = across / head;
        FlowM3s = LoopFlow(across, out double loopSlope);
        _branch.Head(FlowM3s, 0, out double branchSlope);
        slope = 1 / (1 / loopSlope + branchSlope);
        return FlowM3s;
    }

    private double LoopFlow(double head, out double slope)
    {
        double sum = 0;
        slope = 0;
        foreach (Loop loop in _loops)
        {
            if (loop.IsOpen)
            {
                sum += loop.Flow(head, out double loopSlope);
                slope += loopSlope;
            }
        }

        return sum;
    }

    /// <summary>Head across the loops, plus what the branch then loses, less the head there is.</summary>
    private readonly struct AcrossLoops(ManifoldFlow manifold, double head) : IRising
    {
        public double At(double x, out double slope)
        {
            double flow = manifold.LoopFlow(x, out double flowSlope);
            double lost = manifold._branch!.Head(flow, 0, out double lostSlope);
            slope = 1 + lostSlope * flowSlope;
            return x + lost - head;
        }
    }

    /// <summary>A loop with its valve.</summary>
    internal sealed class Loop(FlowPath path)
    {
        private double _valve;
        private double _lastHead;
        private double _lastSlope;

        public bool IsOpen { get; private set; }

        /// <summary>m³/s.</summary>
        public double FlowM3s { get; private set; }

        /// <summary>Evaluations of its head loss since it was made.</summary>
        public long Steps { get; private set; }

        /// <summary>Opens or shuts its valve, of that resistance, m per (m³/s)².</summary>
        public void Set(bool open, double valve)
        {
            (IsOpen, _valve) = (open, valve);
            if (!open)
            {
                Stop();
            }
        }

        public void Stop() => (FlowM3s, _lastHead, _lastSlope) = (0, 0, 0);

        /// <summary>Flow at a head across loop and valve (m, more than 0), m³/s, and its slope by head.</summary>
        public double Flow(double head, out double slope)
        {
            double guess = FlowM3s > 0
                ? FlowM3s + _lastSlope * (head - _lastHead)
                : path.FlowGuess(head, _valve);
            double flow = MonotoneRoot.Find(
                new HeadLeft(path, _valve, head), 0, path.FlowAbove(head, _valve), guess, LoopTolerance, out int steps);
            Steps += steps;
            path.Head(flow, _valve, out double headSlope);
            slope = 1 / headSlope;
            (FlowM3s, _lastHead, _lastSlope) = (flow, head, slope);
            return flow;
        }
    }

    /// <summary>Head lost along a loop less the head there is.</summary>
    private readonly struct HeadLeft(FlowPath path, double valve, double head) : IRising
    {
        public double At(double x, out double slope) => path.Head(x, valve, out slope) - head;
    }
}
