using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace ZoneControl.Bench.Houses;

/// <summary>Quantities as a person reads them, in the units of the house.</summary>
public static class Show
{
    private const string Rounded = "";

    /// <summary>A flow given in m³/s: "2.27 L/min" or "0.6 gpm".</summary>
    public static string Flow(double m3s, DisplayUnits units) => Text(
        m3s, VolumeFlowUnit.CubicMeterPerSecond, units,
        (VolumeFlowUnit.LiterPerMinute, Rounded, "L/min"), (VolumeFlowUnit.UsGallonPerMinute, Rounded, "gpm"));

    /// <summary>A length or head given in m: "76.2 m" or "250 ft".</summary>
    public static string Length(double m, DisplayUnits units) =>
        Text(m, LengthUnit.Meter, units, (LengthUnit.Meter, Rounded, "m"), (LengthUnit.Foot, Rounded, "ft"));

    /// <summary>A pressure given in Pa: "0.2 bar" or "2.9 psi".</summary>
    public static string Pressure(double pa, DisplayUnits units) => Text(
        pa, PressureUnit.Pascal, units,
        (PressureUnit.Bar, "0.###", "bar"), (PressureUnit.PoundForcePerSquareInch, "0.##", "psi"));

    /// <summary>A temperature given in °C: "38.5 °C" or "101 °F".</summary>
    public static string Temperature(double c, DisplayUnits units) => Text(
        c, TemperatureUnit.DegreeCelsius, units,
        (TemperatureUnit.DegreeCelsius, "0.#", "°C"), (TemperatureUnit.DegreeFahrenheit, "0", "°F"));

    /// <summary>An area given in m²: "20 m²" or "215 ft²".</summary>
    public static string Area(double m2, DisplayUnits units) => Text(
        m2, AreaUnit.SquareMeter, units, (AreaUnit.SquareMeter, "0.#", "m²"), (AreaUnit.SquareFoot, "#,0", "ft²"));

    /// <summary>A volume given in m³: "0.35 L" or "0.09 gal".</summary>
    public static string Volume(double m3, DisplayUnits units) => Text(
        m3, VolumeUnit.CubicMeter, units, (VolumeUnit.Liter, Rounded, "L"), (VolumeUnit.UsGallon, Rounded, "gal"));

    /// <summary>A mass given in kg: "1.5 kg" or "3.3 lb".</summary>
    public static string Mass(double kg, DisplayUnits units) =>
        Text(kg, MassUnit.Kilogram, units, (MassUnit.Kilogram, "0.##", "kg"), (MassUnit.Pound, "0.#", "lb"));

    /// <summary>Three digits or so: more would be false precision.</summary>
    private static string FormatOf(double value) => Math.Abs(value) switch
    {
        >= 99.95 => "#,0",
        >= 9.995 => "0.#",
        _ => "0.##",
    };

    private static string Text(
        double value, Enum from, DisplayUnits units,
        (Enum Unit, string Format, string Word) si, (Enum Unit, string Format, string Word) us)
    {
        var (unit, format, word) = units == DisplayUnits.Us ? us : si;
        double shown = UnitConverter.Convert(value, from, unit);
        string number = shown.ToString(format == Rounded ? FormatOf(shown) : format, CultureInfo.InvariantCulture);
        return $"{number} {word}";
    }
}
