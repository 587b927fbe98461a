using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Scripts;

/// <summary>What came of reading a script file.</summary>
/// <param name="Script">The script; null when a mistake is an error.</param>
/// <param name="Mistakes">Every mistake found, errors and warnings, in the order of the file.</param>
public sealed record ScriptReading(Script? Script, IReadOnlyList<FileMistake> Mistakes);

/// <summary>Reads script files. Bad content is a list of mistakes, never an exception.</summary>
public static class ScriptFile
{
    /// <summary>Reads a script file from disk (UTF-8, at most 1 MiB); its names are those of <paramref name="house"/>.</summary>
    public static ScriptReading Read(string path, House house)
    {
        var mistakes = new MistakeList(path);
        string? text = TextFile.Read(path, mistakes);
        return text is null ? new ScriptReading(null, mistakes.InOrder()) : Parse(text, path, house);
    }

    /// <summary>Reads a script from text; <paramref name="fileName"/> is what messages call it.</summary>
    public static ScriptReading Parse(string text, string fileName, House house)
    {
        var mistakes = new MistakeList(fileName);
        TomlTable root = TomlText.Read(text, mistakes);
        Script? script = ScriptReader.Read(new TableReader(root, "", mistakes), house);
        return new ScriptReading(
            mistakes.HasErrors || script is null ? null : script with { FileName = Path.GetFileName(fileName) },
            mistakes.InOrder());
    }
}
