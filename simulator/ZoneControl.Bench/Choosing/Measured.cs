using UnitsNet;
using UnitsNet.Units;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>Quantities that only checks and comparisons show, in the units of the reader. <see cref="Show"/> has the others.</summary>
public static class Measured
{
    /// <summary>A velocity given in m/s: "0.32 m/s" or "1.05 ft/s".</summary>
    public static string Velocity(double metresPerSecond, DisplayUnits units) => units == DisplayUnits.Us
        ? $"{UnitConverter.Convert(metresPerSecond, SpeedUnit.MeterPerSecond, SpeedUnit.FootPerSecond):0.00} ft/s"
        : $"{metresPerSecond:0.00} m/s";

    /// <summary>Heat given in W: "1.6 kW" or "5,460 BTU/h", to three digits or so.</summary>
    public static string Heat(double watts, DisplayUnits units) => units == DisplayUnits.Us
        ? $"{Math.Round(UnitConverter.Convert(watts, PowerUnit.Watt, PowerUnit.BritishThermalUnitPerHour) / 10) * 10:#,0} BTU/h"
        : $"{watts / 1000:0.0} kW";

    /// <summary>Heat given by a floor, W/m²: "50 W/m²" or "16 BTU/h/ft²".</summary>
    public static string Flux(double wattsPerM2, DisplayUnits units) => units == DisplayUnits.Us
        ? $"{UnitConverter.Convert(wattsPerM2, HeatFluxUnit.WattPerSquareMeter, HeatFluxUnit.BtuPerHourSquareFoot):0.#} BTU/h/ft²"
        : $"{wattsPerM2:0} W/m²";

    /// <summary>A difference of temperatures given in K: "5 K" or "9 °F".</summary>
    public static string Difference(double kelvin, DisplayUnits units) => units == DisplayUnits.Us
        ? $"{kelvin * 9 / 5:0.#} °F"
        : $"{kelvin:0.#} K";

    /// <summary>What a valve lets through, given as Kv in m³/h at 1 bar: "Kv 0.62" or "Cv 0.72" (gpm at 1 psi; IEC 60534-1).</summary>
    public static string Kv(double kv, DisplayUnits units) => units == DisplayUnits.Us ? $"Cv {kv / 0.8650:0.00}" : $"Kv {kv:0.00}";

    /// <summary>A length of tube spacing given in m: "200 mm" or "8 in".</summary>
    public static string Spacing(double metres, DisplayUnits units) => units == DisplayUnits.Us
        ? $"{UnitConverter.Convert(metres, LengthUnit.Meter, LengthUnit.Inch):0.#} in"
        : $"{metres * 1000:0} mm";

    /// <summary>A pressure for a dial: "0.21 bar" or "3.0 psi".</summary>
    public static string Pressure(double pascal, DisplayUnits units) => units == DisplayUnits.Us
        ? $"{UnitConverter.Convert(pascal, PressureUnit.Pascal, PressureUnit.PoundForcePerSquareInch):0.0} psi"
        : $"{pascal / 100_000:0.00} bar";

    /// <summary>Unit of flows in a column: "L/min" or "gpm".</summary>
    public static string FlowUnit(DisplayUnits units) => units == DisplayUnits.Us ? "gpm" : "L/min";

    /// <summary>A flow given in m³/s as a number for a column, with as many decimals as a flow glass shows.</summary>
    public static string FlowIn(double m3s, DisplayUnits units) => units == DisplayUnits.Us
        ? $"{UnitConverter.Convert(m3s, VolumeFlowUnit.CubicMeterPerSecond, VolumeFlowUnit.UsGallonPerMinute):0.00}"
        : $"{LitresPerMinute(m3s):0.0}";

    /// <summary>Unit of temperatures in a column: "°C" or "°F".</summary>
    public static string TemperatureUnitOf(DisplayUnits units) => units == DisplayUnits.Us ? "°F" : "°C";

    /// <summary>A temperature given in °C as a number for a column, as <see cref="Show.Temperature"/> rounds it.</summary>
    public static string TemperatureIn(double c, DisplayUnits units) =>
        Show.Temperature(c, units)[..^(TemperatureUnitOf(units).Length + 1)];

    /// <summary>Unit of lengths and heads in a column: "m" or "ft".</summary>
    public static string LengthUnitOf(DisplayUnits units) => units == DisplayUnits.Us ? "ft" : "m";

    /// <summary>A length of tube given in m as a number for a column.</summary>
    public static string LengthIn(double metres, DisplayUnits units) => $"{InUnits(metres, units):0}";

    /// <summary>A head given in m as a number for a column.</summary>
    public static string HeadIn(double metres, DisplayUnits units) => InUnits(metres, units).ToString(units == DisplayUnits.Us ? "0.0" : "0.00");

    /// <summary>Unit of velocities in a column: "m/s" or "ft/s".</summary>
    public static string VelocityUnit(DisplayUnits units) => LengthUnitOf(units) + "/s";

    /// <summary>A velocity given in m/s as a number for a column.</summary>
    public static string VelocityIn(double metresPerSecond, DisplayUnits units) => $"{InUnits(metresPerSecond, units):0.00}";

    private static double InUnits(double metres, DisplayUnits units) =>
        units == DisplayUnits.Us ? UnitConverter.Convert(metres, LengthUnit.Meter, LengthUnit.Foot) : metres;

    /// <summary>m³/s as L/min, for numbers that programs read.</summary>
    public static double LitresPerMinute(double m3s) => m3s * 60_000;
}
