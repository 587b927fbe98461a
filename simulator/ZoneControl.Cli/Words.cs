using ZoneControl.Bench.Files;

namespace ZoneControl.Cli;

/// <summary>Sentences about words that the program does not know.</summary>
internal static class Words
{
    /// <summary>One clear message: what is unknown, what may have been meant, what there is.</summary>
    public static string Unknown(string kind, string word, IReadOnlyList<string> known)
    {
        string meant = NearestWord.Find(word, known) is { } near ? $" Did you mean '{near}'?" : "";
        return $"There is no {kind} '{word}'.{meant} Known: {string.Join(", ", known)}.";
    }
}
