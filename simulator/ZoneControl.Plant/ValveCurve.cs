namespace ZoneControl.Plant;

/// <summary>
/// Part of its Kvs that an on/off manifold valve passes by stem travel: quick opening, 0 when shut, smooth and rising. That
/// such valves behave so is common practice; the points (0.25, 0.79) and (0.5, 0.90) are the representative quick-opening
/// curve tabulated by the open-source library `fluids` (its control valve data), joined by a monotone cubic.
/// </summary>
public static class ValveCurve
{
    /// <summary>Travel below which the valve counts as shut; it would pass less than a billionth of its Kvs.</summary>
    public const double ShutBelow = 1e-9;

    private static readonly MonotoneCurve _quickOpening = new([0, 0.25, 0.5, 1], [0, 0.79, 0.90, 1]);

    /// <summary>Kv over Kvs, 0 to 1.</summary>
    /// <param name="travel">Stem travel, 0 shut to 1 open.</param>
    public static double Opening(double travel) => travel < ShutBelow ? 0 : _quickOpening.At(Math.Min(travel, 1), out _);

    /// <summary>
    /// Resistance of a valve, m of head per (m³/s)². From IEC 60534-1: a valve of Kv passes Kv m³/h of water at 1000 kg/m³
    /// for 1 bar, so Δp = 1 bar · (ρ/1000) · (Q/Kv)²; as head, density cancels.
    /// </summary>
    /// <param name="kv">Kv, m³/h at 1 bar; more than 0, infinite for no valve at all.</param>
    /// <param name="gravity">Acceleration of gravity, m/s².</param>
    public static double Resistance(double kv, double gravity) => 100 * 3600.0 * 3600.0 / (gravity * kv * kv);
}
