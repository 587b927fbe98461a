namespace ZoneControl.Plant.Heat;

/// <summary>Outdoor temperature hour by hour; within an hour it stays.</summary>
public sealed class Weather
{
    /// <summary>An hour, ms: the step of the weather.</summary>
    public const long StepMs = 3_600_000;

    private readonly double[] _celsius;

    /// <summary>Weather from hourly temperatures.</summary>
    /// <param name="name">Where it comes from, in words.</param>
    /// <param name="celsius">Outdoor temperatures, °C, -90 to 60; the first holds for the first hour.</param>
    /// <exception cref="ArgumentException">There is none, or one is out of range.</exception>
    public Weather(string name, IReadOnlyList<double> celsius)
    {
        ArgumentNullException.ThrowIfNull(celsius);
        Name = name;
        _celsius = [.. celsius];
        int bad = Array.FindIndex(_celsius, value => value is not (>= -90 and <= 60));
        if (_celsius.Length == 0 || bad >= 0)
        {
            throw new ArgumentException(_celsius.Length == 0
                ? "weather of no hour; expected at least one"
                : $"hour {bad} is at {_celsius[bad]} °C; expected -90 to 60 °C");
        }
    }

    /// <summary>Where it comes from, in words.</summary>
    public string Name { get; }

    /// <summary>How many hours it knows.</summary>
    public int Hours => _celsius.Length;

    /// <summary>Coldest hour, °C.</summary>
    public double ColdestC => _celsius.Min();

    /// <summary>Mean, °C.</summary>
    public double MeanC => _celsius.Average();

    /// <summary>Outdoor temperature in an hour counted from 0, °C; the last one holds beyond the end.</summary>
    public double InHour(long hour) => _celsius[Math.Clamp(hour, 0, _celsius.Length - 1)];
}
