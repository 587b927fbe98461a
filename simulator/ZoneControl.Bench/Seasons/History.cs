using System.Globalization;
using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Seasons;

/// <summary>A record in the history.</summary>
/// <param name="FileName">Its file, without folders.</param>
/// <param name="Record">The record.</param>
public sealed record HistoryEntry(string FileName, SeasonRecord Record);

/// <summary>What came of reading a history.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Entries">Records by day, oldest first, those of one day as they were filed.</param>
/// <param name="Mistakes">Files that cannot be used.</param>
public sealed record HistoryReading(string Folder, IReadOnlyList<HistoryEntry> Entries, IReadOnlyList<FileMistake> Mistakes);

/// <summary>
/// Records of season starts and stops in a folder of plain files beside the house file: <c>pottery.house.toml</c> has
/// <c>pottery.history</c>, a file a record.
/// </summary>
public static class History
{
    /// <summary>The folder of a house file.</summary>
    public static string FolderOf(string houseFile)
    {
        ArgumentNullException.ThrowIfNull(houseFile);
        string full = Path.GetFullPath(houseFile);
        string name = Path.GetFileName(full);
        foreach (string ending in (string[])[".toml", ".house"])
        {
            if (name.EndsWith(ending, StringComparison.OrdinalIgnoreCase) && name.Length > ending.Length)
                name = name[..^ending.Length];
        }

        return Path.Combine(Path.GetDirectoryName(full)!, name + ".history");
    }

    /// <summary>Reads every record of a house file; a house without the folder has none.</summary>
    public static HistoryReading Read(string houseFile)
    {
        string folder = FolderOf(houseFile);
        var entries = new List<HistoryEntry>();
        var mistakes = new List<FileMistake>();
        if (Directory.Exists(folder))
        {
            foreach (string file in Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal))
            {
                RecordReading reading = RecordFile.Read(file);
                mistakes.AddRange(reading.Mistakes);
                if (reading.Record is { } record)
                    entries.Add(new HistoryEntry(Path.GetFileName(file), record));
            }
        }

        return new HistoryReading(
            folder,
            [
                .. entries.OrderBy(entry => entry.Record.Date, StringComparer.Ordinal).ThenBy(NumberOf)
                    .ThenBy(entry => entry.FileName, StringComparer.Ordinal),
            ],
            mistakes);
    }

    /// <summary>The number that <see cref="NewName"/> gave a later record of the same day; 1 for the first.</summary>
    private static int NumberOf(HistoryEntry entry)
    {
        string stem = $"{entry.Record.Date}-{entry.Record.Season}-";
        string name = Path.GetFileNameWithoutExtension(entry.FileName);
        string last = name.StartsWith(stem, StringComparison.Ordinal) ? name[stem.Length..] : "";
        return int.TryParse(last, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : 1;
    }

    /// <summary>A name in the folder that no file has yet: "2026-10-03-start.json", or with a number for a second one that day.</summary>
    public static string NewName(string folder, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        string stem = Path.Combine(folder, $"{record.Date}-{record.Season}");
        string name = stem + ".json";
        for (int i = 2; File.Exists(name); i++)
            name = $"{stem}-{i}.json";
        return name;
    }
}
