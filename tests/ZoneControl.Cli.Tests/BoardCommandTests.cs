using System.Text.Json;

namespace ZoneControl.Cli.Tests;

/// <summary>What <c>board</c> prints, writes and refuses.</summary>
public sealed class BoardCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-board").FullName;

    public static TheoryData<string> Houses => ["pottery", "retrofit", "toolworks", "two-rooms"];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [MemberData(nameof(Houses))]
    public async Task It_prints_what_is_kept_beside_this_test_in_80_columns(string house)
    {
        (int exit, string output, string error) = await Run("board", Example(house));
        string kept = Path.Combine(SourceTree.Root(), "tests", "ZoneControl.Cli.Tests", "Golden", $"board-{house}.txt");
        if (Environment.GetEnvironmentVariable("WRITE_GOLDEN") is "1")
            await File.WriteAllTextAsync(kept, output, TestContext.Current.CancellationToken);

        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
        Assert.True(await File.ReadAllTextAsync(kept, TestContext.Current.CancellationToken) == output, $"{kept} differs; WRITE_GOLDEN=1 writes it anew");
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public async Task Every_sheet_carries_the_cautions(string house)
    {
        string text = string.Join(' ', (await Run("board", Example(house))).Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        foreach (string caution in (string[])["licensed electrician", "Class 2 or SELV", "limits, relief valves and safety devices stay in charge", "local code", "nothing here is certified"])
            Assert.Contains(caution, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_says_the_same_and_holds_the_settings()
    {
        (int exit, string output, _) = await Run("board", Example("toolworks"), "--json");
        JsonElement json = JsonDocument.Parse(output).RootElement;

        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal(("zonecontrol.board.1", "chains"), (json.GetProperty("schema").GetString(), json.GetProperty("arrangement").GetString()));
        string fingerprint = json.GetProperty("fingerprint").GetString()!;
        Assert.Contains($"Fingerprint = \"{fingerprint}\"", json.GetProperty("settings").GetString(), StringComparison.Ordinal);
        Assert.Contains(fingerprint, (await Run("board", Example("toolworks"))).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_settings_file_is_the_one_in_the_json()
    {
        string path = Path.Combine(_folder, "GeneratedSettings.cs");

        (int exit, string output, _) = await Run("board", Example("pottery"), "--settings", path);
        string json = JsonDocument.Parse((await Run("board", Example("pottery"), "--json")).Output).RootElement.GetProperty("settings").GetString()!;

        Assert.Equal(ExitCode.Pass, exit);
        Assert.EndsWith($"Settings written to {path}\n", output, StringComparison.Ordinal);
        Assert.Equal(json, await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_house_with_pin_mistakes_is_refused_by_name_and_nothing_is_generated()
    {
        string house = Path.Combine(_folder, "bad.house.toml");
        string settings = Path.Combine(_folder, "GeneratedSettings.cs");
        await File.WriteAllTextAsync(house, await File.ReadAllTextAsync(Example("pottery"), TestContext.Current.CancellationToken)
            + "\n[board.pin]\npump = 12\nheat = 34\nheartbeat = 12\n", TestContext.Current.CancellationToken);

        (int exit, string output, string error) = await Run("board", house, "--settings", settings);

        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains("pin 12 cannot be pump: it is a strapping pin", error, StringComparison.Ordinal);
        Assert.Contains("pin 34 cannot be heat demand: it is input-only", error, StringComparison.Ordinal);
        Assert.Contains("pin 12 cannot be heartbeat", error, StringComparison.Ordinal);
        Assert.EndsWith("3 mistakes; nothing was generated.\n", error, StringComparison.Ordinal);
        Assert.False(File.Exists(settings));
    }

    [Fact]
    public async Task The_settings_do_not_replace_the_house_file()
    {
        string house = Path.Combine(_folder, "x.house.toml");
        File.Copy(Example("pottery"), house);

        (int exit, _, string error) = await Run("board", house, "--settings", house);

        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("is also the house file", error, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllBytesAsync(Example("pottery"), TestContext.Current.CancellationToken), await File.ReadAllBytesAsync(house, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("direct")]
    [InlineData("chains")]
    public async Task A_run_with_the_firmware_has_the_librarys_verdict_and_keeps_the_boards_log(string pins)
    {
        string log = Path.Combine(_folder, "board.log");
        string script = Path.Combine(SourceTree.Root(), "simulator", "examples", "two-rooms-evening.script.toml");

        (int exit, string output, _) = await Run("run", Example("two-rooms"), script, "--controller", "firmware", "--pins", pins, "--board-log", log);

        Assert.Equal(ExitCode.Pass, exit);
        Assert.Contains("PASS", output, StringComparison.Ordinal);
        string first = (await File.ReadAllLinesAsync(log, TestContext.Current.CancellationToken))[0];
        Assert.StartsWith("@0 boot log=1 fp=", first, StringComparison.Ordinal);
        Assert.EndsWith($" pins={pins}", first, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--pins", "direct", "--pins is for the firmware; add --controller firmware.")]
    [InlineData("--board-log", "x.log", "--board-log is for the firmware; add --controller firmware.")]
    public async Task Options_of_the_firmware_want_the_firmware(string option, string value, string message)
    {
        string script = Path.Combine(SourceTree.Root(), "simulator", "examples", "two-rooms-evening.script.toml");

        (int exit, _, string error) = await Run("run", Example("two-rooms"), script, option, value);

        Assert.Equal((ExitCode.BadInput, message + "\n"), (exit, error));
    }

    [Fact]
    public async Task An_arrangement_that_is_not_known_is_refused_with_the_nearest()
    {
        string script = Path.Combine(SourceTree.Root(), "simulator", "examples", "two-rooms-evening.script.toml");

        (int exit, _, string error) = await Run("run", Example("two-rooms"), script, "--controller", "firmware", "--pins", "chain");

        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("Did you mean 'chains'?", error, StringComparison.Ordinal);
    }

    private static string Example(string house) => Path.Combine(SourceTree.Root(), "simulator", "examples", house + ".house.toml");

    private static async Task<(int Exit, string Output, string Error)> Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int exit = await App.RunAsync(args, new Streams(output, error, false), TestContext.Current.CancellationToken);
        return (exit, output.ToString(), error.ToString());
    }
}
