using System.Text.Json;

namespace ZoneControl.Cli.Tests;

public sealed class ProveTests : IDisposable
{
    // One room with a slow valve and nothing else that could be sensed: seconds to prove.
    private const string OneRoom = """
        name = "One room"

        [pump]
        curve = [["0 L/min", "4 m"], ["20 L/min", "0 m"]]
        power = "30 W"

        [mains]
        length = "8 m"
        inside = "20 mm"

        [[manifold]]
        name = "only"

        [every_loop]
        tube = "16x2 mm"

        [[actuator]]
        name = "wax"
        kind = "two-wire"
        opening_time = "3 min"

        [[zone]]
        name = "room"
        label = "Room"
        actuator = "wax"
        loops = [{ length = "80 m" }]

        [controller]
        minimum_open = 1
        exercise_interval = "0 s"
        """;

    private readonly CommandLine _line = new();
    private readonly string _house;

    public ProveTests()
    {
        _house = _line.Path("one.house.toml");
        File.WriteAllText(_house, OneRoom);
    }

    public void Dispose() => _line.Dispose();

    [Fact]
    public async Task A_small_house_is_proven_and_the_report_says_of_what()
    {
        (int exit, string output, string error) = await _line.Run("prove", _house);

        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        foreach (string said in (string[])["PROVEN", "Scaled times", "Assumed:", "power cut", "128-bit hashes"])
            Assert.Contains(said, output, StringComparison.Ordinal);
        _line.AssertNarrow(output);
    }

    [Fact]
    public async Task A_limit_ends_the_search_with_an_exit_code_of_its_own_and_proves_nothing()
    {
        (int exit, string output, _) = await _line.Run("prove", _line.Copy("two-rooms.house.toml"), "--max-states", "3000", "--script", _line.Path("s.toml"));

        Assert.Equal(ExitCode.Explored, exit);
        Assert.Contains("EXPLORED", output, StringComparison.Ordinal);
        Assert.Contains("That is no proof. Stopped: the most states were visited.", Joined(output), StringComparison.Ordinal);
        Assert.Contains("There is no script to write", output, StringComparison.Ordinal);
        Assert.False(File.Exists(_line.Path("s.toml")));
    }

    [Fact]
    public async Task Without_proof_the_shortest_way_to_harm_is_written_as_a_script_that_run_fails_too()
    {
        (int exit, string output, string error) = await _line.Run(
            "prove", _house, "--without", "proof", "--script", _line.Path("harm.script.toml"), "--report", _line.Path("harm.html"));

        Assert.Equal((ExitCode.Fail, ""), (exit, error));
        foreach (string said in (string[])["What if: ", "The shortest way to break a rule", "It asks: ", "BROKEN", "Script written to", "Report written to"])
            Assert.Contains(said, output, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", await File.ReadAllTextAsync(_line.Path("harm.html"), TestContext.Current.CancellationToken), StringComparison.Ordinal);

        (int again, string told, _) = await _line.Run("run", _house, _line.Path("harm.script.toml"), "--controller", "library", "--without", "proof");
        Assert.Equal(ExitCode.Fail, again);
        Assert.Contains("BROKEN", told, StringComparison.Ordinal);
        (int sound, _, _) = await _line.Run("run", _house, _line.Path("harm.script.toml"), "--controller", "library");
        Assert.Equal(ExitCode.Pass, sound);
    }

    [Fact]
    public async Task The_JSON_result_has_the_verdict_the_searches_and_the_breach_with_its_script()
    {
        (_, string proven, _) = await _line.Run("prove", _house, "--json");
        using JsonDocument good = JsonDocument.Parse(proven);
        Assert.Equal("zonecontrol.prove.1", good.RootElement.GetProperty("schema").GetString());
        Assert.Equal("proven", good.RootElement.GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Null, good.RootElement.GetProperty("broken").ValueKind);
        Assert.Equal(
            good.RootElement.GetProperty("states").GetInt64(),
            good.RootElement.GetProperty("searches").EnumerateArray().Sum(search => search.GetProperty("states").GetInt64()));

        (int exit, string broken, string error) = await _line.Run("prove", _house, "--without", "proof", "--json", "--script", _line.Path("s.toml"));
        using JsonDocument bad = JsonDocument.Parse(broken);
        Assert.Equal(ExitCode.Fail, exit);
        Assert.StartsWith("Script written to ", error, StringComparison.Ordinal);
        Assert.Equal("broken", bad.RootElement.GetProperty("verdict").GetString());
        Assert.Equal(
            await File.ReadAllTextAsync(_line.Path("s.toml"), TestContext.Current.CancellationToken),
            bad.RootElement.GetProperty("broken").GetProperty("script").GetString());
    }

    [Theory]
    [InlineData("--max-time 0", "--max-time: found 0, expected 1 or more")]
    [InlineData("--max-states 0", "--max-states: found 0, expected 1 or more")]
    [InlineData("--without pump", "'pump'")]
    [InlineData("--script one.house.toml", "is also the house file; choose another name.")]
    [InlineData("--script s.toml --report s.toml", "is also --script; choose another name.")]
    public async Task What_cannot_be_used_is_refused_before_anything_is_searched(string options, string said)
    {
        string[] words = [.. options.Split(' ').Select(word => word.EndsWith(".toml", StringComparison.Ordinal) ? _line.Path(word) : word)];

        (int exit, string output, string error) = await _line.Run(["prove", _house, .. words]);

        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mistakes_in_the_house_file_are_all_told()
    {
        await File.WriteAllTextAsync(
            _house, OneRoom.Replace("3 min", "never", StringComparison.Ordinal).Replace("80 m", "80", StringComparison.Ordinal),
            TestContext.Current.CancellationToken);

        (int exit, _, string error) = await _line.Run("prove", _house);

        Assert.Equal(ExitCode.BadInput, exit);
        Assert.EndsWith("2 mistakes; nothing was searched.\n", error, StringComparison.Ordinal);
    }

    private static string Joined(string output) => string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
