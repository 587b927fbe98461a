namespace ZoneControl.Plant.Heat;

/// <summary>
/// Warmth that a thermostat feels beside the room's, K: from what it was at a start it goes to an end with one time constant.
/// </summary>
/// <param name="StartMs">Start, ms.</param>
/// <param name="FromK">Warmth at the start, K.</param>
/// <param name="ToK">Warmth in the end, K.</param>
/// <param name="PerSecond">Inverse of the time constant, 1/s; 0 for none at all.</param>
public readonly record struct Anticipation(long StartMs, double FromK, double ToK, double PerSecond)
{
    /// <summary>Warmth at a time, ms.</summary>
    public double KelvinAt(long ms) =>
        PerSecond == 0 ? 0 : ToK + (FromK - ToK) * Math.Exp(-PerSecond * (ms - StartMs) / 1000.0);

    /// <summary>From a time on it goes to another end.</summary>
    public Anticipation Turn(long ms, double toK) => this with { StartMs = ms, FromK = KelvinAt(ms), ToK = toK };

    /// <summary>By how much it brings what is sensed nearer to a level between two times, K.</summary>
    internal double Approach(bool rising, long fromMs, long toMs)
    {
        double change = KelvinAt(toMs) - KelvinAt(fromMs);
        return Math.Max(0, rising ? change : -change);
    }
}
