using UnitsNet;
using UnitsNet.Units;

namespace ZoneControl.Bench.Files;

/// <summary>A kind of quantity that files may state, with the unit words of the trade for it.</summary>
public sealed class Dimension
{
    private readonly Dictionary<string, Func<double, double>> _toBase;

    private Dimension(string name, string examples, params (string Word, Func<double, double> ToBase)[] units)
    {
        Name = name;
        Examples = examples;
        _toBase = units.ToDictionary(unit => unit.Word, unit => unit.ToBase, StringComparer.Ordinal);
    }

    /// <summary>Length, in m.</summary>
    public static Dimension Length { get; } = new("a length", "\"80 m\" or \"250 ft\"",
        Unit("m", LengthUnit.Meter), Unit("cm", LengthUnit.Centimeter), Unit("mm", LengthUnit.Millimeter),
        Unit("ft", LengthUnit.Foot), Unit("in", LengthUnit.Inch));

    /// <summary>Pump head, in m of the fluid.</summary>
    public static Dimension Head { get; } = new("a head", "\"4 m\" or \"13 ft\"",
        Unit("m", LengthUnit.Meter), Unit("ft", LengthUnit.Foot));

    /// <summary>Time, in ms. The only dimension whose quantities may be put together: "1 h 20 min".</summary>
    public static Dimension Time { get; } = new("a time", "\"3 min\" or \"1 h 20 min\"",
        Unit("ms", DurationUnit.Millisecond), Unit("s", DurationUnit.Second), Unit("min", DurationUnit.Minute),
        Unit("h", DurationUnit.Hour), Unit("d", DurationUnit.Day));

    /// <summary>Flow, in m³/s. A gallon is the US gallon.</summary>
    public static Dimension Flow { get; } = new("a flow", "\"2.5 L/min\" or \"0.6 gpm\"",
        Unit("L/min", VolumeFlowUnit.LiterPerMinute), Unit("l/min", VolumeFlowUnit.LiterPerMinute),
        Unit("L/h", VolumeFlowUnit.LiterPerHour), Unit("l/h", VolumeFlowUnit.LiterPerHour),
        Unit("L/s", VolumeFlowUnit.LiterPerSecond), Unit("l/s", VolumeFlowUnit.LiterPerSecond),
        Unit("m3/h", VolumeFlowUnit.CubicMeterPerHour), Unit("m³/h", VolumeFlowUnit.CubicMeterPerHour),
        Unit("gpm", VolumeFlowUnit.UsGallonPerMinute));

    /// <summary>
    /// Pressure, in Pa. "m" and "ft" are columns of water of 1,000 kg/m³ under standard gravity; the library's
    /// MeterOfHead is another, slightly lighter column than its FootOfHead, so it is not used.
    /// </summary>
    public static Dimension Pressure { get; } = new("a pressure", "\"0.2 bar\" or \"3 psi\"",
        Unit("bar", PressureUnit.Bar), Unit("mbar", PressureUnit.Millibar), Unit("kPa", PressureUnit.Kilopascal),
        Unit("Pa", PressureUnit.Pascal), Unit("psi", PressureUnit.PoundForcePerSquareInch),
        Unit("m", PressureUnit.MeterOfWaterColumn), Unit("ft", PressureUnit.FootOfHead));

    /// <summary>Temperature, in °C.</summary>
    public static Dimension Temperature { get; } = new("a temperature", "\"20 °C\" or \"68 °F\"",
        Unit("°C", TemperatureUnit.DegreeCelsius), Unit("C", TemperatureUnit.DegreeCelsius),
        Unit("°F", TemperatureUnit.DegreeFahrenheit), Unit("F", TemperatureUnit.DegreeFahrenheit));

    /// <summary>Power, in W.</summary>
    public static Dimension Power { get; } = new("a power", "\"60 W\"",
        Unit("W", PowerUnit.Watt), Unit("kW", PowerUnit.Kilowatt));

    /// <summary>Volume, in m³. A gallon is the US gallon.</summary>
    public static Dimension Volume { get; } = new("a volume", "\"0.35 L\" or \"0.1 gal\"",
        Unit("L", VolumeUnit.Liter), Unit("l", VolumeUnit.Liter), Unit("mL", VolumeUnit.Milliliter),
        Unit("m3", VolumeUnit.CubicMeter), Unit("m³", VolumeUnit.CubicMeter), Unit("gal", VolumeUnit.UsGallon));

    /// <summary>Mass, in kg.</summary>
    public static Dimension Mass { get; } = new("a mass", "\"1.5 kg\" or \"3.3 lb\"",
        Unit("kg", MassUnit.Kilogram), Unit("g", MassUnit.Gram), Unit("lb", MassUnit.Pound));

    /// <summary>
    /// Heat loss by temperature difference, in W/K. The library has no such quantity; a kelvin is 9/5 of a degree Fahrenheit.
    /// </summary>
    public static Dimension HeatLoss { get; } = new("a heat loss", "\"1 W/K\" or \"1.9 BTU/h/F\"",
        ("W/K", value => value),
        ("BTU/h/F", value => UnitConverter.Convert(value, PowerUnit.BritishThermalUnitPerHour, PowerUnit.Watt) * 9 / 5));

