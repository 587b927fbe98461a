using System.Text.Json;
using Spectre.Console.Testing;

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
        (int exit, string output, _) = await _line.Run("season", house, "commission", "--keep", "--date", "2024-10-03");
        Assert.Equal(ExitCode.Pass, exit);
        _line.AssertNarrow(output);
        Assert.Contains("GOOD (model)  0 faults, 0 things not known", output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_line.Path("pottery.history"), "2024-10-03-start.json")));

        Assert.Contains("2 min 42 s", (await _line.Run("season", house, "start")).Out, StringComparison.Ordinal);
        (int virtually, string model, _) = await _line.Run("season", house, "history");
        Assert.Equal(ExitCode.Pass, virtually);
        Assert.Contains("the model's valves, not the house's", string.Join(' ', model.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Pass, (await _line.Run("season", house, "record", "--date", "2024-10-04", "--made", "bath=2 min 40 s")).Exit);
        Assert.Equal(ExitCode.Pass, (await _line.Run(
            "season", house, "record", "--date", "2025-10-02", "--made", "bath=3 min 10 s", "--pressure", "20 psi", "--note", "bled the flat")).Exit);
        (int slow, string history, _) = await _line.Run("season", house, "history", "--units", "us");
        Assert.Equal(ExitCode.Pass, slow);
        Assert.Contains("SLOWING", history, StringComparison.Ordinal);
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
            "season", _line.Copy("toolworks.house.toml"), "commission", "--controller", controller, "--fault", "actuators=hall,washroom", "--date", "2024-10-03", "--json");
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
    [InlineData("record --note x --date 2999-01-01", "not in the future")]
    [InlineData("record --note x --keep", "--keep: does nothing with season record")]
    [InlineData("start --keep --fault dead=bath", "--fault: does nothing with season start")]
    [InlineData("history --pressure 1bar", "--pressure: does nothing with season history; it is for season record")]
    [InlineData("commission --opened bath=3min", "--opened: does nothing with season commission")]
    public async Task Bad_input_gets_a_message_and_exit_code_2(string words, string expected)
    {
        string[] args = ["season", _line.Copy("pottery.house.toml"), .. words.Split(' ')];
        (int exit, string output, string error) = await _line.Run(args);
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Single(Directory.GetFileSystemEntries(_line.Folder));
    }

    [Fact]
    public async Task A_dangerous_time_by_hand_is_a_fault_in_record_history_and_check_alike()
    {
        string house = _line.Copy("pottery.house.toml");
        (int exit, string record, _) = await _line.Run(
            "season", house, "record", "--date", "2024-10-01", "--opened", "shop=6 min", "--opened", "bath=3 min 40 s", "--closed", "bath=5 min");
        Assert.Equal(ExitCode.Fail, exit);
        Assert.Contains("FAULT  1 fault, 2 things not known", record, StringComparison.Ordinal);
        Assert.Contains("Not measured: how long the valves of Throwing room", record, StringComparison.Ordinal);
        Assert.DoesNotContain("nobody looked", record, StringComparison.Ordinal);
        Assert.Contains("switched on, or off. Open and shut: until the stem stood still, by a watch.", Plain(record), StringComparison.Ordinal);
        Assert.DoesNotContain("until its end switch changed", record, StringComparison.Ordinal); // the table has no such column
        Assert.DoesNotContain("Moved:", record, StringComparison.Ordinal);
        (int past, string history, _) = await _line.Run("season", house, "history");
        Assert.Equal(ExitCode.Fail, past);
        Assert.DoesNotContain("getting slow", history, StringComparison.Ordinal); // one time alone cannot get slow
        string file = Path.Combine(_line.Path("pottery.history"), "2024-10-01-start.json");
        using JsonDocument json = JsonDocument.Parse((await _line.Run("season", house, "history", "--json")).Out);
        Assert.Equal(1, json.RootElement.GetProperty("records")[0].GetProperty("faults").GetInt32());
        (int check, string checkedHouse, _) = await _line.Run("check", house, "--record", file);
        Assert.Equal(ExitCode.Fail, check);
        foreach (string output in (string[])[record, history, checkedHouse])
        {
            Assert.Contains("against a valve that is not open yet", Plain(output), StringComparison.Ordinal);
            Assert.Contains("Bath: fully open after 3 min 40 s", Plain(output), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Every_mistake_of_a_record_is_told_at_once()
    {
        (int exit, _, string error) = await _line.Run(
            "season", _line.Copy("pottery.house.toml"), "record", "--season", "summer", "--opened", "shop=5", "--opened", "bath", "--made", "shop=3 min",
            "--closed", "bat=3 min", "--pressure", "40 bar");
        Assert.Equal(ExitCode.BadInput, exit);
        foreach (string mistake in (string[])["Known: start, stop", "--opened: found \"5\"", "--opened: found \"bath\"", "shop has no end switch", "'bat'", "--pressure: found \"40 bar\""])
            Assert.Contains(mistake, error, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing to record", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_holds_no_time_that_could_be_filed_unmeasured_and_says_who_opens_what()
    {
        string rooms = Plain((await _line.Run("season", _line.Copy("pottery.house.toml"), "start")).Out);
        Assert.Contains("--opened throwing-room=\"...\" \\ --made throwing-room=\"...\" \\ --pressure \"...\"", rooms, StringComparison.Ordinal);
        Assert.Contains("companions with it where the zone alone does not reach minimum_open = 2", rooms, StringComparison.Ordinal);
        string retrofit = Plain((await _line.Run("season", _line.Copy("retrofit.house.toml"), "start")).Out);
        Assert.Contains("(those of Downstairs and Upstairs the panel opens)", retrofit, StringComparison.Ordinal);
        Assert.Contains("the pressure is the cold one", Plain((await _line.Run("season", _line.Copy("pottery.house.toml"), "stop")).Out), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rehearsal_names_the_other_zones_switch_and_shows_no_pump_table_after_a_welded_pump()
    {
        string house = _line.Copy("pottery.house.toml");
        string switches = (await _line.Run("season", house, "commission", "--fault", "switches=bath,living-room")).Out;
        Assert.Contains("by Bath's: 2 min 42 s", Plain(switches), StringComparison.Ordinal);
        string welded = Plain((await _line.Run("season", house, "commission", "--fault", "pump=always")).Out);
        Assert.Contains("Before that, all valves were opened once to hear", welded, StringComparison.Ordinal);
        Assert.DoesNotContain("What showed that water moved", welded, StringComparison.Ordinal);
        Assert.Contains("What showed that water moved",
            Plain((await _line.Run("season", house, "commission", "--fault", "pump=inverted")).Out), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_that_lacks_zones_is_incomplete_and_a_history_of_nothing_says_so()
    {
        string house = _line.Copy("pottery.house.toml");
        Assert.Contains("NOTHING MEASURED YET", (await _line.Run("season", house, "history")).Out, StringComparison.Ordinal);
        (int exit, string record, _) = await _line.Run("season", house, "record", "--opened", "shop=4 min", "--pressure", "1.4 bar", "--date", "2024-10-01");
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Contains("INCOMPLETE  0 faults, 1 thing not known", record, StringComparison.Ordinal);
        Assert.Contains("FIRST TIMES", (await _line.Run("season", house, "history")).Out, StringComparison.Ordinal);
        (_, string stop, _) = await _line.Run("season", house, "record", "--season", "stop", "--pressure", "0.83 bar", "--date", "2025-04-30");
        Assert.Contains("PRESSURE", stop, StringComparison.Ordinal);
        Assert.Contains("top up, and see whether it holds", Plain(stop), StringComparison.Ordinal);
        string history = (await _line.Run("season", house, "history")).Out;
        Assert.Contains("by 0.57 bar", Plain(history), StringComparison.Ordinal);
        Assert.Contains("PRESSURE", history, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_of_another_house_is_refused()
    {
        string house = _line.Copy("pottery.house.toml");
        await _line.Run("season", house, "record", "--opened", "shop=4 min", "--date", "2024-10-01");
        (int exit, string output, string error) = await _line.Run(
            "check", _line.Copy("toolworks.house.toml"), "--record", Path.Combine(_line.Path("pottery.history"), "2024-10-01-start.json"));
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains("a record of \"The pottery\" with 0 of 6 zones", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_names_what_this_house_has_and_nothing_else()
    {
        string toolworks = Plain((await _line.Run("season", _line.Copy("toolworks.house.toml"), "start")).Out);
        foreach (string contact in (string[])["end switch z1, Machine hall", "hand switch z4", "hand switch pump", "high limit", "serial number", "pre-charge", "signature"])
            Assert.Contains(contact, toolworks, StringComparison.Ordinal);
        Assert.Contains("later where valves wait their turn at the transformer", toolworks, StringComparison.Ordinal);

        string twoRooms = _line.Copy("two-rooms.house.toml");
        string stop = Plain((await _line.Run("season", twoRooms, "stop")).Out);
        Assert.DoesNotContain("lockout", stop, StringComparison.Ordinal);
        Assert.DoesNotContain("--opened", stop, StringComparison.Ordinal);
        Assert.DoesNotContain(" bar", stop, StringComparison.Ordinal);

        string retrofit = Plain((await _line.Run("season", _line.Copy("retrofit.house.toml"), "start")).Out);
        Assert.Contains("Downstairs and Upstairs: an existing panel drives these valves", retrofit, StringComparison.Ordinal);
        Assert.Contains("--opened bath=\"...\"", retrofit, StringComparison.Ordinal);
        Assert.DoesNotContain("BOOT-SAFE", toolworks + stop + retrofit, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Long_names_stay_whole_in_the_tables_of_a_rehearsal()
    {
        string house = _line.Copy("pottery.house.toml");
        string text = await File.ReadAllTextAsync(house, TestContext.Current.CancellationToken);
        text = text.Replace("\"Throwing room\"", "\"Grandmother's sewing room\"", StringComparison.Ordinal)
            .Replace("\"Glazing room\"", "\"Hauswirtschaftsraum\"", StringComparison.Ordinal);
        await File.WriteAllTextAsync(house, text, TestContext.Current.CancellationToken);
        (_, string output, _) = await _line.Run("season", house, "commission", "--fault", "actuators=throwing-room,glazing-room");
        _line.AssertNarrow(output);
        int whole = output.Split('\n').Count(line => line.Contains("Hauswirtschaftsraum", StringComparison.Ordinal));
        Assert.True(whole >= 3, output);
        Assert.DoesNotMatch("Hauswirtschaftsr?a?u?\\s", output);
        Assert.DoesNotMatch("Grandmother'?\\s", output);
    }

    // The den is stroked first.
    [Theory]
    [InlineData("den", "nook", "GOOD (model)")]
    [InlineData("nook", "den", "FAULT (model)")] // each moved the other's stem
    public async Task A_person_at_the_terminal_is_asked_what_moved_and_the_answers_are_judged(string first, string second, string verdict)
    {
        using var console = new TestConsole { Profile = { Width = 80 } };
        console.Interactive();
        string[] answers = ["no", .. Answers(first), "attic", .. Answers(second), "yes", "den, Reading nook", "yes", "both", "DEN,nook"];
        foreach (string answer in answers)
            console.Input.PushTextWithEnter(answer);
        using var line = new CommandLine { Person = console };
        (_, string output, string error) = await line.Run("season", line.Copy("two-rooms.house.toml"), "commission", "--ask");
        Assert.Equal("", error);
        Assert.Contains("There is no zone 'attic'", console.Output, StringComparison.Ordinal);
        Assert.Contains("Whose valve stem moved?", console.Output, StringComparison.Ordinal);
        Assert.Contains(verdict, output, StringComparison.Ordinal);
        Assert.Contains("answered by a person", output, StringComparison.Ordinal);
        static string[] Answers(string zone) => [zone, zone, "no"];
    }

    [Fact]
    public async Task Asking_needs_a_person()
    {
        (int exit, string output, string error) = await _line.Run("season", _line.Copy("two-rooms.house.toml"), "commission", "--ask");
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains("nobody at the terminal", error, StringComparison.Ordinal);
    }

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
