namespace ZoneControl.Plant;

/// <summary>
/// Properties of liquid water by temperature, 0 to 100 °C. Source: IAPWS SR6-08(2011), "Revised Supplementary Release on
/// Properties of Liquid Water at 0.1 MPa", which fits the IAPWS-95 and R12-08 formulations. A heating system stands at
/// about 2 bar: that raises density by 0.005 % and lowers heat capacity by 0.01 %, which is left out.
/// </summary>
public static class Water
{
    /// <summary>Lowest temperature accepted, °C.</summary>
    public const double LowestC = 0;

    /// <summary>Highest temperature accepted, °C.</summary>
    public const double HighestC = 100;

    private const double GasConstant = 461.51805; // J/(kg K), the release's own value
    private const double ReducingKelvin = 10;
    private const double ReducingPascal = 1e5;

    // Terms a·α^n + b·β^m of the release's table 1, volume (equation 2) and heat capacity (equation 3).
    private static readonly double[] _volumeAlpha = [6.74458446e3, -2.22521604e5, 1.00231247e8, -1.63552118e9, 8.32299658e9];
    private static readonly int[] _volumeAlphaPower = [4, 5, 7, 8, 9];
    private static readonly double[] _volumeBeta =
        [5.78545292e-3, -1.53195665e-2, 3.11337859e-2, -4.23546241e-2, 3.38713507e-2, -1.19946761e-2];
    private const double VolumeConstant = 1.93763157e-2;

    private static readonly double[] _heatAlpha = [-1.661470539e5, 2.708781640e6, -1.557191544e8];
    private static readonly int[] _heatAlphaPower = [4, 5, 7];
    private static readonly double[] _heatBeta = [-8.237426256e-1, 1.908956353, -2.017597384, 8.546361348e-1];
    private const double HeatConstant = -8.983025854;

    /// <summary>Density, kg/m³.</summary>
    /// <param name="celsius">Temperature, °C; 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside that range.</exception>
    public static double Density(double celsius)
    {
        (double alpha, double beta) = Reduced(celsius);
        double sum = VolumeConstant;
        for (int i = 0; i < _volumeAlpha.Length; i++)
        {
            sum += _volumeAlpha[i] * Math.Pow(alpha, _volumeAlphaPower[i]);
        }

        for (int i = 0; i < _volumeBeta.Length; i++)
        {
            sum += _volumeBeta[i] * Math.Pow(beta, i + 1);
        }

        return ReducingPascal / (GasConstant * ReducingKelvin * sum);
    }

    /// <summary>Heat capacity at constant pressure, J/(kg K).</summary>
    /// <param name="celsius">Temperature, °C; 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside that range.</exception>
    public static double HeatCapacity(double celsius)
    {
        (double alpha, double beta) = Reduced(celsius);
        double sum = 0;
        for (int i = 0; i < _heatAlpha.Length; i++)
        {
            int n = _heatAlphaPower[i];
            sum += n * (n + 1) * _heatAlpha[i] * Math.Pow(alpha, n + 2);
        }

        for (int i = 0; i < _heatBeta.Length; i++)
        {
            int m = i + 2;
            sum += m * (m + 1) * _heatBeta[i] * Math.Pow(beta, m + 2);
        }

        return -GasConstant * (HeatConstant + Kelvin(celsius) / ReducingKelvin * sum);
    }

    /// <summary>Dynamic viscosity, Pa·s (the release's equation 7).</summary>
    /// <param name="celsius">Temperature, °C; 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside that range.</exception>
    public static double DynamicViscosity(double celsius)
    {
        double t = Kelvin(celsius) / 300;
        return 1e-6 * (280.68 * Math.Pow(t, -1.9) + 511.45 * Math.Pow(t, -7.7) + 61.131 * Math.Pow(t, -19.6)
            + 0.45903 * Math.Pow(t, -40));
    }

    /// <summary>Kinematic viscosity, m²/s: dynamic viscosity over density.</summary>
    /// <param name="celsius">Temperature, °C; 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside that range.</exception>
    public static double KinematicViscosity(double celsius) => DynamicViscosity(celsius) / Density(celsius);

    private static (double Alpha, double Beta) Reduced(double celsius)
    {
        double kelvin = Kelvin(celsius);
        return (ReducingKelvin / (593 - kelvin), ReducingKelvin / (kelvin - 232));
    }

    private static double Kelvin(double celsius) => celsius is >= LowestC and <= HighestC
        ? celsius + 273.15
        : throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "water temperature is expected between 0 and 100 °C");
}
