using System.Text.Json;
using ZoneControl.Cli.Commands;

namespace ZoneControl.Cli.Tests;

public sealed class AppTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Path(string name) => System.IO.Path.Combine(_folder, name);

    private static async Task<(int Exit, string Out, string Error)> Run(CancellationToken cancel, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int exit = await App.RunAsync(args, new Streams(output, error, OutIsTerminal: false), cancel);
        return (exit, output.ToString(), error.ToString());
    }

    private static Task<(int Exit, string Out, string Error)> Run(params string[] args) =>
        Run(TestContext.Current.CancellationToken, args);

    [Fact]
    public async Task Alone_it_runs_the_demo_passes_and_ends_with_where_to_look_and_the_caution()
    {
        (int exit, string output, string error) = await Run();
        Assert.Equal("", error);
        Assert.Equal(ExitCode.Pass, exit);
        int verdict = output.IndexOf("PASS  ", StringComparison.Ordinal);
        int next = output.IndexOf("Where to look next", StringComparison.Ordinal);
        int caution = output.IndexOf("It never replaces a limit, relief valve", StringComparison.Ordinal);
        Assert.True(verdict > 0 && next > verdict && caution > next);
        string examples = System.IO.Path.Combine("examples", "");
        Assert.All(
            output.Split('\n').Where(line => !line.Contains(examples, StringComparison.Ordinal)),
            line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public async Task The_demo_deadheads_without_the_controller_and_not_with_it()
    {
        (int exit, string output, string error) = await Run("--json");
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        using JsonDocument json = JsonDocument.Parse(output);
        JsonElement runs = json.RootElement.GetProperty("runs");
        Assert.Equal(0, runs[0].GetProperty("totals").GetProperty("deadheadS").GetDouble());
        Assert.True(runs[1].GetProperty("totals").GetProperty("deadheadS").GetDouble() > 60);
    }

    [Fact]
    public async Task The_verdict_on_the_plain_wiring_fails_with_exit_code_1()
    {
        (int exit, string output, _) = await Run("--controller", "straight");
        Assert.Equal(ExitCode.Fail, exit);
        Assert.Contains("PUMP-PROOF BROKEN at ", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Side by side", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Report_and_trace_are_written_whole()
    {
        (int exit, string output, _) = await Run("--report", Path("r.html"), "--trace", Path("t.csv"));
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Contains($"Report written to {Path("r.html")}", output, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", await File.ReadAllTextAsync(Path("r.html"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        string[] lines = await File.ReadAllLinesAsync(Path("t.csv"), TestContext.Current.CancellationToken);
        int columns = lines[0].Split(',').Length;
        Assert.True(lines.Length > 100);
        Assert.All(lines, line => Assert.Equal(columns, line.Split(',').Length));
        Assert.Equal(2, Directory.GetFileSystemEntries(_folder).Length);
    }

    [Fact]
    public async Task Run_takes_a_house_and_a_script()
    {
        string examples = System.IO.Path.Combine(AppContext.BaseDirectory, "examples");
        (int exit, string output, _) = await Run(
            "run", System.IO.Path.Combine(examples, "two-rooms.house.toml"), System.IO.Path.Combine(examples, "two-rooms-evening.script.toml"));
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Contains("Two rooms: 2 zones, 4 loops, 1 manifold", output, StringComparison.Ordinal);
        Assert.Contains("°F", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Where to look next", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_house_file_with_five_mistakes_gets_five_messages_and_exit_code_2()
    {
        string good = await File.ReadAllTextAsync(DemoFiles.Find().House, TestContext.Current.CancellationToken);
        string bad = good + """

            [[zone]]
            name = "attic"
            lable = "Attic"
            actuator = "no-such-actuator"
            capacity = "two"
            loops = [{ length = "80 kg" }, { lenght = "80 m" }]
            """;
        await File.WriteAllTextAsync(Path("bad.toml"), bad, TestContext.Current.CancellationToken);
        (int exit, string output, string error) = await Run("run", Path("bad.toml"), DemoFiles.Find().Script);
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Equal("", output);
        foreach (string named in (string[])["lable", "no-such-actuator", "two", "80 kg", "lenght"])
            Assert.Contains(named, error, StringComparison.Ordinal);
        Assert.True(error.Split('\n').Count(line => line.Contains("bad.toml:", StringComparison.Ordinal)) >= 5, error);
        Assert.Contains("nothing was run", error, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> BadLines => new()
    {
        { "rnu a b", "There is no command 'rnu'. Did you mean 'run'?" },
        { "--reprot x", "There is no option '--reprot'. Did you mean '--report'?" },
        { "--report", "Option '--report' needs a value: --report FILE." },
        { "--report --json", "Option '--report' needs a value: --report FILE." },
        { "--controller straigth", "There is no controller 'straigth'. Did you mean 'straight'?" },
        { "run a", "missing required argument 'SCRIPT'" },
        { "run a b c", "'c'" },
        { "-x", "Unknown option 'x'" },
        { "winter h --seed abc", "--seed: found \"abc\", expected a whole number" },
        { "winter h --days 1.5 --seed=x", "--seed: found \"x\", expected a whole number" },
        { "winter h --days 99999999999", "--days: found \"99999999999\", expected a smaller number" },
        { "new h --minimum-open two", "--minimum-open: found \"two\", expected a whole number" },
        { "season", "'zonecontrol season --help' shows what it takes" },
        { "run nowhere.toml b", "nowhere.toml: no such file; nothing was run." },
        { "--trace same --report same", "--trace same: is also --report" },
        { "--report no/such/folder/r.html", "does not exist" },
    };

    [Theory]
    [MemberData(nameof(BadLines))]
    public async Task Bad_input_gets_a_message_exit_code_2_and_nothing_on_standard_output(string line, string expected)
    {
        (int exit, string output, string error) = await Run(line.Split(' '));
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Equal("", output);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Nullable", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_result_never_replaces_the_file_it_was_made_from()
    {
        string house = Path("h.toml");
        File.Copy(DemoFiles.Find().House, house);
        (int exit, _, string error) = await Run("run", house, DemoFiles.Find().Script, "--report", house);
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("is also the house file", error, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllBytesAsync(DemoFiles.Find().House, TestContext.Current.CancellationToken), await File.ReadAllBytesAsync(house, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Stopped_it_says_so_with_exit_code_130_and_leaves_no_file()
    {
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        (int exit, _, string error) = await Run(stop.Token, "--report", Path("r.html"), "--trace", Path("t.csv"));
        Assert.Equal(ExitCode.Cancelled, exit);
        Assert.Equal("Stopped. No file was written.\n", error);
        Assert.Empty(Directory.GetFileSystemEntries(_folder));
    }

    [Theory]
    [InlineData("run")]
    [InlineData("new")]
    [InlineData("check")]
    [InlineData("compare")]
    [InlineData("season")]
    [InlineData("board")]
    [InlineData("serve")]
    [InlineData("winter")]
    [InlineData("audit")]
    [InlineData("prove")]
    public async Task Examples_of_a_commands_help_stand_on_one_line_each(string command)
    {
        string help = (await Run(command, "--help")).Out;
        string[] examples = [.. help.Split('\n').SkipWhile(line => line != "EXAMPLES:").Skip(1).TakeWhile(line => line.Length > 0)];
        Assert.NotEmpty(examples);
        Assert.All(examples, line => Assert.StartsWith($"    zonecontrol {command}", line, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Help_and_version_are_there()
    {
        (int exit, string output, _) = await Run("--help");
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Contains("run <HOUSE> <SCRIPT>", output, StringComparison.Ordinal);
        Assert.Contains("never replaces a limit", string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Matches(@"^\d+\.\d+\.\d+\s*$", (await Run("--version")).Out);
        Assert.Contains("--trace <FILE>", (await Run("run", "--help")).Out, StringComparison.Ordinal);
    }
}
