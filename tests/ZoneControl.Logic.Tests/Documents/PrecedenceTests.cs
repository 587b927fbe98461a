namespace ZoneControl.Logic.Tests;

/// <summary>
/// Who wins is measured, not said: each two are put before the controller, and the document shows what it did. It fails when
/// the document in the tree differs; `WRITE_EVIDENCE=1 dotnet test --project tests/ZoneControl.Logic.Tests` writes it anew.
/// </summary>
public class PrecedenceTests
{
    private const string File = "tests/precedence.md";

    public static TheoryData<string> Scenes => [.. Contests.Vetoes.Concat(Contests.Ranks).Select(contest => contest.Scene)];

    [Theory]
    [MemberData(nameof(Scenes))]
    public void Without_the_winner_the_loser_has_its_way(string scene) =>
        Assert.True(Contests.Vetoes.Concat(Contests.Ranks).Single(contest => contest.Scene == scene).IsOne);

    [Fact]
    public void The_document_in_the_tree_is_what_the_controller_does()
    {
        string path = Path.Combine(Root(), File);
        string document = new PrecedenceDocument().Write();
        if (Environment.GetEnvironmentVariable("WRITE_EVIDENCE") == "1")
            System.IO.File.WriteAllText(path, document);

        Assert.Equal(document, System.IO.File.ReadAllText(path));
    }

    [Fact]
    public void Winners_stand_above_losers_and_those_who_never_met_side_by_side() =>
        Assert.Equal("A > B, C > D", string.Join(" > ", PrecedenceDocument
            .Ranks([("A", "B"), ("A", "C"), ("B", "D"), ("C", "D")]).Select(rank => string.Join(", ", rank))));

    private static string Root()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The tests do not run from inside the source tree.");
    }
}
