using ZoneControl.Bench.Choosing.Protections;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Choosing;

public class ComparisonTests
{
    private static Comparison FiveDays(long seed, int cores) =>
        Comparison.OverWinter(Examples.House("pottery"), seed, 5, cores: cores, cancel: TestContext.Current.CancellationToken);

    private static (string, double, int, double, double) Numbers(Outcome o) =>
        (o.Protection.Name, o.DeadheadS, o.PumpStarts, o.PumpEnergyKWh, o.Winter!.UnderKh + o.Trials.Sum(trial => trial?.DeadheadS ?? 0));

    [Fact]
    public void The_same_seed_gives_the_same_numbers_on_one_core_and_on_two_and_another_seed_others()
    {
        Comparison one = FiveDays(1, 1);
        Assert.Equal(one.Outcomes.Select(Numbers), FiveDays(1, 2).Outcomes.Select(Numbers));
        Assert.NotEqual(one.Outcomes.Select(Numbers), FiveDays(2, 2).Outcomes.Select(Numbers));
        Outcome none = one.Outcomes.Single(o => o.Protection.Name == "no protection");
        Outcome guarded = one.Outcomes.Single(o => o.Protection.Name == "ZoneControl");
        Outcome held = one.Outcomes.Single(o => o.Protection.Name == "valve held open");
        Assert.True(none.DeadheadS > 60);
        Assert.Equal(0, guarded.DeadheadS);
        Assert.True(held.HeldOverKh > guarded.Winter!.OverKh, "a room held open is too warm");
        Assert.All(one.Outcomes, outcome => Assert.Equal(one.Trials.Count, outcome.Trials.Count));
    }

    [Fact]
    public void Over_a_script_there_are_no_rooms_and_the_plain_wiring_deadheads_as_in_a_run()
    {
        House house = Examples.House("pottery");
        Script script = ScriptFile.Read(Path.Combine(Examples.Folder, "pottery-first-cold-morning.script.toml"), house).Script!;
        Comparison comparison = Comparison.OverScript(house, script, cancel: TestContext.Current.CancellationToken);
        double straight = Runner.Run(house, script, settings => new StraightWiring(settings), cancel: TestContext.Current.CancellationToken).Totals.DeadheadS;
        Assert.Equal(straight, comparison.Outcomes[0].DeadheadS);
        Assert.All(comparison.Outcomes, outcome => Assert.Null(outcome.Winter));
        Assert.Contains(Conclusion.Of(comparison, new Prices()), words => words == Conclusion.Wear);
    }

    public static TheoryData<string> Houses => [.. Examples.Names];

