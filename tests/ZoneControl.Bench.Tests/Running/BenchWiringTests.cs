using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Files;

namespace ZoneControl.Bench.Tests.Running;

/// <summary>What lies between plant and controller: polarity, supplies, the panel, faults of pump and flow switch.</summary>
public class BenchWiringTests
{
    private static readonly string _toolworks = File.ReadAllText(Path.Combine(ExampleTests.Folder(), "toolworks.house.toml"));

    [Theory]
    [InlineData("toolworks-runs-on")]
    [InlineData("toolworks-supply")]
    [InlineData("toolworks-hot-water")]
    public void Contacts_wired_the_other_way_round_make_no_difference(string script)
    {
        string turned = Replaced(
            ("season = true", "season = { closed_means = \"heating\" }"),
            ("flow = { ", "flow = { closed_means = \"no flow\", "),
            ("priority = true", "priority = { closed_means = \"off\" }"),
            ("reset = true", "reset = { closed_means = \"released\" }"),
            ("closed_means = \"on\"", "closed_means = \"off\""),
            ("switch_at = \"90 %\"", "switch_at = \"90 %\"\nswitch_contact = \"breaks\""),
            ("actuator = \"motor\"", "actuator = \"motor\"\ncall_contact = \"breaks\""));
        Assert.Equal(Play(_toolworks, script).Trace.Frames, Play(turned, script).Trace.Frames);
    }

    [Fact]
    public void Without_their_supply_the_stems_go_shut_whatever_the_controller_wants()
    {
        // A controller that does not sense the supply goes on energising.
        Run run = Play(Replaced(("supply = { closed_means = \"on\", debounce = \"100 ms\" }", "supply = false")), """
            title = "t"
            duration = "30 min"
            event = [{ at = "4 min", call = "store" }, { at = "15 min", supply = "off" }]
            """);
        Assert.Equal(0b100, run.Trace.Frames.Last(frame => frame.Ms <= 25 * 60_000).Valves & 0b100);
        Assert.Equal(1, TravelAt(run, 15, 2), 1e-9);
        Assert.Equal(0, TravelAt(run, 25, 2), 1e-9);
    }

    [Fact]
    public void The_flow_switch_makes_at_the_flow_that_the_house_says()
    {
        const string Script = """
            title = "t"
            duration = "10 min"
            event = [{ at = "4 min", call = "hall" }]
            """;
        Assert.Contains(Play(_toolworks, Script).Trace.Frames, frame => frame.Heat);

        // More than the open loops pass: the switch never makes, and heat is never asked for.
        Run run = Play(Replaced(("flow_switch_at = \"4 L/min\"", "flow_switch_at = \"30 L/min\"")), Script);
        Assert.Contains(run.Trace.Frames, frame => frame.Pump);
        Assert.DoesNotContain(run.Trace.Frames, frame => frame.Heat);
    }

    [Fact]
    public void A_pump_whose_relay_is_welded_runs_until_the_house_loses_its_power()
    {
        Run run = Play(_toolworks, """
            title = "t"
            duration = "10 min"
            event = [{ at = "1 min", pump_fault = "runs-on" }, { at = "5 min", power = "off" }]
            """);
        Assert.DoesNotContain(run.Trace.Frames, frame => frame.Pump);
        Assert.InRange(run.Totals.PumpRunS, 239, 241);
    }

    [Fact]
    public void A_panel_drives_its_valves_even_when_the_controller_says_nothing()
    {
        string retrofit = File.ReadAllText(Path.Combine(ExampleTests.Folder(), "retrofit.house.toml"));
        Run run = Play(retrofit, """
            title = "t"
            duration = "20 min"
            event = [{ at = "1 min", call = "upstairs" }, { at = "8 min", power = "off" }]
            """);
        Assert.All(run.Trace.Frames, frame => Assert.Equal(0, frame.Valves));
        Assert.Equal(1, TravelAt(run, 8, 1), 1e-9);
        Assert.Equal(0, TravelAt(run, 20, 1), 1e-9);
        Assert.Equal(1, run.Totals.ValveStrokes);
    }

    [Fact]
    public void A_clock_that_jumps_shows_in_the_trace_and_time_goes_on()
    {
        Run run = Play(_toolworks, """
            title = "t"
            duration = "10 min"
            event = [{ at = "5 min", clock_back = "10 s" }]
            """);
        Assert.Equal([0, -10_000], run.Trace.Frames.Select(frame => frame.ClockAheadMs).Distinct());
        Assert.Equal(300_000, run.Trace.Frames.First(frame => frame.ClockAheadMs != 0).Ms);
    }

    private static double TravelAt(Run run, int minutes, int zone) =>
        run.Trace.Samples.Last(sample => sample.Ms <= minutes * 60_000).Travel[zone];

    private static string Replaced(params (string Old, string New)[] pieces)
    {
        string text = _toolworks;
        foreach ((string old, string piece) in pieces)
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            text = text.Replace(old, piece, StringComparison.Ordinal);
        }

        return text;
    }

    /// <summary>Runs a script, an example by name or a text, on a house's text.</summary>
    private static Run Play(string houseText, string scriptText)
    {
        if (!scriptText.Contains('\n', StringComparison.Ordinal))
            scriptText = File.ReadAllText(Path.Combine(ExampleTests.Folder(), scriptText + ".script.toml"));
        HouseReading house = HouseFile.Parse(houseText, "house.toml");
        Assert.Empty(house.Mistakes);
        ScriptReading script = ScriptFile.Parse(scriptText, "script.toml", house.House!);
        Assert.Empty(script.Mistakes);
        return Runner.Run(
            house.House!, script.Script!, settings => new LibraryController(settings), cancel: TestContext.Current.CancellationToken);
    }
}
