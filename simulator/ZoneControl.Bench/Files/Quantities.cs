using System.Globalization;
using System.Text.RegularExpressions;

namespace ZoneControl.Bench.Files;

/// <summary>What came of reading a quantity.</summary>
/// <param name="Value">The value in the dimension's own unit; null when it is none.</param>
/// <param name="Found">What was found instead, for a message; "" when it is one.</param>
/// <param name="Hint">What may help; possibly "".</param>
public readonly record struct QuantityReading(double? Value, string Found, string Hint);

/// <summary>Reads quantities such as "250 ft", "0.6 gpm" or "1 h 20 min". The decimal sign is a point, everywhere.</summary>
public static partial class Quantities
{
    private const int ShortestSlip = 3;

    /// <summary>What people write for units; only for hints, since one way to write a file is enough.</summary>
    private static readonly (string[] Words, string Unit)[] _longWords =
    [
        (["sec", "secs", "second", "seconds"], "s"), (["mins", "minute", "minutes", "m"], "min"), (["hr", "hrs", "hour", "hours"], "h"),
        (["day", "days"], "d"), (["millisecond", "milliseconds", "msec"], "ms"), (["metre", "metres", "meter", "meters"], "m"),
        (["foot", "feet"], "ft"), (["inch", "inches"], "in"), (["litre", "litres", "liter", "liters"], "L"),
        (["gallon", "gallons"], "gal"), (["watt", "watts"], "W"), (["volt", "volts"], "V"), (["celsius"], "°C"),
        (["fahrenheit"], "°F"), (["percent"], "%"), (["pound", "pounds", "lbs"], "lb"),
    ];

    /// <summary>Reads a quantity of one dimension.</summary>
    /// <param name="text">The quantity.</param>
    /// <param name="dimension">Its dimension.</param>
    /// <param name="mayBeMeant">Units that a hint may name; all where nothing is given.</param>
    public static QuantityReading Read(string text, Dimension dimension, Func<string, bool>? mayBeMeant = null)
    {
        MatchCollection parts = Part().Matches(text);
        if (parts.Count == 0 || parts.Sum(part => part.Length) != text.Length)
            return Mistake(text, "", CommaHint(text));

        bool mayBePutTogether = dimension == Dimension.Time && parts.All(part => part.Groups["number"].Value[0] is not '-');
        if (parts.Count > 1 && !mayBePutTogether)
            return Mistake(text, "", "one number and one unit");

        double sum = 0;
        foreach (Match part in parts)
        {
            string unit = part.Groups["unit"].Value;
            double number = double.Parse(part.Groups["number"].Value, NumberStyles.Float, CultureInfo.InvariantCulture);
            if (unit.Length == 0)
                return Mistake(text, " without a unit", "");
            if (dimension.ToBase(number, unit) is not { } value)
                return WrongUnit(text, unit, dimension, mayBeMeant ?? (_ => true));
            sum += value;
        }

        return double.IsFinite(sum) ? new QuantityReading(sum, "", "") : Mistake(text, "", "too large a number");
    }

    private static QuantityReading WrongUnit(string text, string unit, Dimension dimension, Func<string, bool> mayBeMeant)
    {
        Dimension? other = Dimension.All.FirstOrDefault(candidate => candidate.Units.Contains(unit));
        if (other is not null)
            return Mistake(text, $", {other.Name}", "");
        string[] known = [.. dimension.Units.Where(mayBeMeant)];
        // Of one or two letters every other unit is near: "mi" is no slip for "m".
        string? near = _longWords.FirstOrDefault(pair => pair.Words.Contains(unit.ToLowerInvariant()) && dimension.Units.Contains(pair.Unit)).Unit
            ?? known.FirstOrDefault(word => word.Equals(unit, StringComparison.OrdinalIgnoreCase))
            ?? (unit.Length >= ShortestSlip ? NearestWord.Find(unit, known.Where(word => word.Length >= ShortestSlip - 1)) : null);
        string hint = near is null
            ? $"unknown unit; known are {string.Join(", ", known)}"
            : $"did you mean \"{near}\"?";
        return Mistake(text, "", hint);
    }

    private static string CommaHint(string text) =>
        CommaInNumber().IsMatch(text) ? "the decimal sign is a point, and thousands are not parted" : "";

    private static QuantityReading Mistake(string text, string what, string hint) => new(null, Words.Quote(text) + what, hint);

    [GeneratedRegex("[0-9],[0-9]", RegexOptions.CultureInvariant)]
    private static partial Regex CommaInNumber();

    // The unit takes letters and signs, but no digit at its start: "5min" and "5 min" are the same.
    [GeneratedRegex(
        @"\G\s*(?<number>[+-]?[0-9]+(?:\.[0-9]+)?)\s*(?<unit>(?:[^\s0-9,.+-][^\s,.+-]*)?)\s*",
        RegexOptions.CultureInvariant)]
    private static partial Regex Part();
}
