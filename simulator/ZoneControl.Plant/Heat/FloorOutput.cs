namespace ZoneControl.Plant.Heat;

/// <summary>
/// Output of a floor and the temperature of its surface: the basic characteristic of EN 1264-2 (the same in ISO 11855-2),
/// q = 8.92 · (surface − room)^1.1 W/m², constants as on public pages; the standard itself was not read.
/// </summary>
public static class FloorOutput
{
    private const double Factor = 8.92;
    private const double Exponent = 1.1;

    /// <summary>Heat given upwards, W/m².</summary>
    /// <param name="surfaceAboveRoomK">Mean surface temperature less room temperature, K; 0 or less gives 0.</param>
    public static double OutputWPerM2(double surfaceAboveRoomK) =>
        surfaceAboveRoomK > 0 ? Factor * Math.Pow(surfaceAboveRoomK, Exponent) : 0;

    /// <summary>Mean surface temperature less room temperature, K: the characteristic turned round.</summary>
    /// <param name="outputWPerM2">Heat given upwards, W/m²; 0 or less gives 0.</param>
    public static double SurfaceAboveRoomK(double outputWPerM2) =>
        outputWPerM2 > 0 ? Math.Pow(outputWPerM2 / Factor, 1 / Exponent) : 0;

    /// <summary>Highest surface temperature that EN 1264-2 allows for, °C.</summary>
    public static double HighestSurfaceC(FloorUse use) => use switch
    {
        FloorUse.Edge => 35,
        FloorUse.Bath => 33,
        _ => 29,
    };
}
