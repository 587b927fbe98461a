using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Lessons;
using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Tests.Lessons;

/// <summary>Every lesson that ships is read and run, and shows what it says; a broken one is refused with its lines.</summary>
public class LessonTests
{
    private static readonly string _folder = Path.Combine(SourceFolder(), "simulator", "lessons");

    private static readonly string[] _houses = [Path.Combine(SourceFolder(), "simulator", "examples")];

    public static TheoryData<string> Shipped => [.. Directory.EnumerateFiles(_folder, "*.lesson.toml").Select(file => Path.GetFileName(file)).Order()];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void A_lesson_shows_what_it_says(string file)
    {
        LessonReading reading = LessonFile.Read(Path.Combine(_folder, file), _houses);
        Assert.Empty(reading.Mistakes);
        Lesson lesson = reading.Lesson!;
        Assert.NotEmpty(lesson.Script.Expectations);
        Assert.NotEmpty(lesson.Moments);
        Assert.All(lesson.Choices, choice => Assert.NotEmpty(choice.Reply));
        Assert.NotEmpty(lesson.Teacher);

        Run run = Runner.Run(
            lesson.House, lesson.Script, settings => new LibraryController(settings), cancel: TestContext.Current.CancellationToken);

        Assert.All(run.Expectations, expected => Assert.True(expected.Met, $"{expected.Text}: {expected.Why}"));
        Assert.True(run.Passed);
    }

    [Fact]
    public void There_are_at_least_eight_and_each_rightness_is_told_apart_from_its_place()
    {
        Lesson[] lessons = [.. LessonFile.ReadAll([_folder], _houses).Select(reading => reading.Lesson!)];

        Assert.True(lessons.Length >= 8);
        Assert.True(lessons.Select(lesson => lesson.Choices.ToList().FindIndex(choice => choice.Right)).Distinct().Count() > 1);
    }

    [Fact]
    public void A_lesson_of_the_chosen_folder_comes_beside_the_others_and_one_of_the_same_name_replaces_it()
    {
        string own = Directory.CreateTempSubdirectory("zonecontrol-lessons-").FullName;
        try
        {
            string first = Directory.EnumerateFiles(_folder, "*.lesson.toml").Order().First();
            string text = File.ReadAllText(first);
            File.WriteAllText(Path.Combine(own, "99-mine.lesson.toml"), text.Replace("title = \"Why", "title = \"My why", StringComparison.Ordinal));
            File.WriteAllText(Path.Combine(own, Path.GetFileName(first)), text.Replace("title = \"Why", "title = \"Your why", StringComparison.Ordinal));

            LessonReading[] all = [.. LessonFile.ReadAll([_folder, own], [_folder, .. _houses])];

            Assert.StartsWith("My why", all[^1].Lesson!.Title, StringComparison.Ordinal);
            Assert.StartsWith("Your why", all[0].Lesson!.Title, StringComparison.Ordinal);
            Assert.Equal(Shipped.Count + 1, all.Length);
        }
        finally
        {
            Directory.Delete(own, recursive: true);
        }
    }

    [Fact]
    public void Every_mistake_of_a_lesson_is_told_with_its_line()
    {
        const string Text = """
            title = "Broken"
            about = "x"
            question = "y?"
            explanation = "z"
            house = "../pottery.house.toml"
            colour = "red"

            [[choice]]
            text = "one"

            [[choice]]
            text = "two"

            [run]
            title = "r"
            duration = "1 min"
            """;

        LessonReading reading = LessonFile.Parse(Text, "b.lesson.toml", _ => throw new InvalidOperationException("no path may be asked for"));

        Assert.Null(reading.Lesson);
        Assert.Contains(reading.Mistakes, m => m.Line == 5 && m.Found.Contains("pottery", StringComparison.Ordinal));
        Assert.Contains(reading.Mistakes, m => m.Line == 6 && m.Found == "an unknown key");
        Assert.Contains(reading.Mistakes, m => m.Line == 8 && m.Found == "0 right answers");
    }

    [Fact]
    public void Mistakes_of_the_run_and_of_the_house_are_told_too()
    {
        string text = File.ReadAllText(Path.Combine(_folder, "03-companions.lesson.toml"))
            .Replace("call = \"bath\"", "call = \"bathroom\"", StringComparison.Ordinal)
            .Replace("at = \"6 min\"\ntext", "at = \"60 min\"\ntext", StringComparison.Ordinal);

        LessonReading other = LessonFile.Parse(text, "c.lesson.toml", _ => HouseFile.Read(Path.Combine(_folder, "cottage.house.toml")));
        Assert.Contains(other.Mistakes, m => m.Found.Contains("bathroom", StringComparison.Ordinal) && m.Line > 0);
        Assert.Contains(other.Mistakes, m => m.Found.Contains("a moment at 1 h", StringComparison.Ordinal));

        LessonReading broken = LessonFile.Parse(text, "c.lesson.toml", _ => HouseFile.Parse("name = 3", "h.house.toml"));
        Assert.Contains(broken.Mistakes, m => m.File == "h.house.toml");
        Assert.Null(broken.Lesson);
    }

    private static string SourceFolder()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The tests do not lie in the source tree.");
    }
}
