namespace ZoneControl.Plant;

/// <summary>
/// Follows the first warm water as a plug: while heat is asked for, the pump's flow carries it along the mains, then each
/// branch's own flow along that branch. Volumes are of supply and return together, as described, so this is when the
/// mains and a branch have been changed once, later than the first warmth at the manifold. A pause keeps the place.
/// </summary>
internal sealed class WarmFront
{
    private readonly double _mainsM3;
    private readonly double[] _branchM3;
    private readonly double[] _branchMoved;
    private readonly double[] _branchFlow;
    private double _mainsMoved;

    private long _startMs;
    private double _mainsFlow; // m³/s; 0 while nothing counts
    private long? _arrivalMs;

    public WarmFront(PlantDescription description)
    {
        _mainsM3 = description.Mains.VolumeM3;
        _branchM3 = [.. description.Manifolds.Select(m => m.Branch?.VolumeM3 ?? 0)];
        _branchMoved = new double[_branchM3.Length];
        _branchFlow = new double[_branchM3.Length];
    }

    /// <summary>When it reached the first manifold, ms; null when it has not by that time.</summary>
    public long? ReachedMs(long nowMs) => _arrivalMs <= nowMs ? _arrivalMs : null;

    /// <summary>From this time on these flows hold; they count only while heat is asked for.</summary>
    public void Begin(long ms, bool heat, Network network)
    {
        if (_arrivalMs <= ms)
        {
            return;
        }

        Keep((ms - _startMs) / 1000.0);
        _startMs = ms;
        _mainsFlow = heat ? network.PumpFlowM3s : 0;
        _arrivalMs = null;
        if (_mainsFlow > 0)
        {
            double first = double.PositiveInfinity;
            for (int i = 0; i < _branchM3.Length; i++)
            {
                _branchFlow[i] = network.ManifoldFlowM3s(i);
                if (_branchFlow[i] > 0)
                {
                    first = Math.Min(first, MainsSeconds + Math.Max(0, _branchM3[i] - _branchMoved[i]) / _branchFlow[i]);
                }
            }

            // Further off than a century is never, and would not fit.
            _arrivalMs = first < 3e9 ? ms + (long)Math.Ceiling(first * 1000) : null;
        }
    }

    private double MainsSeconds => Math.Max(0, _mainsM3 - _mainsMoved) / _mainsFlow;

    private void Keep(double seconds)
    {
        if (_mainsFlow <= 0)
        {
            return;
        }

        double inBranches = Math.Max(0, seconds - MainsSeconds);
        _mainsMoved += _mainsFlow * seconds;
        for (int i = 0; i < _branchMoved.Length; i++)
        {
            _branchMoved[i] += _branchFlow[i] * inBranches;
        }
    }
}
