namespace ZoneControl.Plant;

/// <summary>
/// A smooth curve through points that never turns where the points do not: piecewise cubic with the slopes of
/// F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise cubic interpolants", SIAM J. Sci. Stat.
/// Comput. 5 (1984): the weighted harmonic mean of the neighbouring chords, 0 where they differ in sign. Two points make a
/// straight line.
/// </summary>
internal sealed class MonotoneCurve
{
    private readonly double[] _x;
    private readonly HermiteCubic[] _pieces;

    /// <summary>A curve through points with rising x; at least two.</summary>
    public MonotoneCurve(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        _x = x.ToArray();
        int last = x.Length - 1;
        var chords = new double[last];
        for (int i = 0; i < last; i++)
        {
            chords[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }

        var slopes = new double[x.Length];
        slopes[0] = EndSlope(x[1] - x[0], last > 1 ? x[2] - x[1] : x[1] - x[0], chords[0], last > 1 ? chords[1] : chords[0]);
        slopes[last] = last > 1
            ? EndSlope(x[last] - x[last - 1], x[last - 1] - x[last - 2], chords[last - 1], chords[last - 2])
            : chords[0];
        for (int i = 1; i < last; i++)
        {
            slopes[i] = InnerSlope(x[i] - x[i - 1], x[i + 1] - x[i], chords[i - 1], chords[i]);
        }

        _pieces = new HermiteCubic[last];
        for (int i = 0; i < last; i++)
        {
            _pieces[i] = new HermiteCubic(x[i], y[i], slopes[i], x[i + 1], y[i + 1], slopes[i + 1]);
        }
    }

    /// <summary>The curve and its slope; x within the points.</summary>
    public double At(double x, out double slope)
    {
        int piece = 0;
        while (piece < _pieces.Length - 1 && x > _x[piece + 1])
        {
            piece++;
        }

        return _pieces[piece].At(x, out slope);
    }

    private static double InnerSlope(double widthBefore, double widthAfter, double before, double after)
    {
        if (before * after <= 0)
        {
            return 0;
        }

        double weightBefore = widthBefore + 2 * widthAfter;
        double weightAfter = 2 * widthBefore + widthAfter;
        return (weightBefore + weightAfter) / (weightBefore / after + weightAfter / before);
    }

    // The parabola through the three outer points, held to the outer chord's sign and to at most three times its size.
    private static double EndSlope(double outerWidth, double innerWidth, double outer, double inner)
    {
        double slope = ((2 * outerWidth + innerWidth) * outer - outerWidth * inner) / (outerWidth + innerWidth);
        if (slope * outer <= 0)
        {
            return 0;
        }

        return Math.Abs(slope) > 3 * Math.Abs(outer) ? 3 * outer : slope;
    }
}
