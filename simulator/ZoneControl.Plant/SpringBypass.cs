namespace ZoneControl.Plant;

/// <summary>
/// Flow through a spring bypass by the head across it: opening x = (Δp − opening)/band held to 0..1, and
/// Q = x·Kvs·√Δp (Δp in bar, Q in m³/h, water at 1000 kg/m³; with density as in IEC 60534-1). Common practice for a
/// proportional relief; a real one has a few per cent of hysteresis, which is left out.
/// </summary>
public sealed class SpringBypass
{
    private readonly BypassDescription _description;
    private readonly double _pascalPerM;
    private readonly double _gravity;

    /// <summary>A bypass in water.</summary>
    /// <param name="description">The bypass.</param>
    /// <param name="density">Density of the water, kg/m³.</param>
    /// <param name="gravity">Acceleration of gravity, m/s².</param>
    public SpringBypass(BypassDescription description, double density, double gravity)
    {
        _description = description;
        _pascalPerM = density * gravity;
        _gravity = gravity;
    }

    /// <summary>Flow, m³/s.</summary>
    /// <param name="head">Head across it, m; 0 or more.</param>
    /// <param name="slope">Derivative of flow by head, m²/s.</param>
    public double Flow(double head, out double slope)
    {
        double x = (_pascalPerM * head - _description.OpeningPa) / _description.BandPa;
        if (x <= 0)
        {
            slope = 0;
            return 0;
        }

        double opening = Math.Min(x, 1);
        double openingSlope = x < 1 ? _pascalPerM / _description.BandPa : 0;
        double open = _description.Kvs / 3600 * Math.Sqrt(_gravity * head / 100);
        slope = openingSlope * open + opening * open / (2 * head);
        return opening * open;
    }
}
