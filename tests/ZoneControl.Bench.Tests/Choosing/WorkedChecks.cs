using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Choosing.Protections;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Tests.Houses;
using ZoneControl.Plant;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Tests.Choosing;

/// <summary>Results that an engineer can follow by hand. Each is worked out in its comment, apart from the code that is tried.</summary>
public class WorkedChecks
{
    /// <summary>
    /// Loops whose heads are their valves' alone: tube of 200 mm and 1 m loses nothing that counts. Kv 0.5 each, so
    /// h = 100/9.80665 · (3600·Q/0.5)² = 5.2862e8·Q² m (IEC 60534-1). The pump's three points make H = 4·(1 − (Q/Q0)²) with
    /// Q0 = 30 L/min = 5e-4 m³/s, so H = 4 − 1.6e7·Q². One zone of one loop each.
    /// </summary>
    private const string Valves = """
        name = "Valves"
        [pump]
        curve = [["0 L/min", "4 m"], ["15 L/min", "3 m"], ["30 L/min", "0 m"]]
        power = "60 W"
        minimum_flow = "8 L/min"
        [mains]
        length = "0 m"
        inside = "200 mm"
        [[manifold]]
        name = "main"
        [every_loop]
        inside = "200 mm"
        bends_k = 0
        valve_kvs = 0.5
        [[actuator]]
        name = "wax"
        kind = "two-wire"
        opening_time = "4 min"
        [[zone]]
        name = "a"
        actuator = "wax"
        loops = [{ length = "1 m" }]
        [[zone]]
        name = "b"
        actuator = "wax"
        loops = [{ length = "1 m" }]
        [[zone]]
        name = "c"
        actuator = "wax"
        loops = [{ length = "1 m" }]
        [controller]
        minimum_open = 2
        """;

    private static double Lpm(double m3s) => m3s * 60_000;

    /// <summary>
    /// n loops side by side have Kv n·0.5: 4 − 1.6e7·Q² = 5.2862e8/n²·Q², Q = √(4/(1.6e7 + 5.2862e8/n²)).
    /// n = 1: √(4/5.4462e8) = 8.5700e-5 m³/s = 5.142 L/min; n = 2: √(4/1.48155e8) = 1.64314e-4 = 9.859; n = 3:
    /// √(4/7.47356e7) = 2.31348e-4 = 13.881. So one zone is below 8 L/min and two are above: minimum open 2.
    /// </summary>
    [Fact]
    public void Flow_with_one_two_and_three_loops_open_and_the_minimum_open_that_follows()
    {
        House house = HouseText.House(Valves);
        var flows = new HouseFlows(house, 35);
        Assert.Equal(5.142, Lpm(flows.With(0b001).PumpFlowM3s), 0.01);
        Assert.Equal(9.859, Lpm(flows.With(0b011).PumpFlowM3s), 0.01);
        Assert.Equal(13.881, Lpm(flows.With(0b111).PumpFlowM3s), 0.015);
        Assert.Equal(2, new OpenSets(house, flows).LeastMinimumOpen(8.0 / 60_000));
    }

    /// <summary>
    /// With one loop open the pump must pass 8 L/min = 1.33333e-4 m³/s, where it gives 4 − 1.6e7·1.77778e-8 = 3.71556 m. The loop
    /// then takes √(3.71556/5.2862e8) = 8.3838e-5 = 5.030 L/min, and the bypass the rest, 2.970 L/min. Pressure:
    /// 994.03 kg/m³ (35 °C, IAPWS tables) · 9.80665 · 3.71556 = 36,220 Pa. All three open: 4 − 1.6e7·(2.31348e-4)² = 3.14365 m.
    /// </summary>
    [Fact]
    public void What_a_bypass_must_pass_with_one_zone_open()
    {
        House house = HouseText.House(Valves);
        var flows = new HouseFlows(house, 35);
        BypassNeed need = BypassNeed.Of(house, flows);
        Assert.Equal(2.970, Lpm(need.FlowM3s), 0.01);
        Assert.Equal(3.71556, need.OneOpenM, 0.003);
        Assert.Equal(3.14365, need.AllOpenM, 0.005);
        Assert.Equal(36_220, need.OneOpenM * flows.PascalPerM, 40.0);
    }

