using CsCheck;

namespace ZoneControl.Plant.Tests;

/// <summary>The quick search against the slow one and the laws it rewrites; parts in series and in parallel.</summary>
public class CircuitTests
{
    [Fact]
    public void Four_paths_at_a_time_follow_the_same_laws_as_one_path()
    {
        // Very rough pipes are left out: across their steep transition the steps may go to and fro, and the slow search it is.
        Gen.Select(Houses.Any, Gen.Double[1e-3, 20], Gen.Double[0, 1e12]).Sample((house, head, valve) =>
        {
            house = house with
            {
                Loops = [.. house.Loops.Select(l => l with { Tube = l.Tube with { RoughnessM = 0.4 * l.Tube.RoughnessM } })],
            };
            double viscosity = Water.KinematicViscosity(house.WaterC);
            FlowPath[] paths = [.. house.Loops.Select(l => new FlowPath(l.Tube, house.Rules, viscosity))];
            var bank = new PathBank(house.Rules.Friction, paths);
            double root = Math.Sqrt(head);
            for (int i = 0; i < paths.Length; i++)
            {
                bank.Open(i, valve + 1, root);
            }

            for (int i = 0; i < 40; i++)
            {
                bank.Follow(root);
            }

            double sum = 0;
            for (int i = 0; i < paths.Length; i++)
            {
                double lost = paths[i].Head(bank.FlowOf(i), valve + 1, out double slope);
                Near.Relative(head, lost, 1e-11, $"head of path {i}");
                Near.Relative(slope, 2 * root * bank.RootPerFlow(i), 1e-9, $"slope of path {i}");
                sum += bank.FlowOf(i);
            }

            Near.Relative(sum, bank.Flow, 1e-12, "sum");
            Near.Relative(sum, bank.FlowAtNone + bank.FlowPerRoot * root, 1e-9, "line");
            Assert.InRange(bank.Worst, 0, 1e-12 * root);
        }, iter: 2_000);
    }

    [Fact]
    public void The_quick_search_and_the_slow_one_agree()
    {
        Gen.Select(Houses.Any, Houses.AnyTravels).Sample((house, travels) =>
        {
            var network = new Network(house);
            network.Solve(travels);
            var circuit = new Circuit(house);
            for (int i = 0; i < house.Loops.Count; i++)
            {
                circuit.SetTravel(i, house.Loops[i].Zone < 0 ? 1 : travels[house.Loops[i].Zone]);
            }

            if (network.SlowSearches > 0 || network.PumpFlowM3s == 0)
            {
                return;
            }

            var slow = new CircuitBracket(circuit);
            Near.Absolute(slow.Solve(), network.HeadAcrossMainsEndsM, 1e-9 * network.PumpHeadM, "head");
            for (int i = 0; i < house.Loops.Count; i++)
            {
                Near.Absolute(slow.LoopFlows[i], network.LoopFlowM3s(i), 1e-8 * slow.LoopFlows[i], $"loop {i}");
            }
        }, iter: 3_000);
    }

    [Fact]
    public void Hardly_any_house_is_left_to_the_slow_search()
    {
        // Seen over 100,000 random houses: 2.5 in 100, nearly all with a valve open by less than a thousandth.
        int slow = 0;
        const int Cases = 5_000;
        Gen.Select(Houses.Any, Houses.AnyTravels).Sample((house, travels) =>
        {
            var network = new Network(house);
            network.Solve(travels);
            Interlocked.Add(ref slow, (int)network.SlowSearches);
        }, iter: Cases);
        Assert.InRange(slow, 0, Cases * 6 / 100);
    }

    [Fact]
    public void Strokes_of_a_plain_house_are_never_left_to_the_slow_search()
    {
        var network = new Network(Houses.Small);
        for (int i = 0; i <= 2400; i++)
        {
            network.Solve([Math.Min(1, i / 1200.0), Math.Max(0, i / 1200.0 - 1)]);
        }

        network.Solve([0, 1]);
        network.Solve([1, 0]);
        Assert.Equal(0, network.SlowSearches);
    }

    [Fact]
    public void A_balancing_valve_in_series_adds_as_one_over_its_Kv_squared()
    {
        // 1/Kv² = 1/1.2² + 1/0.9², so both together are one valve of Kv 0.72.
        var both = new Network(With(Houses.Loop(0, 0, 60) with { Balancing = BalancingValveDescription.AtKv(0.9) }));
        var one = new Network(With(Houses.Loop(0, 0, 60) with { ValveKvs = 0.72 }));
        both.Solve([1, 0]);
        one.Solve([1, 0]);
        Near.Relative(one.LoopFlowM3s(0), both.LoopFlowM3s(0), 1e-9);

        static PlantDescription With(LoopDescription loop) => Houses.Small with { Loops = [loop, Houses.Loop(1, 0, 90)] };
    }

