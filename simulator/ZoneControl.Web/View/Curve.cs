namespace ZoneControl.Web.View;

/// <summary>Curves through measured points, joined by straight lines.</summary>
public static class Curve
{
    private const int BlockPoints = 256;

    /// <summary>
    /// Leaves out points that lie within <paramref name="tolerance"/> (in the values' unit) of the line through those kept.
    /// Ends and both sides of a step are kept. Method: Ramer 1972 / Douglas and Peucker 1973 (from memory), measured along
    /// the value axis, with a stack in place of recursion.
    /// </summary>
    /// <remarks>
    /// The method takes time with the square of the points when it splits off one at a time, as on a saw's teeth. So a long
    /// curve is thinned block by block, and the ends of blocks are kept as well.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A negative tolerance.</exception>
    public static IReadOnlyList<TimedValue> Thin(IReadOnlyList<TimedValue> points, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentOutOfRangeException.ThrowIfNegative(tolerance);
        if (points.Count < 3)
            return points;
        var keep = new bool[points.Count];
        keep[0] = keep[^1] = true;
        var open = new Stack<(int From, int To)>();
        for (int from = 0; from < points.Count - 1; from += BlockPoints)
        {
            int to = Math.Min(from + BlockPoints, points.Count - 1);
            keep[to] = true;
            open.Push((from, to));
        }

        while (open.TryPop(out (int From, int To) part))
        {
            int worst = Furthest(points, part.From, part.To, out double off);
            if (worst < 0 || off <= tolerance)
                continue;
            keep[worst] = true;
            open.Push((part.From, worst));
            open.Push((worst, part.To));
        }

        return [.. points.Where((_, i) => keep[i])];
    }

    /// <summary>As <see cref="Thin"/>, with the tolerance as a fraction of the largest value less the smallest.</summary>
    public static IReadOnlyList<TimedValue> ThinToRange(IReadOnlyList<TimedValue> points, double fraction)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0)
            return points;
        return Thin(points, fraction * (points.Max(p => p.Value) - points.Min(p => p.Value)));
    }

    /// <summary>The value at a moment on the line through the points; the end values outside them.</summary>
    public static double At(IReadOnlyList<TimedValue> points, long ms)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0)
            return 0;
        int low = 0;
        int high = points.Count - 1;
        if (ms <= points[0].Ms)
            return points[0].Value;
        if (ms >= points[high].Ms)
            return points[high].Value;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (points[middle].Ms <= ms)
                low = middle;
            else
                high = middle;
        }

        return Between(points[low], points[high], ms);
    }

    private static int Furthest(IReadOnlyList<TimedValue> points, int from, int to, out double off)
    {
        int worst = -1;
        off = -1;
        for (int i = from + 1; i < to; i++)
        {
            double distance = Math.Abs(points[i].Value - Between(points[from], points[to], points[i].Ms));
            if (distance > off)
            {
                off = distance;
                worst = i;
            }
        }

        return worst;
    }

    private static double Between(TimedValue a, TimedValue b, long ms)
    {
        if (b.Ms == a.Ms)
            return ms < b.Ms ? a.Value : b.Value;
        return a.Value + (b.Value - a.Value) * (ms - a.Ms) / (b.Ms - a.Ms);
    }
}
