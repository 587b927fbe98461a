using System.Text.Json;

namespace ZoneControl.Cli.Tests;

public sealed class AuditTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Path(string name) => System.IO.Path.Combine(_folder, name);

    private static string Example(string name) => System.IO.Path.Combine(AppContext.BaseDirectory, "examples", name);

    private static async Task<(int Exit, string Out, string Error)> Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int exit = await App.RunAsync(args, new Streams(output, error, OutIsTerminal: false), TestContext.Current.CancellationToken);
        return (exit, output.ToString(), error.ToString());
    }

    [Fact]
    public async Task A_run_s_own_dump_passes_and_says_what_was_read()
    {
        string vcd = Path("evening.vcd");
        Assert.Equal(ExitCode.Pass, (await Run("run", Example("two-rooms.house.toml"), Example("two-rooms-evening.script.toml"), "--vcd", vcd)).Exit);
        (int exit, string output, string error) = await Run("audit", Example("two-rooms.house.toml"), vcd);
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.Contains("Every rule that was called upon was kept.", output, StringComparison.Ordinal);
        Assert.Contains("contacts published as wired: kept", string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_panel_s_capture_fails_in_80_columns_with_what_was_not_judged_and_a_report()
    {
        (int exit, string output, string error) = await Run(
            "audit", Example("bakery.house.toml"), Example("bakery-panel.csv"), "--map", Example("bakery-panel.map.toml"), "--report", Path("p.html"));
        Assert.Equal((ExitCode.Fail, ""), (exit, error));
        Assert.Contains("PUMP-PROOF BROKEN at 17:32:00.2", output, StringComparison.Ordinal);
        Assert.Contains("not captured: power_up", output, StringComparison.Ordinal);
        Assert.Contains("No measurement, and no part of the verdict.", output, StringComparison.Ordinal);
        Assert.All(
            output.Split('\n').Where(line => !line.Contains(_folder, StringComparison.Ordinal)),
            line => Assert.True(line.Length <= 80, line));
        string html = await File.ReadAllTextAsync(Path("p.html"), TestContext.Current.CancellationToken);
        Assert.Contains("ZoneControl capture report", html, StringComparison.Ordinal);
        Assert.Contains("not captured: power_up", html, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_JSON_result_says_which_rules_were_not_judged()
    {
        (int exit, string output, _) = await Run(
            "audit", Example("bakery.house.toml"), Example("bakery-panel.csv"), "--map", Example("bakery-panel.map.toml"), "--json");
        Assert.Equal(ExitCode.Fail, exit);
        using JsonDocument json = JsonDocument.Parse(output);
        Assert.Equal("zonecontrol.audit.1", json.RootElement.GetProperty("schema").GetString());
        Assert.False(json.RootElement.GetProperty("passed").GetBoolean());
        JsonElement why = json.RootElement.GetProperty("rules").EnumerateArray().Single(rule => rule.GetProperty("rule").GetString() == "ANSWER-WHY");
        Assert.Equal("notJudged", why.GetProperty("judgement").GetString());
    }

    [Theory]
    [InlineData("nothing here\n", "expected a header line that names time and channels")]
    [InlineData("", "an empty file")]
    public async Task What_is_no_capture_is_refused_with_exit_code_2(string content, string expected)
    {
        await File.WriteAllTextAsync(Path("c"), content, TestContext.Current.CancellationToken);
        (int exit, string output, string error) = await Run("audit", Example("bakery.house.toml"), Path("c"), "--report", Path("r.html"));
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Single(error.TrimEnd('\n').Split('\n'));
        Assert.False(File.Exists(Path("r.html")));
    }

    [Fact]
    public async Task A_map_s_mistakes_are_told_all_at_once()
    {
        await File.WriteAllTextAsync(
            Path("m.toml"), "never = [\"lat\"]\nglich = \"1 s\"\n[[channel]]\nsignal = \"D0\"\nis = \"pmup\"\nactive = \"down\"\n",
            TestContext.Current.CancellationToken);
        (int exit, _, string error) = await Run("audit", Example("bakery.house.toml"), Example("bakery-panel.csv"), "--map", Path("m.toml"));
        Assert.Equal(ExitCode.BadInput, exit);
        foreach (string said in (string[])["\"late\"", "did you mean \"glitch\"?", "did you mean \"pump\"?", "found \"down\"", "4 mistakes; nothing was judged."])
            Assert.Contains(said, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task House_and_script_swapped_get_one_line()
    {
        (int exit, _, string error) = await Run("run", Example("two-rooms-evening.script.toml"), Example("two-rooms.house.toml"));
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("is a script file; the house file comes first", Assert.Single(error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_house_s_script_is_told_once()
    {
        (int exit, _, string error) = await Run("run", Example("two-rooms.house.toml"), Example("pottery-first-cold-morning.script.toml"));
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("is this the script of another house?", error, StringComparison.Ordinal);
        Assert.Single(error.Split('\n'), line => line.Contains("no zone of this house", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Help_without_dashes_points_to_help()
    {
        (int exit, _, string error) = await Run("help");
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("zonecontrol --help", error, StringComparison.Ordinal);
    }
}
