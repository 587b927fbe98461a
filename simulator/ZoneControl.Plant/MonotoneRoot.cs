namespace ZoneControl.Plant;

/// <summary>A function that never falls.</summary>
internal interface IRising
{
    /// <summary>Its value at x and its slope there; the slope may be 0 or infinite, the value may not be NaN.</summary>
    double At(double x, out double slope);
}

/// <summary>
/// Finds where a rising function crosses zero: Newton's method held inside a shrinking bracket, falling back to halving it
/// whenever a step would leave the bracket or is not at least half the one before. So it always ends.
/// </summary>
internal static class MonotoneRoot
{
    // Halving alone narrows any bracket of doubles that this model meets to its last digits in fewer.
    private const int MostSteps = 200;

    /// <summary>The place of the crossing.</summary>
    /// <param name="function">
    /// The function; at or below 0 at <paramref name="low"/>, at or above it at <paramref name="high"/>.
    /// </param>
    /// <param name="low">Start of the bracket.</param>
    /// <param name="high">End of the bracket.</param>
    /// <param name="start">First guess; anything.</param>
    /// <param name="tolerance">
    /// Relative size of the last step. A Newton step of that size leaves an error of about its square, except beside a kink.
    /// </param>
    /// <param name="steps">How often the function was evaluated.</param>
    public static double Find<T>(T function, double low, double high, double start, double tolerance, out int steps)
        where T : struct, IRising
    {
        double x = start >= high ? high : start > low ? start : low + (high - low) / 2;
        double lastStep = high - low;
        bool highTried = false;
        for (steps = 1; steps <= MostSteps; steps++)
        {
            double y = function.At(x, out double slope);
            if (y == 0)
            {
                return x;
            }

            if (y > 0)
            {
                high = x;
                highTried = true;
            }
            else
            {
                low = x;
            }

            bool usable = slope > 0 && double.IsFinite(slope);
            double next = x - y / slope;
            double step = Math.Abs(next - x);
            // A tiny step is taken at once even when it would touch the bracket's end: only rounding puts it there.
            if (usable && step <= tolerance * Math.Abs(x))
            {
                return Math.Clamp(next, low, high);
            }

            if (usable && next > high && !highTried)
            {
                // The bracket's end is often close to the root, and convex functions come down from it without fail.
                next = high;
                highTried = true;
            }
            else if (!(usable && next > low && next <= high && step <= 0.5 * lastStep))
            {
                next = low + (high - low) / 2;
                if (next <= low || next >= high)
                {
                    return x;
                }
            }

            lastStep = Math.Abs(next - x);
            x = next;
        }

        return x;
    }
}
