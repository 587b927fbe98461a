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
        Assert.All(us.Findings, finding => Assert.DoesNotContain("L/min", finding.Says, StringComparison.Ordinal));
        Assert.All(us.Findings, finding => Assert.DoesNotContain("°C", finding.Says, StringComparison.Ordinal));
    }
}
