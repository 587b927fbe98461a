using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Houses;

/// <summary>What came of reading a house file.</summary>
/// <param name="House">The house; null when a mistake is an error.</param>
/// <param name="Mistakes">Every mistake found, errors and warnings, in the order of the file.</param>
public sealed record HouseReading(House? House, IReadOnlyList<FileMistake> Mistakes)
{
    /// <summary>The file cannot be a house, and has what only script files have.</summary>
    public bool LooksLikeScript { get; init; }
}

/// <summary>Reads house files. Bad content is a list of mistakes, never an exception.</summary>
public static class HouseFile
{
    /// <summary>Reads a house file from disk: UTF-8, at most 1 MiB.</summary>
    public static HouseReading Read(string path)
    {
        var mistakes = new MistakeList(path);
        string? text = TextFile.Read(path, mistakes);
        return text is null ? new HouseReading(null, mistakes.InOrder()) : Parse(text, path);
    }

    /// <summary>Reads a house from text; <paramref name="fileName"/> is what messages call it.</summary>
    public static HouseReading Parse(string text, string fileName)
    {
        var mistakes = new MistakeList(fileName);
        TomlTable root = TomlText.Read(text, mistakes);
        House? house = HouseReader.Read(new TableReader(root, "", mistakes));
        return new HouseReading(
            mistakes.HasErrors || house is null ? null : house with { FileName = Path.GetFileName(fileName) },
            mistakes.InOrder())
        {
            LooksLikeScript = root.Entries.ContainsKey("duration") && root.Entries.ContainsKey("title")
                && !root.Entries.ContainsKey("zone") && !root.Entries.ContainsKey("pump"),
        };
    }
}
