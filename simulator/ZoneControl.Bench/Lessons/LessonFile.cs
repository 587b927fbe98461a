using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Lessons;

/// <summary>Reads lesson files. Bad content is a list of mistakes, never an exception.</summary>
public static class LessonFile
{
    /// <summary>How the name of a lesson's file ends.</summary>
    public const string Ending = ".lesson.toml";

    /// <summary>Every lesson of some folders, in the order of their names; a name that comes again replaces the first.</summary>
    /// <param name="folders">Folders to look in; those that are not there hold none.</param>
    /// <param name="houseFolders">Where the houses that lessons name are looked for, after the lesson's own folder.</param>
    public static IReadOnlyList<LessonReading> ReadAll(IEnumerable<string> folders, IReadOnlyList<string> houseFolders)
    {
        ArgumentNullException.ThrowIfNull(folders);
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string folder in folders.Where(Directory.Exists))
        {
            foreach (string file in Directory.EnumerateFiles(folder, "*" + Ending))
                files[Path.GetFileName(file)] = file;
        }

        return [.. files.Values.Select(file => Read(file, houseFolders))];
    }

    /// <summary>Reads a lesson from disk: UTF-8, at most 1 MiB.</summary>
    /// <param name="path">The lesson's file.</param>
    /// <param name="houseFolders">Where its house is looked for, after the lesson's own folder.</param>
    public static LessonReading Read(string path, IReadOnlyList<string> houseFolders)
    {
        string name = Path.GetFileName(path);
        var mistakes = new MistakeList(name);
        string? text = TextFile.Read(path, mistakes);
        if (text is null)
            return new LessonReading(name, null, mistakes.InOrder());
        string own = Path.GetDirectoryName(Path.GetFullPath(path)) ?? "";
        return Parse(text, name, file => House(file, [own, .. houseFolders]));
    }

    /// <summary>Reads a lesson from text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">What messages call the file.</param>
    /// <param name="house">Reads the house file of a name; null when there is none.</param>
    public static LessonReading Parse(string text, string fileName, Func<string, HouseReading?> house)
    {
        ArgumentNullException.ThrowIfNull(house);
        string name = Path.GetFileName(fileName);
        var mistakes = new MistakeList(name);
        var table = new TableReader(TomlText.Read(text, mistakes), "", mistakes);
        string id = name.EndsWith(Ending, StringComparison.Ordinal) ? name[..^Ending.Length] : name;
        (Lesson? lesson, IReadOnlyList<FileMistake> houseMistakes) = Read(table, id, house);
        FileMistake[] all = [.. mistakes.InOrder(), .. houseMistakes];
        return new LessonReading(name, all.Any(mistake => mistake.IsError) ? null : lesson, all);
    }

    private static (Lesson? Lesson, IReadOnlyList<FileMistake> HouseMistakes) Read(
        TableReader file, string id, Func<string, HouseReading?> houses)
    {
        string? title = file.Text("title", 60, required: true);
        string? about = file.Text("about", 4000, required: true, severalLines: true);
        string? question = file.Text("question", 300, required: true);
        string? explanation = file.Text("explanation", 4000, required: true, severalLines: true);
        string teacher = file.Text("for_teacher", 4000, severalLines: true) ?? "";
        bool beside = file.Flag("beside") ?? false;
        string? houseName = file.Word("house", "the name of a house file", required: true);
        HouseReading? reading = houseName is null ? null : FindHouse(file, houseName, houses);
        List<LessonChoice?> choices = [.. file.Tables("choice").Select(Choice)];
        List<LessonMoment?> moments = [.. file.Tables("moment").Select(Moment)];
        TableReader? run = file.Table("run", required: true);
        Script? script = reading?.House is { } house && run is not null ? ScriptReader.Read(run, house) : null;
        file.End();
        CheckChoices(file, choices);
        foreach (LessonMoment late in moments.OfType<LessonMoment>().Where(moment => moment.AtMs > script?.DurationMs))
        {
            file.Error("moment", $"a moment at {Durations.InWords(late.AtMs)}",
                $"moments up to {Durations.InWords(script!.DurationMs)}, the duration of the run");
        }

        IReadOnlyList<FileMistake> houseMistakes = reading?.Mistakes ?? [];
        if (title is null || about is null || question is null || explanation is null || script is null)
            return (null, houseMistakes);
        var lesson = new Lesson
        {
            Id = id,
            Title = title,
            About = about,
            Question = question,
            Choices = [.. choices.OfType<LessonChoice>()],
            Moments = [.. moments.OfType<LessonMoment>().OrderBy(moment => moment.AtMs)],
            Explanation = explanation,
            Teacher = teacher,
            Beside = beside,
            House = reading!.House!,
            Script = script,
        };
        return (lesson, houseMistakes);
    }

    private static HouseReading? FindHouse(TableReader file, string name, Func<string, HouseReading?> houses)
    {
        const string Expected = "the name of a house file beside the lesson or among the examples";
        bool plain = name.Length is > 0 and <= 100 && name == Path.GetFileName(name) && !name.Contains('\\', StringComparison.Ordinal);
        HouseReading? found = plain ? houses(name) : null;
        if (found is null)
            file.Error("house", Words.Quote(name), Expected);
        return found;
    }

    private static HouseReading? House(string name, IEnumerable<string> folders)
    {
        string? path = folders.Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);
        return path is null ? null : HouseFile.Read(path);
    }

    private static LessonChoice? Choice(TableReader table)
    {
        string? text = table.Text("text", 200, required: true);
        bool right = table.Flag("right") ?? false;
        string reply = table.Text("reply", 400) ?? "";
        table.End();
        return text is null ? null : new LessonChoice(text, right, reply);
    }

    private static LessonMoment? Moment(TableReader table)
    {
        TimeSpan? at = table.Time("at", "0 s", "7 d", required: true);
        string? text = table.Text("text", 400, required: true);
        table.End();
        return at is { } time && text is not null ? new LessonMoment((long)time.TotalMilliseconds, text) : null;
    }

    private static void CheckChoices(TableReader file, List<LessonChoice?> choices)
    {
        if (choices.Count < 2)
            file.Missing("choice", "two answers or more, each a [[choice]]");
        int right = choices.Count(choice => choice is { Right: true });
        if (choices.Count >= 2 && right != 1 && !choices.Contains(null))
            file.Error("choice", $"{right} right answers", "exactly one choice with right = true");
    }
}
