namespace ZoneControl.Bench.Files;

/// <summary>How bad a mistake is.</summary>
public enum MistakeSeverity
{
    /// <summary>The file can be used, but says something a person should look at.</summary>
    Warning,

    /// <summary>The file cannot be used.</summary>
    Error,
}

/// <summary>One mistake in a file.</summary>
/// <param name="File">Name of the file as the person gave it.</param>
/// <param name="Line">Line from 1; 0 when the file as a whole is meant.</param>
/// <param name="Column">Column from 1; 0 when the file as a whole is meant.</param>
/// <param name="Key">Where in the file: "zone.kitchen.loops[1].length"; possibly "".</param>
/// <param name="Found">What is there; "nothing" when something is missing.</param>
/// <param name="Expected">What should be there; possibly "".</param>
/// <param name="Hint">What may help: the nearest right word, or the reason; possibly "".</param>
/// <param name="Severity">How bad it is.</param>
public sealed record FileMistake(
    string File,
    int Line,
    int Column,
    string Key,
    string Found,
    string Expected,
    string Hint = "",
    MistakeSeverity Severity = MistakeSeverity.Error)
{
    /// <summary>Whether the file cannot be used because of it.</summary>
    public bool IsError => Severity == MistakeSeverity.Error;

    /// <summary>The mistake in one line.</summary>
    public override string ToString()
    {
        string place = Line > 0 ? $"{File}:{Line}: " : $"{File}: ";
        string warning = IsError ? "" : "warning: ";
        string key = Key.Length > 0 ? Key + ": " : "";
        string expected = Expected.Length > 0 ? ", expected " + Expected : "";
        string hint = Hint.Length > 0 ? $" ({Hint})" : "";
        // Where there is nothing to find anything in, the rest says it.
        string found = Line == 0 && key.Length == 0 && expected.Length == 0 ? "" : "found ";
        return $"{place}{warning}{key}{found}{Found}{expected}{hint}";
    }
}