    /// <summary>Temperature difference, in K. A kelvin is 9/5 of a degree Fahrenheit.</summary>
    public static Dimension Difference { get; } = new("a temperature difference", "\"0.5 K\" or \"1 °F\"",
        ("K", value => value), ("°F", value => value * 5 / 9), ("F", value => value * 5 / 9));

    /// <summary>Heat given by a floor, in W/m².</summary>
    public static Dimension HeatFlux { get; } = new("heat given by a floor", "\"50 W/m2\" or \"16 BTU/h/ft2\"",
        Unit("W/m2", HeatFluxUnit.WattPerSquareMeter), Unit("W/m²", HeatFluxUnit.WattPerSquareMeter),
        Unit("BTU/h/ft2", HeatFluxUnit.BtuPerHourSquareFoot), Unit("BTU/h/ft²", HeatFluxUnit.BtuPerHourSquareFoot));

    /// <summary>Area, in m².</summary>
    public static Dimension Area { get; } = new("an area", "\"20 m2\" or \"215 ft2\"",
        Unit("m2", AreaUnit.SquareMeter), Unit("m²", AreaUnit.SquareMeter), Unit("ft2", AreaUnit.SquareFoot),
        Unit("ft²", AreaUnit.SquareFoot));

    /// <summary>Heat capacity of a whole body, in J/K.</summary>
    public static Dimension HeatCapacity { get; } = new("a heat capacity", "\"2 MJ/K\" or \"550 Wh/K\"",
        ("kJ/K", value => value * 1e3), ("MJ/K", value => value * 1e6), ("Wh/K", value => value * 3600),
        ("BTU/F", value => UnitConverter.Convert(value, EnergyUnit.BritishThermalUnit, EnergyUnit.Joule) * 9 / 5));

    /// <summary>Thermal resistance of a layer, in m²K/W. An R value of the US trade is in ft²·h·°F/BTU.</summary>
    public static Dimension Resistance { get; } = new("a thermal resistance", "\"1.25 m2K/W\" or \"7 ft2hF/BTU\"",
        ("m2K/W", value => value), ("m²K/W", value => value),
        ("ft2hF/BTU", value => value * UnitConverter.Convert(1.0, AreaUnit.SquareFoot, AreaUnit.SquareMeter) * 5 / 9
            / UnitConverter.Convert(1.0, PowerUnit.BritishThermalUnitPerHour, PowerUnit.Watt)));

    /// <summary>Voltage, in V.</summary>
    public static Dimension Voltage { get; } = new("a voltage", "\"24 V\"", Unit("V", ElectricPotentialUnit.Volt));

    /// <summary>Electrical load as a transformer's plate states it (apparent power), in VA.</summary>
    public static Dimension Load { get; } = new("a load", "\"40 VA\"", Unit("VA", ApparentPowerUnit.Voltampere));

    /// <summary>A share, from 0 to 1 for 0 to 100 %.</summary>
    public static Dimension Share { get; } = new("a share", "\"85 %\"", Unit("%", RatioUnit.Percent));

    /// <summary>Every dimension.</summary>
    public static IReadOnlyList<Dimension> All { get; } =
        [Length, Head, Time, Flow, Pressure, Temperature, Power, Volume, Mass, HeatLoss, Voltage, Load, Share, Difference, Area,
            HeatCapacity, Resistance, HeatFlux];

    /// <summary>Name with its article: "a length".</summary>
    public string Name { get; }

    /// <summary>Examples for messages.</summary>
    public string Examples { get; }

    /// <summary>Unit words, the usual one first.</summary>
    public IReadOnlyCollection<string> Units => _toBase.Keys;

    /// <summary>
    /// A value in one of <see cref="Units"/> as a value in the unit that this dimension's description names; null for an
    /// unknown unit.
    /// </summary>
    public double? ToBase(double value, string unit) => _toBase.TryGetValue(unit, out var toBase) ? toBase(value) : null;

    private static (string Word, Func<double, double> ToBase) Unit<TUnit>(string word, TUnit unit)
        where TUnit : Enum
    {
        Enum baseUnit = unit switch
        {
            LengthUnit => LengthUnit.Meter,
            DurationUnit => DurationUnit.Millisecond,
            VolumeFlowUnit => VolumeFlowUnit.CubicMeterPerSecond,
            PressureUnit => PressureUnit.Pascal,
            TemperatureUnit => TemperatureUnit.DegreeCelsius,
            PowerUnit => PowerUnit.Watt,
            VolumeUnit => VolumeUnit.CubicMeter,
            MassUnit => MassUnit.Kilogram,
            ElectricPotentialUnit => ElectricPotentialUnit.Volt,
            ApparentPowerUnit => ApparentPowerUnit.Voltampere,
            AreaUnit => AreaUnit.SquareMeter,
            HeatFluxUnit => HeatFluxUnit.WattPerSquareMeter,
            RatioUnit => RatioUnit.DecimalFraction,
            _ => throw new ArgumentException($"no base unit for {typeof(TUnit).Name}", nameof(unit)),
        };
        return (word, value => UnitConverter.Convert(value, unit, baseUnit));
    }
}
