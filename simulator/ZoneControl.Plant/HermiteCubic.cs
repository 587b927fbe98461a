namespace ZoneControl.Plant;

/// <summary>The cubic with given values and slopes at two places; any one unit against any other.</summary>
internal readonly struct HermiteCubic
{
    private readonly double _start;
    private readonly double _width;

    public HermiteCubic(double x0, double y0, double slope0, double x1, double y1, double slope1)
    {
        _start = x0;
        _width = x1 - x0;
        double rise = y1 - y0;
        double m0 = slope0 * _width;
        double m1 = slope1 * _width;
        C0 = y0;
        C1 = m0;
        C2 = 3 * rise - 2 * m0 - m1;
        C3 = m0 + m1 - 2 * rise;
    }

    /// <summary>Coefficients by t, which runs from 0 to 1 between the places: C0 + C1·t + C2·t² + C3·t³.</summary>
    public double C0 { get; }

    /// <inheritdoc cref="C0"/>
    public double C1 { get; }

    /// <inheritdoc cref="C0"/>
    public double C2 { get; }

    /// <inheritdoc cref="C0"/>
    public double C3 { get; }

    public double At(double x, out double slope)
    {
        double t = (x - _start) / _width;
        slope = (C1 + t * (2 * C2 + t * 3 * C3)) / _width;
        return C0 + t * (C1 + t * (C2 + t * C3));
    }
}
