using System.Text.RegularExpressions;

namespace ZoneControl.Bench.Files;

/// <summary>Reads single nodes; what tables and lists have in common.</summary>
internal static partial class NodeReader
{
    /// <summary>What a name is, for messages.</summary>
    public const string NameExpected =
        "a name of lower-case letters, digits and hyphens, beginning with a letter, at most 24 long";

    /// <summary>
    /// A quantity within a range that both ends belong to, in the dimension's own unit; null after noting a mistake.
    /// </summary>
    public static double? Quantity(
        TomlNode node, string path, Dimension dimension, string least, string most, MistakeList mistakes)
    {
        string expected = $"{dimension.Name} such as {dimension.Examples}";
        if (node is not TomlScalar { Value: string text })
        {
            string found = node is TomlScalar { Value: long or double } ? $"{node.Found} without a unit" : node.Found;
            mistakes.Error(node.Place, path, found, expected);
            return null;
        }

        QuantityReading reading = Quantities.Read(text, dimension);
        if (reading.Value is not { } value)
        {
            mistakes.Error(node.Place, path, reading.Found, expected, reading.Hint);
            return null;
        }

        if (value >= Limit(least, dimension) && value <= Limit(most, dimension))
            return value;
        mistakes.Error(node.Place, path, Words.Quote(text), $"{dimension.Name} from \"{least}\" to \"{most}\"");
        return null;
    }

    /// <summary>
    /// Whether a text may be shown: not too long, and no control characters, those that turn the direction of text included, but line ends where there may be several lines.
    /// </summary>
    public static bool IsText(string text, int longest, bool severalLines) =>
        text.Length <= longest
        && (severalLines || !string.IsNullOrWhiteSpace(text))
        && text.All(c => !Words.IsHidden(c) || (severalLines && c is '\n' or '\r' or '\t'));

    /// <summary>Whether a text may be a name in files.</summary>
    public static bool IsName(string text) => Name().IsMatch(text);

    private static double Limit(string text, Dimension dimension) =>
        Quantities.Read(text, dimension).Value ?? throw new ArgumentException(text, nameof(text));

    [GeneratedRegex(@"\A[a-z][a-z0-9-]{0,23}\z", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
