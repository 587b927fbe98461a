namespace ZoneControl.Plant.Heat;

/// <summary>
/// Invented winter weather from a seed: a yearly and a daily swing, noise that persists for days, and one cold snap. A shape for
/// comparing controls, not a climate: defaults are those of no place (common practice for a temperate one).
/// </summary>
public sealed record SyntheticWinter
{
    private const int HoursADay = 24;

    /// <summary>Day of the year of the first hour, 1 to 366; 274 is the 1st of October.</summary>
    public int FirstDay { get; init; } = 274;

    /// <summary>Mean over the year, °C; -20 to 30.</summary>
    public double MeanC { get; init; } = 9;

    /// <summary>Half of the yearly swing, K; 0 to 30. Coldest on the 20th of January.</summary>
    public double SeasonSwingK { get; init; } = 9;

    /// <summary>Half of the daily swing, K; 0 to 20. Coldest at five in the morning.</summary>
    public double DaySwingK { get; init; } = 3;

    /// <summary>Standard deviation of the noise, K; 0 to 15.</summary>
    public double NoiseK { get; init; } = 3;

    /// <summary>Time over which the noise forgets itself, days; 0.05 to 60.</summary>
    public double NoiseDays { get; init; } = 3;

    /// <summary>Depth of the cold snap, K; 0 to 40.</summary>
    public double SnapK { get; init; } = 8;

    /// <summary>Length of the cold snap, days; 0 to 60. It comes somewhere in the middle half of the time.</summary>
    public double SnapDays { get; init; } = 5;

    /// <summary>The weather of a seed; the same on every machine.</summary>
    /// <param name="seed">Any number.</param>
    /// <param name="days">Length, days; 1 to 3,660.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public Weather Make(long seed, int days)
    {
        Check();
        if (days is < 1 or > 3660)
        {
            throw new ArgumentOutOfRangeException(nameof(days), days, "expected 1 to 3,660 days");
        }

        var chance = new Chance(seed);
        double[] celsius = new double[days * HoursADay];
        double keeps = Math.Exp(-1 / (NoiseDays * HoursADay));
        double fresh = Math.Sqrt(1 - keeps * keeps);
        double noise = chance.Normal();
        double snapMiddle = (0.25 + 0.5 * chance.Share()) * celsius.Length;
        for (int hour = 0; hour < celsius.Length; hour++)
        {
            double day = FirstDay + hour / (double)HoursADay;
            double season = -Math.Cos(2 * Math.PI * (day - 20) / 365.25);
            double daily = -Math.Cos(2 * Math.PI * (hour % HoursADay - 5) / HoursADay);
            double fromSnap = Math.Abs(hour - snapMiddle) / (SnapDays * HoursADay / 2 + 1e-9);
            double snap = fromSnap < 1 ? 0.5 + 0.5 * Math.Cos(Math.PI * fromSnap) : 0;
            celsius[hour] = Math.Clamp(
                MeanC + SeasonSwingK * season + DaySwingK * daily + NoiseK * noise - SnapK * snap, -60, 50);
            noise = keeps * noise + fresh * chance.Normal();
        }

        return new Weather($"invented winter, seed {seed}", celsius);
    }

    private void Check()
    {
        var found = new List<string>();
        RangeCheck.Between(found, "FirstDay", FirstDay, 1, 366, "");
        RangeCheck.Between(found, "MeanC", MeanC, -20, 30, "°C");
        RangeCheck.Between(found, "SeasonSwingK", SeasonSwingK, 0, 30, "K");
        RangeCheck.Between(found, "DaySwingK", DaySwingK, 0, 20, "K");
        RangeCheck.Between(found, "NoiseK", NoiseK, 0, 15, "K");
        RangeCheck.Between(found, "NoiseDays", NoiseDays, 0.05, 60, "d");
        RangeCheck.Between(found, "SnapK", SnapK, 0, 40, "K");
        RangeCheck.Between(found, "SnapDays", SnapDays, 0, 60, "d");
        if (found.Count > 0)
        {
            throw new ArgumentOutOfRangeException(nameof(SyntheticWinter), string.Join(Environment.NewLine, found));
        }
    }

    /// <summary>Chance that is the same everywhere: SplitMix64 (Steele, Lea and Flood, 2014) and the Box-Muller transform.</summary>
    private sealed class Chance(long seed)
    {
        private ulong _state = unchecked((ulong)seed);

        public double Share()
        {
            unchecked
            {
                ulong z = _state += 0x9E3779B97F4A7C15;
                z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9;
                z = (z ^ z >> 27) * 0x94D049BB133111EB;
                return ((z ^ z >> 31) >> 11) * (1.0 / (1UL << 53));
            }
        }

        public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Share())) * Math.Cos(2 * Math.PI * Share());
    }
}
