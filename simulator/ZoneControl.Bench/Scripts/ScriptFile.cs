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
    /// <summary>Reads a script file from disk; its names are those of <paramref name="house"/>.</summary>
    public static ScriptReading Read(string path, House house) => throw new NotImplementedException(path + house);

    /// <summary>Reads a script from text; <paramref name="fileName"/> is what messages call it.</summary>
    public static ScriptReading Parse(string text, string fileName, House house) =>
        throw new NotImplementedException(text + fileName + house);
}
