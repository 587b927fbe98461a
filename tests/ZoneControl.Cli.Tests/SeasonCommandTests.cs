using System.Text.Json;

namespace ZoneControl.Cli.Tests;

public sealed class SeasonCommandTests : IDisposable
{
    private readonly CommandLine _line = new();

    public void Dispose() => _line.Dispose();

    public static TheoryData<string, string> Sheets => new()
    {
        { "pottery", "start" }, { "pottery", "stop" }, { "toolworks", "start" }, { "toolworks", "stop" },
        { "two-rooms", "start" }, { "two-rooms", "stop" }, { "retrofit", "start" }, { "retrofit", "stop" },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public async Task A_sheet_is_made_from_the_house_with_cautions_and_room_to_write(string name, string what)
    {
        string report = _line.Path("sheet.html");
        (int exit, string output, string error) = await _line.Run("season", _line.Copy(name + ".house.toml"), what, "--report", report);
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        _line.AssertNarrow(output);
        string html = await File.ReadAllTextAsync(report, TestContext.Current.CancellationToken);
        string words = string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        foreach (string caution in (string[])["Hot water scalds", "licensed electrician", "Smell of gas"])
        {
            Assert.Contains(caution, words, StringComparison.Ordinal);
            Assert.Contains(caution, html, StringComparison.Ordinal);
        }

        Assert.Contains("........", output, StringComparison.Ordinal);
        Assert.Contains("sheet-blank", html, StringComparison.Ordinal);
        Assert.Contains("isolating valve", words, StringComparison.Ordinal);
        Assert.Contains("filter", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Commissioning_is_kept_in_the_history_and_next_years_sheet_shows_its_times()
    {
        string house = _line.Copy("pottery.house.toml");
        (int exit, string output, _) = await _line.Run("season", house, "commission", "--keep", "--date", "2026-10-03");
        Assert.Equal(ExitCode.Pass, exit);
        _line.AssertNarrow(output);
        Assert.Contains("GOOD  0 faults, 0 things not known", output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_line.Path("pottery.history"), "2026-10-03-start.json")));

        Assert.Contains("2 min 42 s", (await _line.Run("season", house, "start")).Out, StringComparison.Ordinal);
        (int virtually, string model, _) = await _line.Run("season", house, "history");
        Assert.Equal(ExitCode.Pass, virtually);
        Assert.Contains("the model's valves, not the house's", string.Join(' ', model.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Pass, (await _line.Run("season", house, "record", "--date", "2026-10-04", "--made", "bath=2 min 40 s")).Exit);
        Assert.Equal(ExitCode.Pass, (await _line.Run(
            "season", house, "record", "--date", "2027-10-02", "--made", "bath=3 min 10 s", "--pressure", "20 psi", "--note", "bled the flat")).Exit);
        (int slow, string history, _) = await _line.Run("season", house, "history", "--units", "us");
        Assert.Equal(ExitCode.Fail, slow);
        _line.AssertNarrow(history);
        Assert.Contains("20.0 psi", history, StringComparison.Ordinal);
        Assert.Contains("Bath took 2 min 40 s", history, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse((await _line.Run("season", house, "history", "--json")).Out);
        Assert.Equal(3, json.RootElement.GetProperty("records").GetArrayLength());
    }

    [Theory]
    [InlineData("library")]
    [InlineData("firmware")]
    public async Task A_planted_fault_is_named_with_exit_code_1(string controller)
    {
        (int exit, string output, _) = await _line.Run(
            "season", _line.Copy("toolworks.house.toml"), "commission", "--controller", controller, "--fault", "actuators=hall,washroom", "--date", "2026-10-03", "--json");
        Assert.Equal(ExitCode.Fail, exit);
        using JsonDocument json = JsonDocument.Parse(output);
        JsonElement fault = Assert.Single(json.RootElement.GetProperty("faults").EnumerateArray());
        Assert.Equal("swappedActuators", fault.GetProperty("fault").GetString());
        Assert.Equal(["hall", "washroom"], fault.GetProperty("zones").EnumerateArray().Select(zone => zone.GetString()));
        Assert.Equal(controller, json.RootElement.GetProperty("controller").GetString());
    }

    [Theory]
    [InlineData("springtime", "Known: start, stop, commission, record, history")]
    [InlineData("commission --fault stuk=bath", "Did you mean 'stuck'?")]
    [InlineData("commission --fault stuck=baht", "Did you mean 'bath'?")]
    [InlineData("commission --fault switches=bath,shop", "an end switch")]
    [InlineData("commission --fault pump=off", "There is no pump fault or zone 'off'")]
    [InlineData("commission --controller straight", "There is no controller 'straight'")]
    [InlineData("record", "Nothing to record")]
    [InlineData("record --opened bath", "expected a zone and a time")]
    [InlineData("record --opened bath=quick", "a time")]
    [InlineData("record --made shop=3min", "has no end switch")]
    [InlineData("record --note x --date today", "2026-10-03")]
    [InlineData("record --note x --season summer", "Known: start, stop")]
    public async Task Bad_input_gets_a_message_and_exit_code_2(string words, string expected)
    {
        string[] args = ["season", _line.Copy("pottery.house.toml"), .. words.Split(' ')];
        (int exit, string output, string error) = await _line.Run(args);
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Single(Directory.GetFileSystemEntries(_line.Folder));
    }
}
