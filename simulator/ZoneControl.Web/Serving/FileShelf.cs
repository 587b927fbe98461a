using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Lessons;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Web.Serving;

/// <summary>A house or script file that may be opened.</summary>
/// <param name="Name">Its name, without folders.</param>
/// <param name="From">Where it is, in words: "examples" or "your folder".</param>
public sealed record ShelfFile(string Name, string From);

/// <summary>
/// The files that the page may open: those of the examples and of the chosen folder, by name and from a list. No path from
/// a browser ever reaches the disk, and a link that leads out of its folder is not on the list.
/// </summary>
public sealed class FileShelf(ServeOptions options)
{
    /// <summary>How a house file's name ends.</summary>
    public const string HouseEnding = ".house.toml";

    /// <summary>How a script file's name ends.</summary>
    public const string ScriptEnding = ".script.toml";

    private const string Examples = "examples";
    private const string Chosen = "your folder";
    private const int MostFiles = 500;

    /// <summary>The chosen folder; null when there is none.</summary>
    public string? Folder => options.Folder;

    /// <summary>House files.</summary>
    public IReadOnlyList<ShelfFile> Houses => Find(HouseEnding);

    /// <summary>Script files.</summary>
    public IReadOnlyList<ShelfFile> Scripts => Find(ScriptEnding);

    /// <summary>Every lesson, those of the chosen folder included, in the order of their files.</summary>
    public IReadOnlyList<LessonReading> Lessons() => LessonFile.ReadAll(
        options.Folder is { } folder ? [options.Lessons, folder] : [options.Lessons],
        options.Folder is { } own ? [options.Lessons, options.Examples, own] : [options.Lessons, options.Examples]);

    /// <summary>Reads a house from the list.</summary>
    public HouseReading ReadHouse(ShelfFile file) => HouseFile.Read(PathOf(file, Houses));

    /// <summary>Reads a script from the list, for a house.</summary>
    public ScriptReading ReadScript(ShelfFile file, House house) => ScriptFile.Read(PathOf(file, Scripts), house);

    /// <summary>The text of a file from the list; "" when it cannot be read.</summary>
    public string Text(ShelfFile file)
    {
        try
        {
            return File.ReadAllText(PathOf(file, [.. Houses, .. Scripts]));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    private string PathOf(ShelfFile file, IReadOnlyList<ShelfFile> listed)
    {
        if (!listed.Contains(file))
            throw new ArgumentException($"{file.Name} is not on the list.", nameof(file));
        return Path.Combine(file.From == Examples ? options.Examples : options.Folder!, file.Name);
    }

    private List<ShelfFile> Find(string ending)
    {
        List<ShelfFile> found = [.. InFolder(options.Examples, ending).Select(name => new ShelfFile(name, Examples))];
        if (options.Folder is { } folder)
            found.AddRange(InFolder(folder, ending).Select(name => new ShelfFile(name, Chosen)));
        return found;
    }

    private static IEnumerable<string> InFolder(string folder, string ending)
    {
        var all = new DirectoryInfo(folder);
        if (!all.Exists)
            return [];
        return all.EnumerateFiles("*" + ending)
            .Where(file => file.LinkTarget is null)
            .Select(file => file.Name)
            .Order(StringComparer.Ordinal)
            .Take(MostFiles);
    }
}