    [Fact]
    public void A_balancing_valve_has_the_Kv_of_its_setting()
    {
        BalancingPoint[] table = [new(0.5, 0.2), new(1, 0.4), new(2, 0.8), new(4, 1.6)];
        Near.Relative(0.4, new BalancingValveDescription(1, table).Kv, 1e-12);
        Near.Relative(0.6, new BalancingValveDescription(1.5, table).Kv, 1e-3); // the table is a straight line
        Near.Relative(1.6, new BalancingValveDescription(4, table).Kv, 1e-12);
        Assert.Equal(0.7, BalancingValveDescription.AtKv(0.7).Kv);
    }

    [Fact]
    public void A_heat_exchanger_in_the_mains_is_worth_the_K_of_its_Kv()
    {
        // K = 1.59888e9 · D⁴/Kv²: Kv 2 on 20 mm is 63.955.
        var exchanger = new Network(Houses.Small with { HeatExchangerKv = 2 });
        var fittings = new Network(Houses.Small with { Mains = Houses.Small.Mains with { FittingsK = 12 + 63.9552 } });
        exchanger.Solve([1, 1]);
        fittings.Solve([1, 1]);
        Near.Relative(fittings.PumpFlowM3s, exchanger.PumpFlowM3s, 1e-5);
    }

    [Fact]
    public void A_fixed_bypass_passes_by_the_root_of_pressure_and_beside_a_spring_they_add()
    {
        // Kv 0.8 at 0.25 bar: 0.4 m³/h. The spring alone passes 0.5 · 1.6 · 0.5 = 0.4 there too.
        var both = new Bypasses(new BypassDescription(20_000, 10_000, 1.6), 0.8, 1000, 9.80665);
        double head = 25_000 / 9806.65;
        Near.Relative(0.4 / 3600, both.FixedFlow(head), 1e-12);
        Near.Relative(0.8 / 3600, both.Flow(head, out double slope), 1e-12);
        double step = 1e-6;
        Near.Relative((both.Flow(head + step, out _) - both.Flow(head - step, out _)) / (2 * step), slope, 1e-6);
    }

    [Fact]
    public void A_fixed_bypass_gives_the_pump_somewhere_to_go_with_everything_shut()
    {
        var plant = new PlantModel(Houses.Small with { FixedBypassKv = 0.5 });
        plant.Drive(0, pump: true, heat: false);
        plant.AdvanceTo(600_000);
        Assert.Equal(plant.PumpFlowM3s, plant.BypassFlowM3s);
        Assert.Equal(0, plant.DeadheadS);
    }

    [Fact]
    public void Manifolds_behind_longer_branches_get_less()
    {
        // Common practice: each manifold has its own piping.
        var network = new Network(Houses.Small with
        {
            Manifolds = [new("near", new(4, 0.02, 1.5e-6, 5)), new("far", new(40, 0.013, 1.5e-6, 20))],
            Loops = [Houses.Loop(0, 0, 80), Houses.Loop(1, 1, 80)],
        });
        network.Solve([1, 1]);
        Assert.True(network.LoopFlowM3s(1) < 0.95 * network.LoopFlowM3s(0));
        Assert.Equal(network.LoopFlowM3s(1), network.ManifoldFlowM3s(1));
    }

    [Theory]
    [InlineData(50, 0.5, 0.1414)]
    [InlineData(30, 0.5, 0.1826)]
    [InlineData(30, 1, 1)]
    [InlineData(30, 0, 0)]
    public void Equal_percentage_passes_what_its_formula_says(double rangeability, double travel, double opening)
    {
        // R^(x − 1), but 0 when shut.
        MonotoneCurve curve = ValveCurve.Through(ValveCurve.EqualPercentage(rangeability));
        Near.Absolute(opening, ValveCurve.Opening(curve, travel), 5e-5);
    }

    [Fact]
    public void The_characteristic_decides_what_a_half_open_valve_passes()
    {
        double[] flows = [.. new[] { ValveCurve.QuickOpening, ValveCurve.Linear, ValveCurve.EqualPercentage(30) }.Select(table =>
        {
            var network = new Network(Houses.Small with
            {
                Loops = [Houses.Loop(0, 0, 60) with { ValveTable = table }, Houses.Loop(1, 0, 90)],
            });
            network.Solve([0.5, 0]);
            return network.LoopFlowM3s(0);
        })];
        Assert.True(flows[0] > flows[1] && flows[1] > flows[2]);
    }
}