    [Theory]
    [MemberData(nameof(Houses))]
    public void Every_protection_of_every_example_house_can_be_run(string name)
    {
        House house = Examples.House(name);
        Comparison comparison = Comparison.OverWinter(house, 3, 2, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(comparison.Outcomes.Count, comparison.Outcomes.Select(o => o.Protection.Name).Distinct().Count());
        Assert.All(comparison.Outcomes, outcome => Assert.True(outcome.Winter!.Days == 2));
        Assert.All(comparison.Outcomes.SelectMany(o => o.Protection.Parts), part => Assert.Contains(part.Part, ProtectionList.Parts));
    }

    private static Outcome Made(string name, double deadheadS) => new()
    {
        Protection = new Protection(name, "", Examples.House("two-rooms"), settings => new StraightWiring(settings), []),
        DeadheadS = deadheadS,
        ShutS = deadheadS / 4,
        DeadheadEvents = deadheadS > 0 ? 4 : 0,
        HottestTrappedC = 61,
        PumpStarts = 10,
        PumpRunH = 5,
        PumpEnergyKWh = 1,
    };

    private static string Say(params Outcome[] outcomes) => string.Join(' ', Conclusion.Of(
        new Comparison(Examples.House("two-rooms") with { Units = DisplayUnits.Si }, "made up", [], outcomes), new Prices()));

    [Fact]
    public void The_conclusion_follows_from_the_numbers()
    {
        string words = Say(Made("no protection", 7200), Made("half", 3600), Made("worse", 9000), Made("good", 0));
        Assert.Contains("ran 2 h with less than its minimum flow, 30 min of it against valves that were all shut, in 4 stretches", words, StringComparison.Ordinal);
        Assert.Contains("61 °C", words, StringComparison.Ordinal);
        Assert.Contains("With half it is 1 h, 50 % of that without protection.", words, StringComparison.Ordinal);
        Assert.Contains("With worse it is longer: 2 h 30 min.", words, StringComparison.Ordinal);
        Assert.Contains("Never below its minimum flow with good.", words, StringComparison.Ordinal);
        Assert.Contains("is not predicted", words, StringComparison.Ordinal);

        Assert.Contains("None of them keeps", Say(Made("no protection", 7200), Made("half", 3600)), StringComparison.Ordinal);
        Assert.Contains("protection buys nothing that these numbers show", Say(Made("no protection", 0), Made("good", 0)), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_happens_withlockedOutprotection_the_conclusion_says_where_it_does()
    {
        string words = Say(Made("no protection", 0), Made("worse", 9000), Made("good", 0));
        Assert.Contains("With worse it did, for 2 h 30 min.", words, StringComparison.Ordinal);
        Assert.Contains("Nor with good.", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Never below", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bypass_of_the_house_is_only_where_it_is_named_unless_minimum_open_counts_it()
    {
        House house = Examples.House("two-rooms");
        Assert.NotNull(house.Bypass);
        Assert.Equal(
            ["bypass", "delay + bypass", "ZC + bypass"],
            ProtectionList.Of(house).Where(p => p.House.Bypass is not null).Select(p => p.Name));
        IReadOnlyList<Protection> counted = ProtectionList.Of(house with { Bypass = house.Bypass with { CountsAs = 1 } });
        Assert.Equal(
            ["bypass", "delay + bypass", "ZoneControl", "ZC + flow switch", "ZC + bypass"],
            counted.Where(p => p.House.Bypass is not null).Select(p => p.Name));
        Assert.Contains("minimum open counts it", counted.Single(p => p.Name == "ZoneControl").Explains, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_minimum_open_is_too_little_for_the_pump_the_conclusion_says_what_would_do()
    {
        House house = Examples.House("pottery");
        House low = house with { Controller = house.Controller with { MinimumOpen = 1 } };
        Protection ours = ProtectionList.Of(low).Single(p => p.Name == "ZoneControl");
        Assert.Contains("minimum_open = 2 would do.", ours.Remark, StringComparison.Ordinal);
        Assert.Equal("", ProtectionList.Of(house).Single(p => p.Name == "ZoneControl").Remark);
        Outcome shorter = Made("ZoneControl", 60) with { Protection = ours };
        Assert.Contains(ours.Remark, Say(Made("no protection", 7200), shorter), StringComparison.Ordinal);
    }

    [Fact]
    public void What_breaks_at_a_valve_held_open_by_hand_is_not_called_tried()
    {
        Comparison comparison = FiveDays(1, 2);
        Outcome held = comparison.Outcomes.Single(o => o.Protection.Name == "valve held open");
        Assert.Null(held.Trials[0]);
        Assert.All(comparison.Outcomes.Where(o => o != held), outcome => Assert.NotNull(outcome.Trials[0]));
        Assert.All(comparison.Outcomes, outcome => Assert.NotNull(outcome.Sound));
        Assert.Contains("valve held open (as far as it could be tried)", string.Join(' ', Conclusion.Of(comparison, new Prices())), StringComparison.Ordinal);
    }

    [Fact]
    public void A_flow_switch_that_locks_a_sound_house_lockedOutis_told_as_that()
    {
        Comparison days = FiveDays(1, 2);
        Outcome none = days.Outcomes[0];
        Outcome plain = days.Outcomes.Single(o => o.Protection.Name == "ZoneControl");
        Outcome locked = days.Outcomes.Single(o => o.Protection.Name == "ZC + flow switch");
        Outcome lockedOut = locked with { DeadheadS = 46, Winter = locked.Trials[0] };
        Outcome low = plain with { DeadheadS = 7200, Sound = plain.Sound! with { DeadheadS = 7200 } };

        string words = string.Join(' ', Conclusion.Of(days with { Outcomes = [none, low, lockedOut] }, new Prices()));

        Assert.Matches("With ZC [+] flow switch rooms get [0-9,]+ K·h too cold instead of", words);
        Assert.Contains("with nothing broken, stops the pump and waits for reset", words, StringComparison.Ordinal);
        Assert.DoesNotContain("A flow switch sees it", words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_breaks_is_told_beside_what_it_comes_to_withlockedOutprotection()
    {
        string words = string.Join(' ', Conclusion.Of(FiveDays(1, 2), new Prices()));
        Assert.Matches(@"With ZoneControl the pump gets too little when something breaks: actuator sticks, [^(]+ \(no protection: [^)]+\)\.", words);
    }

    [Fact]
    public void A_valve_held_open_by_hand_is_never_called_cheapest()
    {
        var prices = new Prices { Electricity = 0.3, Heat = 0.1, Parts = new Dictionary<string, double> { ["bypass"] = 1e6 } };
        string words = string.Join(' ', Conclusion.Of(FiveDays(1, 2), prices));
        Assert.Contains("hold no valve open by hand, bypass costs least", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_time_relay_starts_the_pump_after_its_time_and_not_before()
    {
        var settings = Examples.House("pottery").ToSettings();
        var relay = new DelayedStart(settings, 60_000);
        var inputs = new InputImage { Calls = 1 };
        var outputs = new OutputImage();
        relay.Scan(1000, inputs, outputs);
        Assert.Equal((1, false, 61_000L), (outputs.Valves, outputs.Pump, outputs.NextDeadlineMs));
        relay.Scan(60_900, inputs, outputs);
        Assert.False(outputs.Pump);
        relay.Scan(61_000, inputs, outputs);
        Assert.True(outputs.Pump && outputs.Heat);
        inputs.Calls = 0;
        relay.Scan(61_100, inputs, outputs);
        inputs.Calls = 1;
        relay.Scan(61_200, inputs, outputs);
        Assert.False(outputs.Pump);
    }

    [Fact]
    public void End_switches_hold_the_pump_for_the_zones_that_have_them()
    {
        House house = Examples.House("pottery");
        var interlock = new EndSwitchInterlock(house.ToSettings());
        var inputs = new InputImage { Calls = 1 << house.ZoneIndex("bath") };
        var outputs = new OutputImage();
        interlock.Scan(0, inputs, outputs);
        Assert.False(outputs.Pump);
        inputs.EndSwitches = 1 << house.ZoneIndex("throwing-room"); // not the one that calls
        interlock.Scan(100, inputs, outputs);
        Assert.False(outputs.Pump);
        inputs.EndSwitches = 1 << house.ZoneIndex("bath");
        interlock.Scan(200, inputs, outputs);
        Assert.True(outputs.Pump);
        inputs.EndSwitches = 0;
        inputs.Calls = 1 << house.ZoneIndex("shop"); // two wires: nothing to wait for
        interlock.Scan(300, inputs, outputs);
        Assert.True(outputs.Pump);
    }

    [Fact]
    public void A_valve_held_open_is_energised_whoever_calls()
    {
        var held = new HeldOpen(Examples.House("pottery").ToSettings(), 0b10);
        var outputs = new OutputImage();
        held.Scan(0, new InputImage(), outputs);
        Assert.Equal((0b10, false), (outputs.Valves, outputs.Pump));
        held.Scan(100, new InputImage { Calls = 1 }, outputs);
        Assert.Equal((0b11, true), (outputs.Valves, outputs.Pump));
    }
}
