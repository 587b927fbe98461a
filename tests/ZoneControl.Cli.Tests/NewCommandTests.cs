using Spectre.Console.Testing;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Cli.Tests;

public sealed class NewCommandTests : IDisposable
{
    private readonly CommandLine _line = new();

    public void Dispose() => _line.Dispose();

    [Fact]
    public async Task Options_make_a_house_that_check_run_and_board_accept()
    {
        string house = _line.Path("my.house.toml");
        (int exit, string output, string error) = await _line.Run(
            "new", house, "--name", "Mine", "--zone", "Bath: four-wire, 60 m", "--zone", "Living room: two-wire 5 min, 80 m, 75 m",
            "--zone", "Hall: motorised with switch, 90 m", "--contacts", "season,reset,service", "--transformer", "60 VA");
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.Contains("minimum_open = ", output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Pass, (await _line.Run("check", house)).Exit);
        Assert.Equal(ExitCode.Pass, (await _line.Run("board", house)).Exit);
        string script = _line.Path("my.script.toml");
        await File.WriteAllTextAsync(
            script, "title = \"x\"\nduration = \"40 min\"\n[[event]]\nat = \"1 min\"\ncall = \"living-room\"\n", TestContext.Current.CancellationToken);
        Assert.Equal(ExitCode.Pass, (await _line.Run("run", house, script)).Exit);
        Assert.Equal(ExitCode.Pass, (await _line.Run("season", house, "commission")).Exit);
    }

    [Fact]
    public async Task A_file_that_is_there_is_not_replaced_without_being_told()
    {
        string house = _line.Path("my.house.toml");
        await File.WriteAllTextAsync(house, "mine", TestContext.Current.CancellationToken);
        (int exit, _, string error) = await _line.Run("new", house, "--zone", "Bath: four-wire, 60 m");
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("is there already", error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(house, TestContext.Current.CancellationToken));
        Assert.Equal(ExitCode.Pass, (await _line.Run("new", house, "--zone", "Bath: four-wire, 60 m", "--replace")).Exit);
        Assert.NotNull(HouseFile.Read(house).House);
    }

