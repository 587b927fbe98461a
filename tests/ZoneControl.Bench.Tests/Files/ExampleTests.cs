using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Tests.Files;

/// <summary>The examples are what the format's reference points to: they must read without a word and run as they say.</summary>
public class ExampleTests
{
    public static TheoryData<string, string> Pairs => new()
    {
        { "bakery.house.toml", "bakery-evening.script.toml" },
        { "pottery.house.toml", "pottery-first-cold-morning.script.toml" },
        { "retrofit.house.toml", "retrofit-evening.script.toml" },
        { "toolworks.house.toml", "toolworks-by-hand.script.toml" },
        { "toolworks.house.toml", "toolworks-clock.script.toml" },
        { "toolworks.house.toml", "toolworks-end-switches.script.toml" },
        { "toolworks.house.toml", "toolworks-high-limit.script.toml" },
        { "toolworks.house.toml", "toolworks-hot-water.script.toml" },
        { "toolworks.house.toml", "toolworks-no-flow.script.toml" },
        { "toolworks.house.toml", "toolworks-runs-on.script.toml" },
        { "toolworks.house.toml", "toolworks-summer.script.toml" },
        { "toolworks.house.toml", "toolworks-supply.script.toml" },
        { "two-rooms.house.toml", "two-rooms-evening.script.toml" },
    };

    /// <summary>Houses that have no script of their own: they are there to be proven.</summary>
    private static readonly string[] _annexes = ["annex.house.toml", "annex-tested.house.toml"];

    [Theory]
    [MemberData(nameof(Pairs))]
    public void An_example_reads_without_a_warning_keeps_every_rule_and_its_expectations_are_met(string houseFile, string scriptFile)
    {
        (House house, Script script) = Load(houseFile, scriptFile);
        Run run = Runner.Run(house, script, settings => new LibraryController(settings), cancel: TestContext.Current.CancellationToken);
        Assert.NotEmpty(run.Expectations);
        Assert.All(run.Expectations, verdict => Assert.True(verdict.Met, $"{scriptFile}:{verdict.Line}: {verdict.Text}: {verdict.Why}"));
        Assert.All(run.Rules, rule => Assert.True(rule.Judgement != Judgement.Broken, $"{scriptFile}: {rule.Rule} at {rule.FirstMs} ms: {rule.Why}"));
        Assert.Equal(0, run.Totals.DeadheadS);
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Leaving_out_scans_that_can_change_nothing_shows_the_same_frames(string houseFile, string scriptFile)
    {
        (House house, Script script) = Load(houseFile, scriptFile);
        script = script with { DurationMs = Math.Min(script.DurationMs, 3_600_000) };
        Run Play(bool everyScan) => Runner.Run(house, script, settings => new LibraryController(settings), everyScan, cancel: TestContext.Current.CancellationToken);
        IReadOnlyList<Frame> Shown(Run run) => [.. run.Trace.Frames.Select(frame => frame with { NextDeadlineMs = 0 })];
        Assert.Equal(Shown(Play(true)), Shown(Play(false)));
    }

    [Fact]
    public void The_annexes_read_without_a_warning() =>
        Assert.All(_annexes, file => Assert.Empty(HouseFile.Read(Path.Combine(Folder(), file)).Mistakes));

    [Fact]
    public void Every_example_file_is_tried()
    {
        string[] tried = [.. Pairs.SelectMany(pair => new[] { pair.Data.Item1, pair.Data.Item2 }).Concat(_annexes).Distinct().Order()];
        Assert.Equal(tried, Directory.GetFiles(Folder(), "*.toml").Select(path => Path.GetFileName(path))
            .Where(file => !file.EndsWith(".map.toml", StringComparison.Ordinal)).Order());
    }

    [Fact]
    public void The_pottery_is_a_workshop_with_six_zones_ten_loops_two_manifolds_and_mixed_actuators()
    {
        House house = Load("pottery.house.toml", "pottery-first-cold-morning.script.toml").House;
        Assert.Equal((6, 10, 2), (house.Zones.Count, house.Zones.Sum(zone => zone.Loops.Count), house.Manifolds.Count));
        Assert.Contains(house.Zones, zone => zone.Actuator.Kind == ActuatorKind.TwoWire);
        Assert.Contains(house.Zones, zone => zone.Actuator.Kind == ActuatorKind.FourWire);
        Assert.Equal([0, 0, 0, 0, 0, 0, 1, 1, 1, 1], house.Zones.SelectMany(zone => zone.Loops).Select(loop => loop.Manifold).Order());
    }

    [Fact]
    public void Wired_straight_to_the_calls_the_first_cold_morning_heats_trapped_water_past_seventy_degrees()
    {
        (House house, Script script) = Load("pottery.house.toml", "pottery-first-cold-morning.script.toml");
        Run run = Runner.Run(house, script, settings => new StraightWiring(settings), cancel: TestContext.Current.CancellationToken);
        Assert.InRange(run.Totals.DeadheadS, 45 * 60, script.DurationMs / 1000);
        Assert.InRange(run.Totals.HottestTrappedC, 70, 100);
        Assert.Contains(run.Expectations, verdict => !verdict.Met);
    }

    internal static (House House, Script Script) Load(string houseFile, string scriptFile)
    {
        HouseReading house = HouseFile.Read(Path.Combine(Folder(), houseFile));
        Assert.Empty(house.Mistakes);
        ScriptReading script = ScriptFile.Read(Path.Combine(Folder(), scriptFile), house.House!);
        Assert.Empty(script.Mistakes);
        return (house.House!, script.Script!);
    }

    internal static string Folder()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder);
        return Path.Combine(folder!, "simulator", "examples");
    }
}
