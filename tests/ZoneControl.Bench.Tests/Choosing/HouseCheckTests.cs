using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Tests.Houses;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Choosing;

public class HouseCheckTests
{
    private static CheckReport Check(string text) => HouseCheck.Of(HouseText.House(text), new CheckAssumptions());

    private static Finding Find(CheckReport report, string topic) => Assert.Single(report.Findings, finding => finding.Topic == topic);

    public static TheoryData<string> Houses => [.. Examples.Names];

    [Theory]
    [MemberData(nameof(Houses))]
    public void The_example_houses_have_no_fault_and_every_finding_says_what_it_rests_on(string name)
    {
        CheckReport report = HouseCheck.Of(Examples.House(name), new CheckAssumptions(), withCapacity: true);
        Assert.False(report.HasFaults, string.Join("; ", report.Findings.Where(f => f.Kind == FindingKind.Fault)));
        Assert.All(report.Findings, finding => Assert.NotEmpty(finding.Basis));
        Assert.All(report.Findings.Where(f => f.Kind != FindingKind.Fine), finding => Assert.NotEmpty(finding.Change));
        Assert.All(report.Findings.Where(f => f.Value is not null), finding => Assert.NotEmpty(finding.Unit));
    }

    [Fact]
    public void Too_small_a_minimum_open_is_a_fault_that_names_the_least_that_will_do()
    {
        string hungry = HouseText.Sound.Replace("minimum_flow = \"5 L/min\"", "minimum_flow = \"7 L/min\"", StringComparison.Ordinal)
            .Replace("minimum_open = 2", "minimum_open = 1", StringComparison.Ordinal);
        CheckReport report = Check(hungry);
        Finding finding = Find(report, "minimum open");
        Assert.Equal(FindingKind.Fault, finding.Kind);
        Assert.Contains("minimum_open = 2", finding.Change, StringComparison.Ordinal);
        Assert.Equal(FindingKind.Fine, Find(Check(hungry.Replace("minimum_open = 1", "minimum_open = 2", StringComparison.Ordinal)), "minimum open").Kind);
    }

