namespace ZoneControl.Plant.Heat;

/// <summary>
/// One stretch of an <see cref="RcNetwork"/> during which nothing that drives it changes: temperatures in closed form from its
/// start, T(t) = end + Σ part·e^−rate·t. Nothing is allocated after it is built.
/// </summary>
/// <param name="most">Most bodies of any network that it will follow.</param>
public sealed class RcRun(int most)
{
    private readonly double[] _settled = new double[most]; // °C by body: where it would end
    private readonly double[] _part = new double[most * most]; // K by body and mode
    private readonly double[] _modeSettled = new double[most];
    private readonly double[] _modePart = new double[most];
    private readonly double[] _fading = new double[most];
    private double[] _rate = [];
    private int _n;
    private double _fadingAtS = double.NaN;

    /// <summary>Start of the stretch, ms.</summary>
    public long StartMs { get; private set; }

    /// <summary>From this time on these temperatures move under this heat.</summary>
    /// <param name="ms">Time, ms.</param>
    /// <param name="network">The network.</param>
    /// <param name="celsius">Temperature of each body, °C.</param>
    /// <param name="heatW">
    /// Heat into each body, W: what is given to it, and its outward conductances times the fixed temperatures that they lead to.
    /// </param>
    public void Begin(long ms, RcNetwork network, ReadOnlySpan<double> celsius, ReadOnlySpan<double> heatW)
    {
        ArgumentNullException.ThrowIfNull(network);
        int n = _n = network.Count;
        StartMs = ms;
        _rate = network.PerSecond;
        _fadingAtS = double.NaN;
        double[] to = network.ToModes;
        double[] from = network.FromModes;
        for (int mode = 0; mode < n; mode++)
        {
            double now = 0;
            double heat = 0;
            for (int i = 0; i < n; i++)
            {
                now += to[mode * n + i] * celsius[i];
                heat += from[i * n + mode] * heatW[i];
            }

            _modeSettled[mode] = heat / _rate[mode];
            _modePart[mode] = now - _modeSettled[mode];
        }

        for (int i = 0; i < n; i++)
        {
            double settled = 0;
            for (int mode = 0; mode < n; mode++)
            {
                double weight = from[i * n + mode];
                settled += weight * _modeSettled[mode];
                _part[i * n + mode] = weight * _modePart[mode];
            }

            _settled[i] = settled;
        }
    }

    /// <summary>Temperature of a body, °C, at a time of the stretch, ms.</summary>
    public double CelsiusAt(int body, long ms)
    {
        Fade((ms - StartMs) / 1000.0);
        return Sum(body);
    }

    /// <summary>Temperatures of all bodies, °C.</summary>
    public void CelsiusAt(long ms, Span<double> celsius)
    {
        Fade((ms - StartMs) / 1000.0);
        for (int i = 0; i < _n; i++)
        {
            celsius[i] = Sum(i);
        }
    }

    /// <summary>Rate of change of a body's temperature, K/s.</summary>
    public double RateKPerS(int body, long ms)
    {
        Fade((ms - StartMs) / 1000.0);
        double sum = 0;
        for (int mode = 0; mode < _n; mode++)
        {
            sum -= _part[body * _n + mode] * _rate[mode] * _fading[mode];
        }

        return sum;
    }

    /// <summary>
    /// Σ weight·∫T dt over the stretch so far, in K·s times the weight's unit; with conductances as weights it is heat lost.
    /// </summary>
    /// <param name="ms">End, ms.</param>
    /// <param name="modeWeights">Weights by mode, from <see cref="ModeWeights"/>.</param>
    public double Integral(long ms, ReadOnlySpan<double> modeWeights)
    {
        double seconds = (ms - StartMs) / 1000.0;
        Fade(seconds);
        double sum = 0;
        for (int mode = 0; mode < _n; mode++)
        {
            double fade = _rate[mode] * seconds;
            double faded = fade < 1e-5 ? seconds * (1 - fade / 2 + fade * fade / 6) : (1 - _fading[mode]) / _rate[mode];
            sum += modeWeights[mode] * (_modeSettled[mode] * seconds + _modePart[mode] * faded);
        }

        return sum;
    }

