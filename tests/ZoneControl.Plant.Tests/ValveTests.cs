using CsCheck;

namespace ZoneControl.Plant.Tests;

public class ValveTests
{
    [Theory]
    [InlineData(2, 1000)]
    [InlineData(3, 2250)]
    public void A_valve_of_Kv_1_2_takes_the_pressure_worked_by_hand(double litresPerMinute, double pascal)
    {
        // Δp = 1 bar · (Q/Kv)² at 1000 kg/m³: 2 L/min is 0.12 m³/h, a tenth of Kv, so 0.01 bar.
        double flow = litresPerMinute / 60_000;
        double head = ValveCurve.Resistance(1.2, 9.80665) * flow * flow;
        Near.Relative(pascal, 1000 * 9.80665 * head, 1e-12);
    }

    [Fact]
    public void A_valve_of_Kv_1_2_is_K_23_on_12_mm()
    {
        // K = 1.59888e9 · D⁴/Kv² (from both definitions): 23.02 for 12 mm and Kv 1.2.
        double perVelocityHead = 8 / (9.80665 * Math.PI * Math.PI * Math.Pow(0.012, 4));
        Near.Relative(23.02, ValveCurve.Resistance(1.2, 9.80665) / perVelocityHead, 3e-4);
    }

    [Fact]
    public void A_manifold_valve_opens_quickly()
    {
        // The representative quick-opening curve tabulated by the open-source library `fluids`.
        Assert.Equal(0, ValveCurve.Opening(0));
        Near.Relative(0.79, ValveCurve.Opening(0.25), 1e-12);
        Near.Relative(0.90, ValveCurve.Opening(0.5), 1e-12);
        Near.Relative(1, ValveCurve.Opening(1), 1e-12);
    }

    [Fact]
    public void A_valve_passes_more_the_further_it_is_open()
    {
        Gen.Double[0, 1].Select(Gen.Double[0, 1]).Where((a, b) => b - a > 1e-6).Sample((less, more) =>
            Assert.True(ValveCurve.Opening(less) < ValveCurve.Opening(more)));
    }

    [Theory]
    [InlineData(20_000, 0)]
    [InlineData(19_000, 0)]
    [InlineData(25_000, 0.5 * 1.6 * 0.5)]
    [InlineData(30_000, 1.6 * 0.547722557505)]
    [InlineData(64_000, 1.6 * 0.8)]
    public void A_spring_bypass_opens_in_proportion_over_its_band(double pascal, double cubicMetresPerHour)
    {
        // Opening 0.2 bar, band 0.1 bar, Kvs 1.6: Q = x · 1.6 · √Δp[bar], by hand.
        var bypass = new SpringBypass(new BypassDescription(20_000, 10_000, 1.6), 1000, 9.80665);
        Near.Absolute(cubicMetresPerHour, 3600 * bypass.Flow(pascal / 9806.65, out _), 1e-9);
    }

    [Fact]
    public void A_bypass_passes_more_at_more_head_and_its_slope_is_the_derivative()
    {
        var bypass = new SpringBypass(new BypassDescription(20_000, 10_000, 1.6), 992, 9.80665);
        Gen.Double[0.01, 6].Sample(head =>
        {
            double flow = bypass.Flow(head, out double slope);
            double before = bypass.Flow(head - 1e-6, out _);
            double after = bypass.Flow(head + 1e-6, out _);
            Assert.True(before <= flow && flow <= after);
            bool kink = Math.Abs(head * 992 * 9.80665 - 20_000) < 1 || Math.Abs(head * 992 * 9.80665 - 30_000) < 1;
            if (!kink)
            {
                Near.Absolute((after - before) / 2e-6, slope, 1e-8);
            }
        });
    }
}
