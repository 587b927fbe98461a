namespace ZoneControl.Bench.Files;

/// <summary>Gathers the mistakes of one file.</summary>
internal sealed class MistakeList(string file)
{
    private readonly List<FileMistake> _mistakes = [];

    /// <summary>The file as messages call it.</summary>
    public string File { get; } = Words.Clean(file);

    /// <summary>How many there are so far.</summary>
    public int Count => _mistakes.Count;

    /// <summary>Whether a mistake so far is an error.</summary>
    public bool HasErrors => _mistakes.Exists(mistake => mistake.IsError);

    /// <summary>
    /// Whether parts of the text could not be read at all. Then what is missing, or refers to what is missing, is no
    /// mistake of its own.
    /// </summary>
    public bool LostText { get; set; }

    /// <summary>Every mistake in the order of the file.</summary>
    public IReadOnlyList<FileMistake> InOrder() =>
        [.. _mistakes.Distinct().OrderBy(mistake => mistake.Line).ThenBy(mistake => mistake.Column)];

    /// <summary>Notes an error.</summary>
    public void Error(Place place, string key, string found, string expected, string hint = "") =>
        _mistakes.Add(new FileMistake(File, place.Line, place.Column, key, found, expected, hint));

    /// <summary>Notes something to look at.</summary>
    public void Warning(Place place, string key, string found, string expected, string hint = "") =>
        _mistakes.Add(new FileMistake(File, place.Line, place.Column, key, found, expected, hint, MistakeSeverity.Warning));
}
