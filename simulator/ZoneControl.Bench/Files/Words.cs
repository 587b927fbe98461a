using System.Globalization;

namespace ZoneControl.Bench.Files;

/// <summary>Puts pieces of a file into messages.</summary>
internal static class Words
{
    private const int LongestQuote = 48;

    /// <summary>A piece of a file in quotes, cut short, with nothing in it that could upset a terminal.</summary>
    public static string Quote(string text)
    {
        string clean = Clean(text);
        return clean.Length <= LongestQuote ? $"\"{clean}\"" : $"\"{clean[..LongestQuote]}...\"";
    }

    /// <summary>Text with a visible stand-in for each control character and each half of a broken surrogate pair.</summary>
    public static string Clean(string text) =>
        string.Concat(text.Select(c => IsHidden(c) || char.IsSurrogate(c) ? '\u00BF' : c));

    /// <summary>
    /// A character that shows nothing of itself and could make text look like other text: controls, separators of lines, and
    /// format characters such as those that turn the direction of text. The two joiners that scripts need are none.
    /// </summary>
    public static bool IsHidden(char c) => c is not ('\u200C' or '\u200D')
        && char.GetUnicodeCategory(c) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator
            or UnicodeCategory.ParagraphSeparator;

    /// <summary>Choices in a sentence: "a", "b" or "c".</summary>
    public static string OneOf(IReadOnlyList<string> choices)
    {
        if (choices.Count == 0)
            return "none";
        string last = $"\"{choices[^1]}\"";
        return choices.Count == 1
            ? last
            : string.Join(", ", choices.Take(choices.Count - 1).Select(choice => $"\"{choice}\"")) + " or " + last;
    }

    /// <summary>"did you mean ...?" when a known word is near; else "".</summary>
    public static string DidYouMean(string word, IEnumerable<string> known) =>
        NearestWord.Find(word, known) is { } near ? $"did you mean \"{near}\"?" : "";
}
