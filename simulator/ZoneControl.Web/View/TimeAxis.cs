namespace ZoneControl.Web.View;

/// <summary>Where the ticks of a time axis stand.</summary>
public static class TimeAxis
{
    private static readonly long[] _stepsS =
        [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400, 172_800, 604_800];

    /// <summary>
    /// Ticks at round times of the clock, at most <paramref name="most"/> of them, ms from the start of the run.
    /// </summary>
    public static IReadOnlyList<long> Ticks(long endMs, Clock clock, int most) => Ticks(0, endMs, clock, most);

    /// <summary>As above, for a stretch that begins later than the run.</summary>
    public static IReadOnlyList<long> Ticks(long startMs, long endMs, Clock clock, int most)
    {
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        long stepMs = Step(endMs - startMs, most) * 1000;
        long first = startMs + (stepMs - (clock.OffsetMs + startMs) % stepMs) % stepMs;
        var ticks = new List<long>();
        for (long ms = first; ms <= endMs && ticks.Count < most; ms += stepMs)
            ticks.Add(ms);
        return ticks;
    }

    private static long Step(long endMs, int most)
    {
        foreach (long step in _stepsS)
        {
            if (endMs / (step * 1000) + 1 <= most)
                return step;
        }

        return Math.Max(_stepsS[^1], endMs / 1000 / most + 1);
    }
}
