using CsCheck;

namespace ZoneControl.Plant.Tests;

/// <summary>
/// Hand calculations: a pump of 80 W with 0.35 L of water. Rates are 80 W · 60 s over ρ·V·cp of water (IAPWS-IF97, 2 bar).
/// </summary>
public class CasingTests
{
    [Theory]
    [InlineData(20, 0, 3.28)]
    [InlineData(40, 0, 3.31)]
    [InlineData(60, 0, 3.33)]
    [InlineData(40, 1.5, 2.24)] // with 1.5 kg of iron at 460 J/(kg K)
    public void Trapped_water_warms_at_the_rate_worked_by_hand(double celsius, double iron, double kelvinPerMinute)
    {
        Casing casing = Trapped(celsius, iron, loss: 0);
        Near.Absolute(kelvinPerMinute, casing.TemperatureC(60_000) - celsius, 0.006);
    }

    [Fact]
    public void Without_loss_it_goes_from_40_to_100_degrees_in_18_minutes()
    {
        Casing casing = Trapped(40, 0, loss: 0);
        Near.Absolute(100, casing.TemperatureC((long)(18.1 * 60_000)), 0.2);
    }

    [Fact]
    public void With_loss_it_tends_to_the_room_plus_power_over_loss()
    {
        // 1 W/K and 80 W: 80 K above the room of 20 °C. Time constant ρ·V·cp/UA = 0.35e-3 · 992.3 · 4178 = 1451 s.
        Casing casing = Trapped(40, 0, loss: 1);
        Near.Absolute(100, casing.TemperatureC(100_000_000), 1e-6);
        Near.Absolute(100 - 60 * Math.Exp(-1), casing.TemperatureC(1_451_000), 0.05);
    }

    [Theory]
    [InlineData(12, 0.096)]
    [InlineData(1, 1.16)]
    public void Running_water_takes_the_power_away_with_the_rise_worked_by_hand(double litresPerMinute, double rise)
    {
        // P/(ρ·Q·cp) for 80 W
        var casing = new Casing(Houses.Small);
        casing.Begin(0, true, litresPerMinute * Houses.LitrePerMinute);
        Near.Absolute(40 + rise, casing.TemperatureC(3_600_000), 0.005);
    }

    [Fact]
    public void Flow_flushes_hot_water_out_with_the_residence_time()
    {
        Casing casing = Trapped(40, 0, loss: 0);
        casing.Begin(600_000, false, 0);
        double hot = casing.TemperatureC(600_000) - 40;
        // 0.35 L at 7 L/min: 3 s
        casing.Begin(600_000, false, 7 * Houses.LitrePerMinute);
        Near.Relative(hot * Math.Exp(-1), casing.TemperatureC(603_000) - 40, 1e-9);
        Near.Relative(hot * Math.Exp(-4), casing.TemperatureC(612_000) - 40, 1e-9);
    }

    [Fact]
    public void With_the_pump_off_it_cools_to_the_room()
    {
        Casing casing = Trapped(40, 0, loss: 1);
        casing.Begin(0, false, 0);
        Near.Absolute(20 + 20 * Math.Exp(-1), casing.TemperatureC(1_451_000), 0.02);
        Near.Absolute(20, casing.TemperatureC(100_000_000), 1e-6);
        Assert.Equal(40, casing.HottestC(100_000_000));
    }

    [Fact]
    public void Two_steps_end_where_one_does()
    {
        Gen<int> step = Gen.Int[1, 100_000];
        Gen.Select(Gen.Double[0, 5], Gen.Double[0, 1e-4], step, step).Sample((loss, flow, one, two) =>
        {
            Casing whole = Trapped(40, 1, loss);
            whole.Begin(0, true, flow);
            Casing cut = Trapped(40, 1, loss);
            cut.Begin(0, true, flow);
            cut.Begin(one, true, flow);
            Near.Absolute(whole.TemperatureC(one + two), cut.TemperatureC(one + two), 1e-9);
        });
    }

    [Fact]
    public void A_loss_next_to_nothing_is_as_good_as_none()
    {
        // Where the closed form would subtract nearly equal numbers.
        double without = Trapped(40, 0, 0).TemperatureC(600_000);
        Near.Relative(without, Trapped(40, 0, 1e-13).TemperatureC(600_000), 1e-12);
        Near.Relative(without, Trapped(40, 0, 1e-5).TemperatureC(600_000), 1e-5);
    }

    [Fact]
    public void The_rate_is_the_derivative()
    {
        Casing casing = Trapped(40, 0, 1);
        double slope = (casing.TemperatureC(501_000) - casing.TemperatureC(499_000)) / 2;
        Near.Relative(slope, casing.RateKPerS(500_000), 1e-5);
    }

    private static Casing Trapped(double celsius, double iron, double loss)
    {
        var casing = new Casing(Houses.Small with
        {
            WaterC = celsius,
            Pump = Houses.Pump with { CasingIronKg = iron, CasingLossWPerK = loss },
        });
        casing.Begin(0, true, 0);
        return casing;
    }
}
