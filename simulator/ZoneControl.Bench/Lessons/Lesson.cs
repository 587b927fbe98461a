using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Lessons;

/// <summary>A short lesson: what it is about, a guess, a run that settles it, and why it came out so.</summary>
public sealed record Lesson
{
    /// <summary>Its file's name without the ending; tells lessons apart and gives their order.</summary>
    public required string Id { get; init; }

    /// <summary>Title for people.</summary>
    public required string Title { get; init; }

    /// <summary>What to know beforehand; paragraphs are parted by empty lines.</summary>
    public required string About { get; init; }

    /// <summary>What the learner guesses before the run.</summary>
    public required string Question { get; init; }

    /// <summary>The possible answers, two or more; exactly one is right.</summary>
    public required IReadOnlyList<LessonChoice> Choices { get; init; }

    /// <summary>Moments at which the run halts and something is worth a look, in order of time.</summary>
    public IReadOnlyList<LessonMoment> Moments { get; init; } = [];

    /// <summary>Why it came out so; paragraphs as in <see cref="About"/>.</summary>
    public required string Explanation { get; init; }

    /// <summary>For the teacher's sheet; possibly "".</summary>
    public string Teacher { get; init; } = "";

    /// <summary>Whether the same house without protection runs beside it.</summary>
    public bool Beside { get; init; }

    /// <summary>The house.</summary>
    public required House House { get; init; }

    /// <summary>The run; what it expects is what the learner should see.</summary>
    public required Script Script { get; init; }
}

/// <summary>A possible answer.</summary>
/// <param name="Text">The answer.</param>
/// <param name="Right">Whether it is the right one.</param>
/// <param name="Reply">What is said to somebody who chose it; possibly "".</param>
public sealed record LessonChoice(string Text, bool Right, string Reply);

/// <summary>A moment worth a look.</summary>
/// <param name="AtMs">When, ms from the start.</param>
/// <param name="Text">What to look at.</param>
public sealed record LessonMoment(long AtMs, string Text);

/// <summary>What came of reading a lesson's file.</summary>
/// <param name="FileName">The file, without folders.</param>
/// <param name="Lesson">The lesson; null when a mistake is an error.</param>
/// <param name="Mistakes">Every mistake found, those of its house file included.</param>
public sealed record LessonReading(string FileName, Lesson? Lesson, IReadOnlyList<FileMistake> Mistakes);
