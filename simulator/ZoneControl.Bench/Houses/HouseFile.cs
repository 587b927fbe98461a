using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Houses;

/// <summary>What came of reading a house file.</summary>
/// <param name="House">The house; null when a mistake is an error.</param>
/// <param name="Mistakes">Every mistake found, errors and warnings, in the order of the file.</param>
public sealed record HouseReading(House? House, IReadOnlyList<FileMistake> Mistakes);

/// <summary>Reads house files. Bad content is a list of mistakes, never an exception.</summary>
public static class HouseFile
{
    /// <summary>Reads a house file from disk.</summary>
    public static HouseReading Read(string path) => throw new NotImplementedException(path);

    /// <summary>Reads a house from text; <paramref name="fileName"/> is what messages call it.</summary>
    public static HouseReading Parse(string text, string fileName) => throw new NotImplementedException(text + fileName);
}