    /// <summary>Weights by mode that stand for weights by body, in the unit of those.</summary>
    public static double[] ModeWeights(RcNetwork network, IReadOnlyList<double> bodyWeights)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(bodyWeights);
        int n = network.Count;
        double[] from = network.FromModes;
        double[] weights = new double[n];
        for (int i = 0; i < n; i++)
        {
            double weight = bodyWeights[i];
            for (int mode = 0; weight != 0 && mode < n; mode++)
            {
                weights[mode] += weight * from[i * n + mode];
            }
        }

        return weights;
    }

    /// <summary>
    /// The first whole second after a time, and before another, at which a body has reached a level; no crossing between two
    /// looks is missed but one that is gone again within the same second.
    /// </summary>
    /// <param name="body">The body.</param>
    /// <param name="levelC">The level, °C.</param>
    /// <param name="rising">Whether it is reached from below: at or above the level; otherwise at or below.</param>
    /// <param name="afterMs">Looks come after this time, ms.</param>
    /// <param name="beforeMs">Looks come before this time, ms.</param>
    /// <param name="added">What is sensed on top of the body's temperature.</param>
    /// <returns>ms; <see cref="PlantModel.Never"/> when it is not reached in that time.</returns>
    public long FirstLook(int body, double levelC, bool rising, long afterMs, long beforeMs, Anticipation added = default)
    {
        long at = (afterMs / 1000 + 1) * 1000;
        if (at >= beforeMs)
        {
            return PlantModel.Never;
        }

        long last = (beforeMs - 1) / 1000 * 1000;
        if (Reached(body, levelC, rising, at, added, out double gap))
        {
            return at;
        }

        // By how much it can come nearer until a time is known from the parts alone that move towards the level; an interval over
        // which that is less than what is missing holds no crossing.
        long width = last - at;
        while (at < last)
        {
            width = Math.Min(Math.Max(width, 1000), last - at);
            if (gap > Approach(body, rising, at, at + width, added))
            {
                at += width;
                width *= 2;
                Reached(body, levelC, rising, at, added, out gap);
            }
            else if (width > 1000)
            {
                width = width / 2000 * 1000;
            }
            else
            {
                at += 1000;
                if (Reached(body, levelC, rising, at, added, out gap))
                {
                    return at;
                }
            }
        }

        return PlantModel.Never;
    }

    /// <summary>Whether a body has reached a level at a time: what <see cref="FirstLook"/> looks at.</summary>
    public bool HasReached(int body, double levelC, bool rising, long ms, Anticipation added = default) =>
        Reached(body, levelC, rising, ms, added, out _);

    private bool Reached(int body, double levelC, bool rising, long ms, Anticipation added, out double gap)
    {
        double sensed = CelsiusAt(body, ms) + added.KelvinAt(ms);
        gap = rising ? levelC - sensed : sensed - levelC;
        return gap <= 0;
    }

    private double Approach(int body, bool rising, long fromMs, long toMs, Anticipation added)
    {
        double from = (fromMs - StartMs) / 1000.0;
        double length = (toMs - fromMs) / 1000.0;
        Fade(from);
        double most = 0;
        for (int mode = 0; mode < _n; mode++)
        {
            double part = _part[body * _n + mode] * _fading[mode];
            if (part < 0 == rising)
            {
                most += Math.Abs(part) * (1 - Math.Exp(-_rate[mode] * length));
            }
        }

        return (most + added.Approach(rising, fromMs, toMs)) * (1 + 1e-12) + 1e-13;
    }

    private double Sum(int body)
    {
        double sum = _settled[body];
        for (int mode = 0; mode < _n; mode++)
        {
            sum += _part[body * _n + mode] * _fading[mode];
        }

        return sum;
    }

    private void Fade(double seconds)
    {
        if (seconds == _fadingAtS)
        {
            return;
        }

        _fadingAtS = seconds;
        for (int mode = 0; mode < _n; mode++)
        {
            _fading[mode] = Math.Exp(-_rate[mode] * seconds);
        }
    }
}
