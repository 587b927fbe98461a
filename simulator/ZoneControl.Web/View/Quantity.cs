namespace ZoneControl.Web.View;

/// <summary>Quantities as people read them.</summary>
public static class Quantity
{
    /// <summary>US liquid gallon: 231 cubic inches, 3.785411784 L exactly (NIST Handbook 44, appendix C).</summary>
    private const double LitresInGallon = 3.785411784;

    /// <summary>A length of time: "0 s", "0.4 s", "42 s", "31 min 20 s", "2 h 5 min".</summary>
    /// <param name="seconds">Seconds, 0 or more.</param>
    public static string Duration(double seconds)
    {
        if (seconds > 0 && seconds < 9.95)
            return $"{Math.Max(0.1, seconds):0.#} s";
        long whole = (long)Math.Round(seconds);
        if (whole < 60)
            return $"{whole} s";
        if (whole < 3600)
            return whole % 60 == 0 ? $"{whole / 60} min" : $"{whole / 60} min {whole % 60} s";
        if (whole >= 360_000)
            return $"{Math.Round(seconds / 3600):#,0} h"; // minutes are nothing beside hundreds of hours
        long minutes = (whole + 30) / 60;
        return minutes % 60 == 0 ? $"{minutes / 60} h" : $"{minutes / 60} h {minutes % 60} min";
    }

    /// <summary>A temperature with its unit.</summary>
    /// <param name="celsius">°C.</param>
    /// <param name="units">Units to show.</param>
    public static string Temperature(double celsius, UnitSystem units) =>
        $"{TemperatureValue(celsius, units):0.0} {TemperatureUnit(units)}";

    /// <summary>A temperature's number in the units shown.</summary>
    public static double TemperatureValue(double celsius, UnitSystem units) =>
        units == UnitSystem.UsCustomary ? celsius * 9 / 5 + 32 : celsius;

    /// <summary>"°C" or "°F".</summary>
    public static string TemperatureUnit(UnitSystem units) => units == UnitSystem.UsCustomary ? "°F" : "°C";

    /// <summary>A flow's number in the units shown, from m³/s.</summary>
    public static double FlowValue(double m3s, UnitSystem units)
    {
        double litresAMinute = m3s * 60_000;
        return units == UnitSystem.UsCustomary ? litresAMinute / LitresInGallon : litresAMinute;
    }

    /// <summary>"L/min" or "gpm".</summary>
    public static string FlowUnit(UnitSystem units) => units == UnitSystem.UsCustomary ? "gpm" : "L/min";

    /// <summary>Electrical energy: "38 Wh", "1.24 kWh".</summary>
    /// <param name="wattHours">Wh.</param>
    public static string Energy(double wattHours) =>
        wattHours < 1000 ? $"{wattHours:0.#} Wh" : $"{wattHours / 1000:0.00} kWh";

    /// <summary>A count with its noun: "1 start", "3 starts".</summary>
    public static string Count(int count, string one, string? many = null) => $"{count} {(count == 1 ? one : many ?? one + "s")}";
}
