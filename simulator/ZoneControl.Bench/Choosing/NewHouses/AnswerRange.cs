using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Choosing.NewHouses;

/// <summary>What may be answered to a question for a quantity: inside what the house file takes, in the reader's own units.</summary>
/// <param name="Dimension">Its dimension.</param>
/// <param name="Si">Least, most and an example in metric units.</param>
/// <param name="Us">The same in US units.</param>
public sealed record AnswerRange(Dimension Dimension, (string Least, string Most, string Example) Si, (string Least, string Most, string Example) Us)
{
    private static readonly string[] _siOnly =
        ["m", "cm", "mm", "L/min", "l/min", "L/h", "l/h", "L/s", "l/s", "m3/h", "m³/h", "bar", "mbar", "kPa", "Pa"];

    private static readonly string[] _usOnly = ["ft", "in", "gpm", "psi"];

    /// <summary>The pump's head at no flow.</summary>
    public static AnswerRange PumpHead { get; } = new(Dimension.Head, ("0.1 m", "100 m", "5 m"), ("0.5 ft", "300 ft", "16 ft"));

    /// <summary>The pump's flow at no head.</summary>
    public static AnswerRange PumpFlow { get; } = new(Dimension.Flow, ("0.1 L/min", "10000 L/min", "40 L/min"), ("0.1 gpm", "2500 gpm", "11 gpm"));

    /// <summary>The pump's electrical power.</summary>
    public static AnswerRange PumpPower { get; } = new(Dimension.Power, ("1 W", "5 kW", "60 W"), ("1 W", "5 kW", "60 W"));

    /// <summary>The pump's minimum flow.</summary>
    public static AnswerRange MinimumFlow { get; } = new(Dimension.Flow, ("0.01 L/min", "1000 L/min", "4 L/min"), ("0.01 gpm", "250 gpm", "1 gpm"));

    /// <summary>Pipes from the pump to the manifold and back.</summary>
    public static AnswerRange MainsLength { get; } = new(Dimension.Length, ("0 m", "1000 m", "10 m"), ("0 ft", "3000 ft", "30 ft"));

    /// <summary>Their inside diameter.</summary>
    public static AnswerRange MainsInside { get; } = new(Dimension.Length, ("4 mm", "200 mm", "26 mm"), ("0.2 in", "7.5 in", "1.05 in"));

    /// <summary>A loop of tube in the floor.</summary>
    public static AnswerRange Loop { get; } = new(Dimension.Length, ("1 m", "1000 m", "80 m"), ("4 ft", "3000 ft", "250 ft"));

    /// <summary>Time in which an actuator opens.</summary>
    public static AnswerRange Opening { get; } = new(Dimension.Time, ("1 s", "1 h", "3 min"), ("1 s", "1 h", "3 min"));

    /// <summary>Pressure at which a spring bypass opens.</summary>
    public static AnswerRange Bypass { get; } = new(Dimension.Pressure, ("0.001 bar", "10 bar", "0.2 bar"), ("0.02 psi", "145 psi", "3 psi"));

    /// <summary>Rating of a transformer.</summary>
    public static AnswerRange Transformer { get; } = new(Dimension.Load, ("1 VA", "1000 VA", "40 VA"), ("1 VA", "1000 VA", "40 VA"));

    /// <summary>Why an answer will not do: what was found and what is expected, in the reader's units; null where it will.</summary>
    /// <param name="text">The answer.</param>
    /// <param name="units">"si" or "us".</param>
    public string? Refusal(string text, string units)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (least, most, example) = units == "us" ? Us : Si;
        if (text.Trim().Length == 0)
            return $"found nothing, expected {Dimension.Name} such as \"{example}\"";
        // What is taken is taken in any unit; what is offered is of the house's own system.
        string[] foreign = units == "us" ? _siOnly : _usOnly;
        QuantityReading reading = Quantities.Read(text.Trim(), Dimension, unit => !foreign.Contains(unit));
        if (reading.Value is not { } value)
        {
            string hint = reading.Hint.Length > 0 ? $" ({reading.Hint})" : "";
            return $"found {reading.Found}, expected {Dimension.Name} such as \"{example}\"{hint}";
        }

        return value >= Value(least) && value <= Value(most)
            ? null
            : $"found {Words.Quote(text)}, expected {Dimension.Name} from {least} to {most}";
    }

    /// <summary>An example in the reader's units.</summary>
    public string ExampleIn(string units) => (units == "us" ? Us : Si).Example;

    /// <summary>The value of an answer in the dimension's own unit; null where it is none.</summary>
    public double? Value(string text) => Quantities.Read(text, Dimension).Value;
}
