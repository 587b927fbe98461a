namespace ZoneControl.Plant;

/// <summary>The cubic with given values and slopes at two places; any one unit against any other.</summary>
internal readonly struct HermiteCubic
{
    private readonly double _start;
    private readonly double _width;
    private readonly double _c0;
    private readonly double _c1;
    private readonly double _c2;
    private readonly double _c3;

    public HermiteCubic(double x0, double y0, double slope0, double x1, double y1, double slope1)
    {
        _start = x0;
        _width = x1 - x0;
        double rise = y1 - y0;
        double m0 = slope0 * _width;
        double m1 = slope1 * _width;
        _c0 = y0;
        _c1 = m0;
        _c2 = 3 * rise - 2 * m0 - m1;
        _c3 = m0 + m1 - 2 * rise;
    }

    public double At(double x, out double slope)
    {
        double t = (x - _start) / _width;
        slope = (_c1 + t * (2 * _c2 + t * 3 * _c3)) / _width;
        return _c0 + t * (_c1 + t * (_c2 + t * _c3));
    }
}
