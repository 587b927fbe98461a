using System.Globalization;

namespace ZoneControl.Bench.Scripts;

/// <summary>Times as people and files write them.</summary>
public static class Durations
{
    private static readonly (long Ms, string Unit)[] _parts = [(86_400_000, "d"), (3_600_000, "h"), (60_000, "min")];

    /// <summary>A time in words: "1 h 20 min", "2 min 5 s", "0.2 s", "0 s". House and script files read the same words.</summary>
    /// <param name="ms">ms; 0 or more.</param>
    public static string InWords(long ms)
    {
        var words = new List<string>();
        long rest = ms;
        foreach ((long part, string unit) in _parts)
        {
            if (rest >= part)
                words.Add($"{rest / part} {unit}");
            rest %= part;
        }

        if (rest > 0 || words.Count == 0)
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{rest / 1000m:0.###} s"));
        return string.Join(' ', words);
    }

    /// <summary>A time in words.</summary>
    public static string InWords(TimeSpan time) => InWords((long)Math.Round(time.TotalMilliseconds));
}