    [Theory]
    [InlineData("Bath four-wire 60 m", "--zone: found \"Bath four-wire 60 m\", expected a colon after the zone's name")]
    [InlineData("Bath: fourwire, 60 m", "--zone: Bath: found the kind of actuator \"fourwire\", expected one of two-wire, four-wire, motorised, motorised with switch (did you mean \"four-wire\"?)")]
    [InlineData("Bath: four-wire, 60 kg", "--zone: Bath: found \"60 kg\", a mass, expected a length such as \"80 m\"")]
    [InlineData("Bath: four-wire, 60", "--zone: Bath: found \"60\" without a unit")]
    [InlineData("Bath: four-wire", "--zone: Bath: found no loop")]
    [InlineData("Bath: motorised with switch 2 days, 60 m", "--zone: Bath: found \"2 days\", expected a time such as \"3 min\" (did you mean \"d\"?)")]
    [InlineData("Bath: two-wire, 5 mm", "--zone: Bath: found \"5 mm\", expected a length from 1 m to 1000 m")]
    public async Task A_zone_that_cannot_be_read_is_told_what_is_wrong_with_it_and_nothing_is_written(string zone, string expected)
    {
        (int exit, string output, string error) = await _line.Run("new", _line.Path("x.toml"), "--zone", zone);
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_line.Folder));
    }

    [Fact]
    public async Task Every_option_that_will_not_do_is_named_at_once_in_the_units_asked_for()
    {
        (int exit, _, string error) = await _line.Run(
            "new", _line.Path("x.toml"), "--units", "us", "--zone", "Bath: four-wire, 60 m", "--zone", "bath: four-wire, 200 ft", "--contacts", "flow, foo",
            "--pump-head", "3 bar", "--pump-flow", "-2 gpm", "--tube", "18x2 mm", "--transformer", "40", "--bypass", "9 psi", "--minimum-flow", "12 gpm");
        Assert.Equal(ExitCode.BadInput, exit);
        string[] expected =
        [
            "--contacts: found \"foo\", expected one of season, flow,",
            "--pump-head: found \"3 bar\", a pressure, expected a head such as \"16 ft\"",
            "--pump-flow: found \"-2 gpm\", expected a flow from 0.1 gpm to 2500 gpm",
            "--tube: found \"18x2 mm\", expected one of 3/8 in,",
            "--zone: bath: found \"bath\", which is a zone already",
            "--transformer: found \"40\" without a unit",
        ];
        Assert.All(expected, text => Assert.Contains(text, error, StringComparison.Ordinal));
        Assert.Equal(expected.Length + 1, error.TrimEnd().Split('\n').Length);
        Assert.EndsWith("x.toml: was not written.\n", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bypass_that_the_pump_cannot_open_and_a_minimum_flow_above_the_most_are_refused()
    {
        (int exit, _, string error) = await _line.Run(
            "new", _line.Path("x.toml"), "--zone", "Bath: four-wire, 60 m", "--bypass", "3 bar", "--minimum-flow", "50 L/min");
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("--bypass: found \"3 bar\", expected less than 0.49 bar", error, StringComparison.Ordinal);
        Assert.Contains("safety relief valve", error, StringComparison.Ordinal);
        Assert.Contains("--minimum-flow: found \"50 L/min\", expected less than the pump's most flow, 40 L/min", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mistake_that_only_the_whole_house_shows_names_its_option_and_no_line_of_a_file_that_is_not_there()
    {
        (int exit, _, string error) = await _line.Run(
            "new", _line.Path("x.toml"), "--zone", "Bath: four-wire, 60 m", "--zone", "Den: two-wire, 80 m", "--transformer", "5 VA");
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.StartsWith("Transformer (--transformer): found ", error, StringComparison.Ordinal);
        Assert.DoesNotContain("x.toml:1", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_person_and_without_zones_it_says_what_is_missing()
    {
        (int exit, _, string error) = await _line.Run("new", _line.Path("x.toml"));
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("No zone", error, StringComparison.Ordinal);
    }

    /// <summary>What a person types, and what comes of it.</summary>
    private static async Task<(int Exit, string Error, string Screen, House? House)> Asked(params string[] answers)
    {
        using var console = new TestConsole { Profile = { Width = 80 } };
        console.Interactive();
        foreach (string answer in answers)
            console.Input.PushTextWithEnter(answer);
        using var line = new CommandLine { Person = console };
        string house = line.Path("brook.house.toml");
        (int exit, _, string error) = await line.Run("new", house);
        return (exit, error, console.Output, exit == ExitCode.Pass ? HouseFile.Read(house).House : null);
    }

    /// <summary>Text without its line breaks.</summary>
    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    [Fact]
    public async Task Stopped_at_a_question_it_ends_at_once_and_writes_nothing()
    {
        using var screen = new TestConsole();
        screen.Interactive();
        using var stop = new CancellationTokenSource();
        using var error = new StringWriter();
        var person = new SilentPerson(screen);
        var streams = new Streams(TextWriter.Null, error, OutIsTerminal: false) { Questions = () => person };
        Task<int> asking = App.RunAsync(["new", _line.Path("x.toml")], streams, stop.Token);
        await person.Asked.WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        await stop.CancelAsync();
        Assert.Equal(ExitCode.Cancelled, await asking.WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken));
        Assert.StartsWith("Stopped. No file was written.", error.ToString(), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_line.Folder));
    }

    private static readonly string[] _oneZone = ["Bath", "four-wire", "", "60 m", ""];
    private static readonly string[] _noContacts = ["n", "n", "n", "n", "n", "n", "n", "n"];

    [Fact]
    public async Task Questions_are_explained_and_counted_wrong_answers_asked_again_and_Enter_takes_the_common_value()
    {
        (int exit, string error, string screen, House? made) = await Asked(
        [
            "", "By the brook", "", "", "much", "75 W", "", "", "", "", "maybe", "n",
            "Bath", "four-wire", "", "60 m", "Living room", "two-wire", "", "80 kg", "80 m, 75 m", "",
            "", "", "60 VA", "y", "n", "n", "n", "n", "y", "n", "y", "",
        ]);
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.NotNull(made);
        Assert.Equal("By the brook", made.Name);
        Assert.Equal(75, made.Pump.PowerW);
        Assert.Equal(5, made.Pump.Curve[0].HeadM);
        Assert.Equal(["bath", "living-room"], made.Zones.Select(zone => zone.Name));
        Assert.Equal([60.0], made.Zones[0].Loops.Select(loop => loop.Tube.LengthM));
        Assert.Equal(TimeSpan.FromMinutes(4), made.Zones[1].Actuator.OpeningTime);
        Assert.Equal(["season", "reset"], made.Contacts.Fitted.Select(contact => contact.Kind.Key));
        Assert.True(made.Contacts.Service);
        Assert.Contains("Found \"much\", expected a power such as \"60 W\".", screen, StringComparison.Ordinal);
        Assert.Contains("Found \"maybe\", expected y or n.", screen, StringComparison.Ordinal);
        Assert.Contains("a mass", screen, StringComparison.Ordinal);
        Assert.Contains("Question 1 of 15.", screen, StringComparison.Ordinal);
        Assert.Contains("Question 15 of 15.", screen, StringComparison.Ordinal);
        Assert.Contains(
            " 11 Zones: Bath (four-wire, 3 min: 60 m); Living room (two-wire, 4 min: 80 m, 75 m)", Flat(screen), StringComparison.Ordinal);
        Assert.Contains(" 15 Contacts fitted: season switch, reset button, hand switches ", Flat(screen).Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Impossible_answers_are_refused_at_their_question_in_the_units_of_the_house()
    {
        (int exit, _, string screen, House? made) = await Asked(
        [
            "us", "Home", "-3 ft", "16 ft", "", "", "20 gpm", "", "", "", "", "n",
            new string('x', 44), "Bath", "four-wire", "", "5 mm", "200 ft", "BATH", "Den", "two-wire", "", "200 ft", "",
            "", "40 psi", "3 psi", "", .. _noContacts, "",
        ]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal(["bath", "den"], made!.Zones.Select(zone => zone.Name));
        string[] expected =
        [
            "Found \"-3 ft\", expected a head from 0.5 ft to 300 ft.",
            "Found \"20 gpm\", expected less than the pump's most flow, 11 gpm.",
            "Found 44 characters, expected at most 40.",
            "Found \"5 mm\", expected a length from 4 ft to 3000 ft.",
            "Found \"BATH\", which is a zone already (four-wire, 200 ft)",
            "Found \"40 psi\", expected less than 6.9 psi",
        ];
        Assert.All(expected, text => Assert.Contains(text, Flat(screen), StringComparison.Ordinal));
    }

    [Fact]
    public async Task One_can_go_back_and_correct_an_answer_before_anything_is_written()
    {
        (int exit, _, string screen, House? made) = await Asked(
        [
            // Back from the pump's head to the name and on again; two prompts back within a zone; then the summary's fifth and third.
            "si", "Home", "<", "", "6 m", "", "", "", "", "", "", "n",
            "Bath", "four-wire", "<", "<", "Bathroom", "four-wire", "2 min", "60 m", "",
            "", "", "", .. _noContacts,
            "99", "5", "80 W", "3", "4 m", "",
        ]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal("Bathroom", Assert.Single(made!.Zones).Label);
        Assert.Equal(80, made.Pump.PowerW);
        Assert.Equal(4, made.Pump.Curve[0].HeadM);
        Assert.Contains("Found \"99\", expected a number from 1 to 15, or Enter.", screen, StringComparison.Ordinal);
    }

    private static readonly string[] _untilZones = ["", "Home", "", "", "", "", "", "", "", "n"];

    [Fact]
    public async Task Going_back_from_behind_the_zones_shows_their_list_and_loses_none()
    {
        (int exit, _, string screen, House? made) = await Asked(
        [
            .. _untilZones, "Bath", "four-wire", "", "60 m", "Den", "two-wire", "", "80 m", "",
            // Back from the loops without an actuator; the list is kept, then left by going back once more.
            "<", "<", "n", "", "", "", "", .. _noContacts, "",
        ]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal(["bath", "den"], made!.Zones.Select(zone => zone.Name));
        Assert.Contains("1 Bath (four-wire, 3 min: 60 m) 2 Den (two-wire, 4 min: 80 m) Enter keeps these;", Flat(screen), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Zones_can_be_changed_removed_and_added_in_the_summary()
    {
        (int exit, _, string screen, House? made) = await Asked(
        [
            .. _untilZones, "Bath", "four-wire", "", "60 m", "Den", "two-wire", "", "80 m", "Hall", "", "", "50 m", "", "", "", "", .. _noContacts,
            "11", "4", "2", "Study", "", "6 min", "", "-1", "+", "Loft", "motorised", "", "40 m", "", "-9", "", "",
        ]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal(["study", "hall", "loft"], made!.Zones.Select(zone => zone.Name));
        Assert.Equal(TimeSpan.FromMinutes(6), made.Zones[0].Actuator.OpeningTime);
        Assert.Equal(80, made.Zones[0].Loops[0].Tube.LengthM, 1e-9);
        Assert.Contains("Found \"4\", expected Enter, a number from 1 to 3, one of these with a minus, or +.", Flat(screen), StringComparison.Ordinal);
        Assert.Contains("Found \"-9\",", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_only_zone_is_not_removed_and_going_back_from_its_change_leaves_it_as_it_was()
    {
        (int exit, _, string screen, House? made) = await Asked(
            [.. _untilZones, .. _oneZone, "", "", "", .. _noContacts, "11", "-1", "1", "Loo", "<", "<", "", ""]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal("Bath", Assert.Single(made!.Zones).Label);
        Assert.Contains("Found the only zone, expected one to stay", Flat(screen), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Going_back_at_the_next_zones_name_leads_to_the_last_prompt_of_the_one_before()
    {
        (int exit, _, _, House? made) = await Asked(
            [.. _untilZones, "Bath", "four-wire", "", "60 m", "<", "70 m, 65 m", "Den", "", "", "50 m", "", "", "", "", .. _noContacts, ""]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal([70.0, 65.0], made!.Zones[0].Loops.Select(loop => loop.Tube.LengthM));
        Assert.Equal(2, made.Zones.Count);
    }

    [Fact]
    public async Task Common_values_follow_units_that_are_corrected_and_nothing_at_lengths_is_told_with_an_example()
    {
        (int exit, _, string screen, House? made) = await Asked(
        [
            .. _untilZones, "Bath", "four-wire", "", "", "60 m", "", "", "", "", .. _noContacts, "1", "us", "3", "20 ft", "",
        ]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Contains("Found nothing, expected a length such as \"80 m\".", screen, StringComparison.Ordinal);
        Assert.Contains("4 Pump: most flow: 11 gpm", Flat(screen), StringComparison.Ordinal);
        Assert.Equal(6.096, made!.Pump.Curve[0].HeadM, 1e-9);
    }

    [Fact]
    public async Task A_unit_is_guessed_only_where_it_is_near_and_of_the_houses_own_system()
    {
        (int exit, string error, string screen, _) = await Asked(
            ["us", "Home", "900 mi", "16 feet", "16 ft", "9 gmp", "9 gpm", "", "", "", "", "", "n", "Bath", "", "80 m; 75 m", "", "200 ft", "", "", "", "", .. _noContacts, ""]);
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.Contains("(unknown unit; known are ft).", Flat(screen), StringComparison.Ordinal);
        Assert.Contains("(did you mean \"ft\"?)", screen, StringComparison.Ordinal);
        Assert.Contains("(did you mean \"gpm\"?)", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("did you mean \"m", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_options_have_answered_keeps_its_number()
    {
        using var console = new TestConsole { Profile = { Width = 80 } };
        console.Interactive();
        foreach (string answer in (string[])["Home", "", "", "", "", "", "", "", "n", "", "", "", .. _noContacts, ""])
            console.Input.PushTextWithEnter(answer);
        using var line = new CommandLine { Person = console };
        (int exit, _, _) = await line.Run("new", line.Path("x.house.toml"), "--units", "us", "--zone", "Bath: four-wire, 200 ft");
        Assert.Equal(ExitCode.Pass, exit);
        Assert.DoesNotContain("Question 1 of", console.Output, StringComparison.Ordinal);
        Assert.Contains("Question 2 of 15.", console.Output, StringComparison.Ordinal);
        Assert.Contains("Question 12 of 15.", console.Output, StringComparison.Ordinal);
        Assert.Contains("12  Loops without an actuator: none", console.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_does_not_fit_together_is_told_with_the_summary_and_loses_no_answer()
    {
        (int exit, _, string screen, House? made) = await Asked(
        [
            "", "Home", "", "", "", "", "", "", "", "n", "Bath", "four-wire", "", "60 m", "", "", "", "3 VA", .. _noContacts, "14", "40 VA", "",
        ]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal(40, made!.Transformer!.RatingVa);
        Assert.Contains("Transformer (--transformer): found", screen, StringComparison.Ordinal);
        Assert.Contains("Number of the answer to correct", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_panels_house_is_not_asked_for_a_transformer()
    {
        (int exit, _, string screen, House? made) = await Asked(
            ["", "Home", "", "", "", "", "", "", "", "y", .. _oneZone, "", "", .. _noContacts, ""]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.True(made!.Zones[0].Gated);
        Assert.Contains("Question 14 of 14.", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("Transformer", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_file_says_in_the_units_of_the_house_what_was_not_asked()
    {
        string house = _line.Path("us.house.toml");
        await _line.Run("new", house, "--units", "us", "--zone", "Den: two-wire, 200 ft", "--bypass", "5 psi");
        string text = await File.ReadAllTextAsync(house, TestContext.Current.CancellationToken);
        Assert.Contains("cv = 2.9 ", text, StringComparison.Ordinal);
        Assert.Contains("0.21 BTU/h/F for each ft²", text, StringComparison.Ordinal);
        Assert.DoesNotContain("m³/h", text, StringComparison.Ordinal);
        Assert.DoesNotContain("m²", text.Replace("ft²", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain('\u00A0', text);
    }
}
