namespace ZoneControl.Plant;

/// <summary>
/// Part of its Kvs that a valve passes by stem travel, its characteristic: a table of points from shut (0, 0) to open (1, 1),
/// rising, joined by a smooth monotone curve.
/// </summary>
public static class ValveCurve
{
    /// <summary>Part of its Kvs below which a valve counts as shut; real ones leak more.</summary>
    public const double ShutBelow = 1e-9;

    /// <summary>
    /// Quick opening, the default: that on/off manifold valves behave so is common practice. The points (0.25, 0.79) and
    /// (0.5, 0.90) are the representative quick-opening curve tabulated by the open-source library `fluids` (its control
    /// valve data).
    /// </summary>
    public static IReadOnlyList<ValvePoint> QuickOpening { get; } = [new(0, 0), new(0.25, 0.79), new(0.5, 0.90), new(1, 1)];

    /// <summary>Opening equal to travel.</summary>
    public static IReadOnlyList<ValvePoint> Linear { get; } = [new(0, 0), new(1, 1)];

    private static readonly MonotoneCurve _quickOpening = Through(QuickOpening);

    /// <summary>
    /// Equal percentage: opening R^(travel − 1), as in IEC 60534-2-4, in steps of 5 % of travel; below the first it runs
    /// smoothly to 0, since a valve shuts.
    /// </summary>
    /// <param name="rangeability">R, 5 to 100; 20 to 50 is common practice.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is outside that range.</exception>
    public static IReadOnlyList<ValvePoint> EqualPercentage(double rangeability)
    {
        if (!(rangeability is >= 5 and <= 100))
        {
            throw new ArgumentOutOfRangeException(
                nameof(rangeability), rangeability, "rangeability is expected between 5 and 100");
        }

        const int Steps = 20;
        return
        [
            new(0, 0),
            .. Enumerable.Range(1, Steps).Select(i => new ValvePoint(
                i / (double)Steps, Math.Pow(rangeability, i / (double)Steps - 1))),
        ];
    }

    /// <summary>Kv over Kvs of <see cref="QuickOpening"/>, the default by common practice, 0 to 1.</summary>
    /// <param name="travel">Stem travel as a share of the stroke, 0 shut to 1 open.</param>
    public static double Opening(double travel) => Opening(_quickOpening, travel);

    /// <summary>
    /// Resistance of a valve, m of head per (m³/s)². From IEC 60534-1: a valve of Kv passes Kv m³/h of water at 1000 kg/m³
    /// for 1 bar, so Δp = 1 bar · (ρ/1000) · (Q/Kv)²; as head, density cancels.
    /// </summary>
    /// <param name="kv">Kv, m³/h at 1 bar; more than 0, infinite for no valve at all.</param>
    /// <param name="gravity">Acceleration of gravity, m/s².</param>
    public static double Resistance(double kv, double gravity) => 100 * 3600.0 * 3600.0 / (gravity * kv * kv);

    /// <summary>Kv over Kvs on a curve, 0 to 1.</summary>
    internal static double Opening(MonotoneCurve curve, double travel)
    {
        double opening = curve.At(Math.Clamp(travel, 0, 1), out _);
        return opening < ShutBelow ? 0 : opening;
    }

    /// <summary>The smooth curve through a table.</summary>
    internal static MonotoneCurve Through(IReadOnlyList<ValvePoint> table) =>
        new([.. table.Select(p => p.Travel)], [.. table.Select(p => p.Opening)]);
}

/// <summary>A point of a valve's characteristic.</summary>
/// <param name="Travel">Stem travel as a share of the stroke, 0 shut to 1 open.</param>
/// <param name="Opening">Kv over Kvs there, 0 to 1.</param>
public readonly record struct ValvePoint(double Travel, double Opening);
