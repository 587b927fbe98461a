using System.Text.Json;

namespace ZoneControl.Cli.Tests;

public sealed class CheckCommandTests : IDisposable
{
    private readonly CommandLine _line = new();

    public void Dispose() => _line.Dispose();

    public static TheoryData<string> Houses => ["pottery", "toolworks", "two-rooms", "retrofit"];

    [Theory]
    [MemberData(nameof(Houses))]
    public async Task An_example_house_passes_and_is_read_at_80_columns_in_both_units(string name)
    {
        string house = _line.Copy(name + ".house.toml");
        foreach (string units in (string[])["si", "us"])
        {
            (int exit, string output, _) = await _line.Run("check", house, "--capacity", "--units", units);
            Assert.Equal(ExitCode.Pass, exit);
            _line.AssertNarrow(output);
            Assert.Contains(units == "us" ? " gpm" : " L/min", output, StringComparison.Ordinal);
            Assert.DoesNotContain(units == "us" ? " L/min" : " gpm", output, StringComparison.Ordinal);
            Assert.Contains("ADVICE  0 faults", output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_a_finding_rests_on_begins_with_words_and_a_loops_name_stays_on_one_line()
    {
        string output = (await _line.Run("check", _line.Copy("toolworks.house.toml"))).Out;
        Assert.Contains("rule VALVE-STAGGER", string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.DoesNotMatch("Rests on: [A-Z]+-[A-Z]", output);
        string pottery = (await _line.Run("check", _line.Copy("pottery.house.toml"))).Out;
        Assert.Matches("\n  Throwing room 1 .* 0\\.[0-9]+\n", pottery);
    }

    [Fact]
    public async Task A_fault_is_exit_code_1_and_JSON_carries_its_number()
    {
        string house = _line.Copy("pottery.house.toml");
        await File.WriteAllTextAsync(house, (await File.ReadAllTextAsync(house, TestContext.Current.CancellationToken))
            .Replace("minimum_open = 2", "minimum_open = 1", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        (int exit, string output, _) = await _line.Run("check", house, "--json");
        Assert.Equal(ExitCode.Fail, exit);
        using JsonDocument json = JsonDocument.Parse(output);
        JsonElement finding = json.RootElement.GetProperty("findings").EnumerateArray().Single(f => f.GetProperty("topic").GetString() == "minimum open");
        Assert.Equal("fault", finding.GetProperty("kind").GetString());
        Assert.InRange(finding.GetProperty("value").GetDouble(), 1, 6);
        Assert.Equal("zonecontrol.check.1", json.RootElement.GetProperty("schema").GetString());
    }

    [Theory]
    [InlineData("--spacing", "8", "without a unit")]
    [InlineData("--drop", "50", "--drop: found \"50 K\", expected 1 to 20 K (1.8 to 36 °F)")]
    [InlineData("--drop", "90 °F", "--drop: found \"90 °F\", expected 1 to 20 K (1.8 to 36 °F)")]
    [InlineData("--heat", "warm", "--heat: found \"warm\", expected heat given by a floor such as")]
    [InlineData("--units", "metric", "Known: si, us")]
    [InlineData("--design-flow", "2 m", "a flow")]
    [InlineData("--record", "nowhere.json", "no such file")]
    [InlineData("--recrod", "x", "Did you mean '--record'?")]
    public async Task Bad_options_get_one_message_and_exit_code_2(string option, string value, string expected)
    {
        (int exit, string output, string error) = await _line.Run("check", _line.Copy("pottery.house.toml"), option, value);
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Heat_and_drop_are_taken_in_both_units_and_as_bare_numbers()
    {
        string house = _line.Copy("pottery.house.toml");
        async Task<string> Of(params string[] more) => (await _line.Run(["check", house, "--json", .. more])).Out;
        string si = await Of("--drop", "5", "--heat", "50");
        Assert.Equal(si, await Of("--drop", "5 K", "--heat", "50 W/m2"));
        using JsonDocument us = JsonDocument.Parse(await Of("--drop", "9 °F", "--heat", "16 BTU/h/ft2"));
        Assert.Equal(5, us.RootElement.GetProperty("assumed").GetProperty("dropK").GetDouble(), 0.001);
        Assert.Equal(50.5, us.RootElement.GetProperty("assumed").GetProperty("heatWPerM2").GetDouble(), 0.1);
    }

    [Fact]
    public async Task JSON_keeps_ordinary_blanks()
    {
        (_, string json, _) = await _line.Run("check", _line.Copy("pottery.house.toml"), "--json");
        Assert.Contains("L/min", json, StringComparison.Ordinal);
        Assert.DoesNotContain('\u00A0', json);
        Assert.DoesNotContain("\\u00A0", json, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain('\uE000', json);
    }

    [Fact]
    public async Task A_record_is_held_against_the_house_and_its_times_are_offered()
    {
        string house = _line.Copy("pottery.house.toml");
        Assert.Equal(ExitCode.Pass, (await _line.Run(
            "season", house, "record", "--date", "2024-10-03", "--opened", "shop=4 min 20 s", "--made", "bath=160 s")).Exit);
        string record = Path.Combine(_line.Path("pottery.history"), "2024-10-03-start.json");
        (int exit, string output, _) = await _line.Run("check", house, "--record", record);
        Assert.Equal(ExitCode.Pass, exit);
        _line.AssertNarrow(output);
        Assert.Contains("opening_time = \"4 min 20 s\"   # was \"4 min\"", output, StringComparison.Ordinal);
        Assert.Contains("said open after 2 min 40 s", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_report_is_one_file_that_asks_for_nothing()
    {
        string report = _line.Path("check.html");
        Assert.Equal(ExitCode.Pass, (await _line.Run("check", _line.Copy("pottery.house.toml"), "--report", report)).Exit);
        string html = await File.ReadAllTextAsync(report, TestContext.Current.CancellationToken);
        Assert.StartsWith("<!DOCTYPE html>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("src=", html, StringComparison.Ordinal);
        Assert.DoesNotContain("href=", html, StringComparison.Ordinal);
        Assert.Contains("minimum open", html, StringComparison.Ordinal);
        (int exit, _, string error) = await _line.Run("check", _line.Copy("pottery.house.toml"), "--report", _line.Path("pottery.house.toml"));
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("choose another name", error, StringComparison.Ordinal);
    }
}
