namespace ZoneControl.Plant;

/// <summary>
/// Properties of propylene glycol in water by temperature and share of mass. Source: the polynomials of Å. Melinder,
/// "Properties of Secondary Working Fluids for Indirect Systems", IIR, 2010, with coefficients as published in the open-source
/// library CoolProp (its file MPG.json, whose limits are taken over: share up to 0.6, up to 100 °C). Each property is a
/// polynomial in T − 305.8583 K and share − 0.307031; viscosity's gives the natural logarithm of mPa·s.
/// </summary>
/// <remarks>
/// The library does not say how far up Melinder's own data go; other tables of that kind end near 40 °C, so take values above
/// that as extrapolated. At share 0 viscosity comes out as water's within 1 %. Inhibitors, which change products a little, are
/// not in it.
/// </remarks>
public static class Glycol
{
    /// <summary>Largest share of mass accepted.</summary>
    public const double MostShare = 0.6;

    /// <summary>Highest temperature accepted, °C.</summary>
    public const double HighestC = 100;

    private const double BaseC = 305.8583 - 273.15;
    private const double BaseShare = 0.307031;

    // Rows by power of temperature, columns by power of share.
    private static readonly double[][] _density =
    [
        [1018, 76.04, -24.98, -155.0, -113.1, 234.2],
        [-0.5406, -0.945, 0.27, 2.829, -2.221],
        [-2.666e-3, 5.541e-3, -4.018e-3, -7.175e-3],
        [1.347e-5, -1.343e-5, 3.376e-5],
    ];

    private static readonly double[][] _heatCapacity =
    [
        [3882, -1304, -1598, 353.9, 5000, -4959],
        [2.699, 5.07, 0.9534, 31.02, -71.35],
        [-1.659e-3, -4.752e-3, 0.1167, -0.295],
        [-1.032e-5, 1.522e-4, -4.87e-4],
    ];

    private static readonly double[][] _logViscosity =
    [
        [0.6837, 3.328, 0.5453, -3.9, -1.587, 35.64],
        [-3.045e-2, -3.984e-2, -8.6e-4, 0.1054, 4.475e-2],
        [2.525e-4, 4.332e-4, -1.593e-4, -1.589e-3],
        [-1.399e-6, -1.86e-6, -4.465e-7],
    ];

    private static readonly double[] _freezing = [259.9, -66.31, -109.4, -228.3, -340.9, 146.5];

    /// <summary>Density, kg/m³.</summary>
    /// <param name="celsius">Temperature, °C; from <see cref="FreezingC"/> to 100.</param>
    /// <param name="share">Share of mass, 0 to 0.6.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is outside its range.</exception>
    public static double Density(double celsius, double share) => Value(_density, celsius, share);

    /// <summary>Heat capacity at constant pressure, J/(kg K).</summary>
    /// <inheritdoc cref="Density"/>
    public static double HeatCapacity(double celsius, double share) => Value(_heatCapacity, celsius, share);

    /// <summary>Dynamic viscosity, Pa·s.</summary>
    /// <inheritdoc cref="Density"/>
    public static double DynamicViscosity(double celsius, double share) =>
        1e-3 * Math.Exp(Value(_logViscosity, celsius, share));

    /// <summary>Temperature at which it begins to freeze, °C.</summary>
    /// <param name="share">Share of mass, 0 to 0.6.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside that range.</exception>
    public static double FreezingC(double share) => share is >= 0 and <= MostShare
        ? Polynomial(_freezing, share - BaseShare) - 273.15
        : throw new ArgumentOutOfRangeException(nameof(share), share, "share of glycol is expected between 0 and 0.6");

    private static double Value(double[][] rows, double celsius, double share)
    {
        double freezing = FreezingC(share);
        if (!(celsius >= freezing && celsius <= HighestC))
        {
            throw new ArgumentOutOfRangeException(
                nameof(celsius), celsius,
                $"with a share of {share} glycol, temperature is expected between {freezing:F1} and 100 °C");
        }

        double sum = 0;
        for (int i = rows.Length - 1; i >= 0; i--)
        {
            sum = sum * (celsius - BaseC) + Polynomial(rows[i], share - BaseShare);
        }

        return sum;
    }

    private static double Polynomial(double[] coefficients, double x)
    {
        double sum = 0;
        for (int i = coefficients.Length - 1; i >= 0; i--)
        {
            sum = sum * x + coefficients[i];
        }

        return sum;
    }
}
