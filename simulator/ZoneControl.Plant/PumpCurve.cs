namespace ZoneControl.Plant;

/// <summary>
/// Head of the circulator by flow at its fixed speed, falling from the shutoff head to 0 at the last point and 0 beyond.
/// Exactly three strictly falling points give the power law H = H0 − a·Qⁿ through them, as the EPANET engine does, so
/// that its networks can be compared, provided that n comes out between 1 and 20; every other curve is the smooth
/// monotone one through all points (two points: a straight line).
/// </summary>
public sealed class PumpCurve
{
    /// <summary>Highest head at no flow accepted, m.</summary>
    public const double MostHeadM = 100;

    private readonly double _fullFlow;
    private readonly double _exponent;
    private readonly MonotoneCurve? _smooth;

    /// <summary>A curve from points.</summary>
    /// <param name="points">Flow in m³/s rising from 0, head in m never rising and 0 at the last; at least two.</param>
    /// <exception cref="ArgumentException">The points are not such a curve; the message says where.</exception>
    public PumpCurve(IReadOnlyList<PumpPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var mistakes = new List<string>(Mistakes(points));
        if (mistakes.Count > 0)
        {
            throw new ArgumentException(string.Join(Environment.NewLine, mistakes), nameof(points));
        }

        ShutoffHeadM = points[0].HeadM;
        _fullFlow = points[^1].FlowM3s;
        if (!TryPowerLaw(points, out _exponent))
        {
            var flows = new double[points.Count];
            var heads = new double[points.Count];
            for (int i = 0; i < points.Count; i++)
            {
                (flows[i], heads[i]) = (points[i].FlowM3s, points[i].HeadM);
            }

            _smooth = new MonotoneCurve(flows, heads);
        }
    }

    /// <summary>Head at no flow, m.</summary>
    public double ShutoffHeadM { get; }

    /// <summary>Head, m.</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 or more.</param>
    /// <param name="slope">Derivative of head by flow, s/m²; never above 0.</param>
    public double Head(double flowM3s, out double slope)
    {
        if (flowM3s >= _fullFlow)
        {
            slope = 0;
            return 0;
        }

        if (_smooth is not null)
        {
            double head = _smooth.At(flowM3s, out slope);
            slope = Math.Min(slope, 0); // the last digit of a level piece may point up
            return head;
        }

        double part = flowM3s / _fullFlow;
        slope = -_exponent * ShutoffHeadM / _fullFlow * Math.Pow(part, _exponent - 1);
        return ShutoffHeadM * (1 - Math.Pow(part, _exponent));
    }

    /// <summary>Everything that keeps the points from being a curve, one sentence each.</summary>
    internal static IEnumerable<string> Mistakes(IReadOnlyList<PumpPoint> points)
    {
        if (points.Count < 2)
        {
            yield return $"Pump.Curve has {points.Count} points; expected at least 2.";
            yield break;
        }

        for (int i = 0; i < points.Count; i++)
        {
            (double flow, double head) = (points[i].FlowM3s, points[i].HeadM);
            if (!double.IsFinite(flow) || !double.IsFinite(head))
            {
                yield return $"Pump.Curve[{i}] is ({flow} m³/s, {head} m); expected finite numbers.";
                yield break;
            }

            if (i > 0 && flow <= points[i - 1].FlowM3s)
            {
                yield return $"Pump.Curve[{i}].FlowM3s is {flow} after {points[i - 1].FlowM3s}; expected flow to rise.";
            }

            if (i > 0 && head > points[i - 1].HeadM)
            {
                yield return $"Pump.Curve[{i}].HeadM is {head} after {points[i - 1].HeadM}; expected head never to rise.";
            }
        }

        if (points[0].FlowM3s != 0)
        {
            yield return $"Pump.Curve[0].FlowM3s is {points[0].FlowM3s}; expected 0, the shutoff point.";
        }

        if (!(points[0].HeadM is > 0 and <= MostHeadM))
        {
            yield return $"Pump.Curve[0].HeadM is {points[0].HeadM}; expected more than 0 and at most {MostHeadM} m.";
        }

        if (points[^1].HeadM != 0)
        {
            yield return $"Pump.Curve[{points.Count - 1}].HeadM is {points[^1].HeadM}; expected 0, the end of the curve.";
        }
    }

    // The last head is 0, so the law is H0·(1 − (Q/Qlast)ⁿ) and only n is left to find.
    private static bool TryPowerLaw(IReadOnlyList<PumpPoint> points, out double exponent)
    {
        exponent = 0;
        if (points.Count != 3 || points[1].HeadM >= points[0].HeadM || points[1].HeadM <= 0)
        {
            return false;
        }

        double lost = (points[0].HeadM - points[1].HeadM) / points[0].HeadM;
        exponent = Math.Log(lost) / Math.Log(points[1].FlowM3s / points[2].FlowM3s);
        return exponent is >= 1 and <= 20;
    }
}