    /// <summary>
    /// 1/2 in tube (12.319 mm), 300 ft (91.44 m), 0.6 gpm (3.7854e-5 m³/s), water at 40 °C: v = 0.31759 m/s, Re = 5,947,
    /// f = 0.03574 by Colebrook, h = 0.03574·91.44/0.012319·0.31759²/(2·9.80665) = 1.364 m (worked out with the fluids library
    /// 1.0.22, and by this line). Its valve of Kv 5 adds 10.197·(3600·3.7854e-5/5)² = 0.0076 m.
    /// </summary>
    [Fact]
    public void Head_of_a_long_loop_of_half_inch_tube()
    {
        House house = HouseText.House(Valves
            .Replace("inside = \"200 mm\"\nbends_k = 0\nvalve_kvs = 0.5", "tube = \"1/2 in\"\nbends_k = 0\nvalve_kvs = 5", StringComparison.Ordinal)
            .Replace("{ length = \"1 m\" }", "{ length = \"300 ft\" }", StringComparison.Ordinal));
        var flows = new HouseFlows(house, 40);
        Assert.Equal(1.364 + 0.0076, Balancing.HeadNeeded(flows, [3.7854e-5, 0, 0]), 0.003);
    }

    /// <summary>
    /// 1,200 W with 5 K: 1,200/(994.03 · 4,179 · 5) = 5.7775e-5 m³/s = 3.467 L/min (density and heat capacity at 35 °C between the
    /// IAPWS values at 30 and 40 °C).
    /// </summary>
    [Fact]
    public void Flow_that_carries_1200_watts_with_five_degrees() =>
        Assert.Equal(3.467, Lpm(LoopFigures.DesignFlow(1200, new Liquid(35), new CheckAssumptions())), 0.003);

    /// <summary>
    /// 1.2 W/K for each m² (the file's common value) from 20 °C to −12 °C is 38.4 W/m²; (38.4/8.92)^(1/1.1) = 3.770 K above the
    /// room, 23.8 °C at the surface. At 29 °C, 9 K above: 8.92·9^1.1 = 100.0 W/m² (EN 1264-2's characteristic).
    /// </summary>
    [Fact]
    public void Surface_of_a_floor_on_the_coldest_day()
    {
        ZoneNeed need = new HeatNeeds(HouseText.House(HouseText.Sound), new CheckAssumptions()).Zones[0];
        Assert.Equal(38.4, need.FluxWPerM2, 0.01);
        Assert.Equal(23.77, need.SurfaceC, 0.02);
        Assert.Equal(100.0, need.MostWPerM2, 0.1);
        Assert.Equal(FloorUse.Occupied, need.Use);
    }

    /// <summary>
    /// 32 VA may be used. Hall (motor) 6 VA, office (wax) 7 VA for 40 s then 2, store two wax 14 VA for 40 s then 4: together 27 VA.
    /// Washroom's 6 VA would make 33. At 40 s office and store come down to 2 and 4 VA: 12 VA, and it starts.
    /// </summary>
    [Fact]
    public void The_last_of_four_zones_waits_forty_seconds_for_the_transformer()
    {
        House house = Examples.House("toolworks");
        Assert.Equal(TimeSpan.FromSeconds(40), Stagger.LongestWait(house.Zones, house.Transformer!.AllowedVa));
        Assert.Equal(TimeSpan.Zero, Stagger.LongestWait(house.Zones, 33));
    }

    /// <summary>Two parts at 90 and 60 are 150; 100 kWh at 0.30 are 30 a year; ten years: 450.</summary>
    [Fact]
    public void Purchase_and_ten_years_of_electricity()
    {
        House house = HouseText.House(HouseText.Sound);
        var outcome = new Outcome
        {
            Protection = new Protection("x", "", house, settings => null!, [new PartCount("controller", 1), new PartCount("bypass", 1)]),
            DeadheadS = 0,
            ShutS = 0,
            DeadheadEvents = 0,
            HottestTrappedC = 30,
            PumpStarts = 1,
            PumpRunH = 1,
            PumpEnergyKWh = 100,
        };
        var prices = new Prices { Parts = new Dictionary<string, double> { ["controller"] = 90, ["bypass"] = 60 }, Electricity = 0.30 };
        Assert.Equal(new Cost(150, 30, 450), Cost.Of(outcome, prices));
        Assert.Null(Cost.Of(outcome, prices with { Parts = new Dictionary<string, double> { ["bypass"] = 60 } }).InAll);
    }
}