    [Fact]
    public void A_pump_that_no_set_of_zones_satisfies_is_told_so()
    {
        Finding finding = Find(
            Check(HouseText.Sound.Replace("minimum_flow = \"5 L/min\"", "minimum_flow = \"30 L/min\"", StringComparison.Ordinal)), "minimum open");
        Assert.Equal(FindingKind.Fault, finding.Kind);
        Assert.Contains("not even all zones", finding.Change, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bypass_that_counts_as_open_but_does_not_carry_the_pump_is_a_fault()
    {
        string counted = HouseText.Sound + "\n[bypass]\nopens_at = \"0.45 bar\"\nkvs = 0.3\ncounts_as = 1\n";
        Assert.Equal(FindingKind.Fault, Find(Check(counted), "bypass counts").Kind);
        string wide = counted.Replace("opens_at = \"0.45 bar\"\nkvs = 0.3", "opens_at = \"0.1 bar\"\nkvs = 2.5", StringComparison.Ordinal);
        Assert.Equal(FindingKind.Fine, Find(Check(wide), "bypass counts").Kind);
    }

    [Fact]
    public void A_bypass_that_opens_with_all_zones_open_wastes_flow()
    {
        // A wasteful one also keeps the pump above its minimum flow, so only its waste is worth a word.
        string early = HouseText.Sound.Replace("minimum_flow = \"5 L/min\"", "minimum_flow = \"7 L/min\"", StringComparison.Ordinal)
            + "\n[bypass]\nopens_at = \"0.05 bar\"\nkvs = 2.5\n";
        Finding finding = Find(Check(early), "bypass");
        Assert.Equal(FindingKind.Advice, finding.Kind);
        Assert.Contains("set it higher", finding.Change, StringComparison.Ordinal);
    }

    private const string OneZone = "\n[bypass]\nopens_at = \"0.05 bar\"\nkvs = 2.5\n";

    [Fact]
    public void A_bypass_that_counts_for_nothing_is_no_flow_for_minimum_open()
    {
        string alone = HouseText.Sound.Replace("minimum_open = 2", "minimum_open = 1", StringComparison.Ordinal);
        Finding without = Find(Check(alone), "minimum open");
        Finding with = Find(Check(alone + OneZone), "minimum open");
        Assert.Equal(without.Value, with.Value);
        Assert.Contains("with the bypass shut", with.Says, StringComparison.Ordinal);

        // Loops alone are too little, the bypass makes up for it: no deadhead, and no reason to be at ease either.
        string hungry = alone.Replace("minimum_flow = \"5 L/min\"", "minimum_flow = \"7 L/min\"", StringComparison.Ordinal);
        Assert.Equal(FindingKind.Fault, Find(Check(hungry), "minimum open").Kind);
        Finding leaning = Find(Check(hungry + OneZone), "minimum open");
        Assert.Equal(FindingKind.Advice, leaning.Kind);
        Assert.Contains("only the bypass keeps the pump above its minimum flow", leaning.Change, StringComparison.Ordinal);
        Assert.Contains("minimum_open = 2", leaning.Change, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fitted_bypass_says_where_it_opens_whether_it_stays_shut_and_what_it_passes()
    {
        Finding open = Find(Check(HouseText.Sound + OneZone), "bypass");
        Assert.Equal(FindingKind.Advice, open.Kind);
        Assert.Contains("opens at 0.05 bar", open.Says, StringComparison.Ordinal);
        Assert.Contains("never shuts while the pump runs", open.Says, StringComparison.Ordinal);
        Assert.Equal("bypass alone", Check(HouseText.Sound + OneZone).Sets[0].Name);

        CheckReport report = Check(HouseText.Sound);
        var need = BypassNeed.Of(report.House, new HouseFlows(report.House, 35));
        string high = (need.AllOpenM * 0.0981 * 1.05).ToString("0.000", System.Globalization.CultureInfo.InvariantCulture);
        Finding shut = Find(Check(HouseText.Sound + OneZone.Replace("0.05 bar", high + " bar", StringComparison.Ordinal)), "bypass");
        Assert.Contains("so it stays shut then", shut.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bypass_is_not_fine_while_minimum_open_is_a_fault()
    {
        string hungry = HouseText.Sound.Replace("minimum_flow = \"5 L/min\"", "minimum_flow = \"7 L/min\"", StringComparison.Ordinal)
            .Replace("minimum_open = 2", "minimum_open = 1", StringComparison.Ordinal);
        Finding bypass = Find(Check(hungry), "bypass");
        Assert.Equal(FindingKind.Advice, bypass.Kind);
        Assert.Contains("minimum_open = 1 does not keep the pump above its minimum flow", bypass.Says, StringComparison.Ordinal);
        Assert.Contains("as long as minimum_open = 2 keeps",
            Find(Check(hungry.Replace("minimum_open = 1", "minimum_open = 2", StringComparison.Ordinal)), "bypass").Says, StringComparison.Ordinal);
    }

    /// <summary>
    /// 300 W into a casing that loses 1 W/K would settle 300 K above the room, far above boiling; 40 W settle at 60 °C.
    /// </summary>
    [Fact]
    public void A_pump_that_could_boil_its_water_is_advice_and_a_small_one_says_where_it_settles()
    {
        static string Pump(string power) => System.Text.RegularExpressions.Regex.Replace(HouseText.Sound, "power = \"[^\"]*\"", $"power = \"{power}\"");
        Finding strong = Find(Check(Pump("300 W")), "deadhead");
        Assert.Equal((FindingKind.Advice, "s"), (strong.Kind, strong.Unit));
        Assert.NotEmpty(strong.Change);
        Finding weak = Find(Check(Pump("40 W")), "deadhead");
        Assert.Equal((FindingKind.Fine, "°C"), (weak.Kind, weak.Unit));
        Assert.Equal(60, weak.Value!.Value, 0.01);
        Assert.Contains("to 60 °C, nine tenths of the way in ", weak.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Water_that_gets_hot_in_the_casing_is_advice_and_starts_as_warm_as_all_other_water_of_the_check()
    {
        static string Pump(string power) => System.Text.RegularExpressions.Regex.Replace(HouseText.Sound, "power = \"[^\"]*\"", $"power = \"{power}\"");
        Finding hot = Find(Check(Pump("75 W")), "deadhead"); // settles at 95 °C
        Assert.Equal((FindingKind.Advice, "°C"), (hot.Kind, hot.Unit));
        Assert.Contains("from 35 °C to 95 °C", hot.Says, StringComparison.Ordinal);
        Assert.Contains("(past 60 °C in ", hot.Says, StringComparison.Ordinal);
        Assert.Equal(FindingKind.Fine, Find(Check(Pump("65 W")), "deadhead").Kind);
        Assert.StartsWith("not reckoned: ", Find(HouseCheck.Of(Examples.House("two-rooms"), new CheckAssumptions()), "deadhead").Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Minimum_open_that_what_always_stands_open_reaches_is_told_before_and_after_it_is_set()
    {
        House rooms = Examples.House("two-rooms");
        Finding before = Find(HouseCheck.Of(rooms, new CheckAssumptions()), "minimum open");
        Finding after = Find(HouseCheck.Of(rooms with { Controller = rooms.Controller with { MinimumOpen = 1 } }, new CheckAssumptions()), "minimum open");
        Assert.Contains("not together with a slower or smaller one", before.Change, StringComparison.Ordinal);
        Assert.Equal(FindingKind.Advice, after.Kind);
        Assert.All([before, after], finding => Assert.Contains("before any valve has opened", finding.Change, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(59, 1)]
    [InlineData(60, 0)]
    public void A_switch_that_is_believed_before_its_stem_moves_is_advice(int seconds, int findings)
    {
        House house = Examples.House("pottery"); // a dead time of 1 min
        House sooner = house with
        {
            Zones = [.. house.Zones.Select(zone => zone.Name == "bath" ? zone with { SwitchMinTime = Setting.Given(TimeSpan.FromSeconds(seconds)) } : zone)],
        };
        Assert.Equal(findings, HouseCheck.Of(sooner, new CheckAssumptions()).Findings.Count(finding =>
            finding.Topic == "end switch" && finding.Says.StartsWith("Bath", StringComparison.Ordinal)));
        Assert.DoesNotContain(HouseCheck.Of(house, new CheckAssumptions()).Findings, finding => finding.Topic == "end switch");
    }

    [Fact]
    public void Compare_and_check_set_a_bypass_alike()
    {
        House house = Examples.House("pottery");
        double checkedPa = Find(HouseCheck.Of(house, new CheckAssumptions()), "bypass").Value!.Value;
        House compared = ZoneControl.Bench.Choosing.Protections.ProtectionList.Of(house).First(one => one.Name == "bypass").House;
        Assert.Equal(checkedPa, compared.Bypass!.OpensAtPa, 1.0);
    }

    [Fact]
    public void A_smaller_pump_is_offered_with_what_its_minimum_flow_then_asks_for()
    {
        Finding size = Find(HouseCheck.Of(Examples.House("pottery"), new CheckAssumptions()), "pump size");
        Assert.Matches(@"as this one gives at \d+ % of the speed it has now\. To keep its minimum flow of 6 L/min it would then need minimum_open = \d+", size.Change);
    }

    [Fact]
    public void A_panels_house_is_not_sent_to_a_speed_at_which_one_zone_alone_is_too_little() => Assert.Contains(
        "one zone alone does not pass its minimum flow",
        Find(HouseCheck.Of(Examples.House("retrofit"), new CheckAssumptions()), "pump size").Change, StringComparison.Ordinal);

    [Theory]
    [InlineData(278.87, "279 m")]
    [InlineData(1234.5, "1,235 m")]
    [InlineData(12.345, "12.3 m")]
    [InlineData(9.999, "10 m")]
    [InlineData(1.2345, "1.23 m")]
    public void Lengths_are_shown_with_three_digits_and_thousands_marks(double metres, string expected) =>
        Assert.Equal(expected, Show.Length(metres, DisplayUnits.Si));

    [Fact]
    public void A_floor_that_would_have_to_be_too_hot_is_a_fault()
    {
        CheckReport report = HouseCheck.Of(HouseText.House(HouseText.Sound), new CheckAssumptions { FluxWPerM2 = 120 });
        Assert.Equal(FindingKind.Fault, Find(report, "floor").Kind);
        Assert.True(report.HasFaults);
        Assert.Equal(FindingKind.Fine, Find(HouseCheck.Of(HouseText.House(HouseText.Sound), new CheckAssumptions { FluxWPerM2 = 90 }), "floor").Kind);
    }

    [Fact]
    public void Throttled_as_suggested_every_loop_gets_its_share()
    {
        House house = Examples.House("pottery");
        var assumed = new CheckAssumptions();
        var flows = new HouseFlows(house, assumed.WaterC);
        double[] design = [.. LoopFigures.Of(house, flows, new HeatNeeds(house, assumed), assumed).Select(loop => loop.DesignM3s)];
        IReadOnlyList<BalancedLoop> balanced = Balancing.Balance(flows, design);
        Assert.Contains(balanced, loop => double.IsInfinity(loop.Kv));

        // The network knows nothing of how the valves were reckoned.
        PlantDescription throttled = flows.Plant with
        {
            Loops = [.. flows.Plant.Loops.Zip(balanced).Select(pair => double.IsInfinity(pair.Second.Kv)
                ? pair.First
                : pair.First with { Balancing = BalancingValveDescription.AtKv(pair.Second.Kv) })],
        };
        var after = new HouseFlows(throttled);
        after.With(after.AllZones);
        double[] got = after.LoopFlows();
        for (int i = 0; i < got.Length; i++)
            Assert.Equal(1, got[i] / balanced[i].FlowM3s, 0.005);
        Assert.Equal(1, got[0] / got[^1] / (design[0] / design[^1]), 0.01);
    }

    [Fact]
    public void No_set_that_reaches_the_least_minimum_open_is_below_the_minimum_flow_and_one_less_lets_one_through()
    {
        foreach (string name in Examples.Names)
        {
            House house = Examples.House(name);
            var sets = new OpenSets(house, new HouseFlows(house, 35));
            double needed = house.Pump.MinimumFlowM3s.Value;
            int least = sets.LeastMinimumOpen(needed)!.Value;
            for (int zones = 0; zones < 1 << house.Zones.Count; zones++)
            {
                if (OpenSets.CapacityOf(house, zones) >= least)
                    Assert.True(sets.Flow(zones) >= needed, $"{name} {zones}");
            }

            Assert.True(least <= 1 || sets.Flow(sets.WorstReaching(least - 1)!.Value) < needed, name);
        }
    }

    [Fact]
    public void One_zone_with_its_companions_is_what_the_controller_opens()
    {
        House house = Examples.House("pottery");
        var sets = new OpenSets(house, new HouseFlows(house, 35));
        int bath = house.ZoneIndex("bath");
        var controller = new ZoneController(house.ToSettings());
        var inputs = new InputImage { Calls = 1 << bath };
        var outputs = new OutputImage();
        for (int ms = 0; ms <= 5000; ms += 100)
            controller.Scan(ms, inputs, outputs);
        Assert.Equal(outputs.Valves, sets.OpenedFor(bath));
    }

    [Fact]
    public void US_units_change_words_and_not_numbers()
    {
        House house = HouseText.House(HouseText.Sound);
        CheckReport si = HouseCheck.Of(house, new CheckAssumptions());
        CheckReport us = HouseCheck.Of(house with { Units = DisplayUnits.Us }, new CheckAssumptions());
        Assert.Equal(si.Findings.Select(f => (f.Topic, f.Kind, f.Value, f.Unit)), us.Findings.Select(f => (f.Topic, f.Kind, f.Value, f.Unit)));
        string[] metric = ["L/min", "°C", " m/s", " bar", " kW", "W/m²"];
        Assert.All(us.Findings, finding => Assert.All(metric, unit =>
            Assert.DoesNotContain(unit, $"{finding.Says}|{finding.Basis}|{finding.Change}", StringComparison.Ordinal)));
    }
}
