using CsCheck;
using ZoneControl.Logic;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests;

public class WordsTests
{
    [Theory]
    [InlineData(0, "0 s")]
    [InlineData(0.04, "0.1 s")]
    [InlineData(0.4, "0.4 s")]
    [InlineData(9.96, "10 s")]
    [InlineData(42, "42 s")]
    [InlineData(59.6, "1 min")]
    [InlineData(1880, "31 min 20 s")]
    [InlineData(3599.7, "1 h")]
    [InlineData(3600, "1 h")]
    [InlineData(7500, "2 h 5 min")]
    public void Durations_read_as_a_person_says_them(double seconds, string said) =>
        Assert.Equal(said, Quantity.Duration(seconds));

    [Fact]
    public void Units_are_the_houses()
    {
        // 0 °C = 32 °F and 100 °C = 212 °F by definition; a gallon is 231 in³ = 3.785411784 L (NIST Handbook 44, appendix C).
        Assert.Equal("212.0 °F", Quantity.Temperature(100, UnitSystem.UsCustomary));
        Assert.Equal("32.0 °F", Quantity.Temperature(0, UnitSystem.UsCustomary));
        Assert.Equal("100.0 °C", Quantity.Temperature(100, UnitSystem.Metric));
        Assert.Equal(1, Quantity.FlowValue(3.785411784e-3 / 60, UnitSystem.UsCustomary), 12);
        Assert.Equal(3.785411784, Quantity.FlowValue(3.785411784e-3 / 60, UnitSystem.Metric), 12);
        Assert.Equal("38.5 Wh", Quantity.Energy(38.5));
        Assert.Equal("1.24 kWh", Quantity.Energy(1240));
    }

    [Fact]
    public void Moments_are_time_of_day_or_time_since_the_start()
    {
        var day = new Clock(new TimeOnly(23, 50));
        Assert.Equal("23:50", day.Minutes(0));
        Assert.Equal("23:50:12.5", day.Seconds(12_500));
        Assert.Equal("day 2 00:10", day.Minutes(1_200_000));
        var plain = new Clock(null);
        Assert.Equal("0:00:00", plain.Seconds(0));
        Assert.Equal("26:40", plain.Minutes(96_000_000));
    }

    [Fact]
    public void Ticks_stand_at_round_times_and_never_crowd()
    {
        Gen.Select(Gen.Long[1, 1_000_000_000], Gen.Int[1, 12], Gen.Int[0, 1439]).Sample((end, most, minute) =>
        {
            var clock = new Clock(new TimeOnly(minute / 60, minute % 60));
            IReadOnlyList<long> ticks = TimeAxis.Ticks(end, clock, most);
            Assert.InRange(ticks.Count, 0, most);
            Assert.All(ticks, t => Assert.InRange(t, 0, end));
            if (ticks.Count > 1 && ticks[1] - ticks[0] >= 60_000)
                Assert.All(ticks, t => Assert.EndsWith(":00", clock.Seconds(t), StringComparison.Ordinal));
        });
    }

    [Fact]
    public void A_value_axis_holds_its_values_between_round_ticks()
    {
        Assert.Equal([0, 5, 10], ValueAxis.For(0, 9.7, 3).Ticks);
        Gen.Select(Gen.Double[-1000, 1000], Gen.Double[0.001, 1000]).Sample((low, range) =>
        {
            ValueAxis axis = ValueAxis.For(low, low + range);
            Assert.InRange(low, axis.Low - 1e-6, axis.High);
            Assert.InRange(low + range, axis.Low, axis.High + 1e-6);
            Assert.InRange(axis.Ticks.Count, 2, 8);
        });
        Assert.Equal(2, ValueAxis.For(0, 0).Ticks.Count);
    }

    [Fact]
    public void Every_hold_reason_has_a_letter_of_its_own()
    {
        char[] letters = [.. Enum.GetValues<HoldReason>().Select(r => HoldSign.For(r).Letter)];
        Assert.Equal(letters.Length, letters.Distinct().Count());
    }

    [Fact]
    public void A_failing_run_leads_with_what_went_wrong()
    {
        Assert.Equal("The pump never ran with less than its minimum flow.", Sayings.Leading(Morning.Controlled()));
        Assert.Equal("Broken: PUMP-PROOF; 1 expectation not met.", Sayings.Leading(Morning.Controlled(passed: false)));
        Assert.Equal("Deadhead 18 min.", Sayings.Leading(Morning.Straight()));
        Assert.Equal(
            "1 rule BROKEN, 2 kept, 1 not called upon; 1 of 2 expectations met; deadhead 0 s",
            Sayings.Grounds(Morning.Controlled(passed: false)));
    }
}
