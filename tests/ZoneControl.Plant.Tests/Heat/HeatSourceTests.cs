using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class HeatSourceTests
{
    private static readonly SourceDescription _source = new()
    {
        PowerW = 5000,
        Set = ResetCurve.Fixed(40),
        DifferentialK = 6,
        MinimumRunS = 120,
        MinimumRestS = 60,
        HighLimitC = 50,
        WaterM3 = 0.02,
    };

    [Fact]
    public void It_goes_on_below_and_off_above_its_set_point_while_it_is_asked()
    {
        var source = new HeatSource(_source);
        Assert.False(source.Look(Water(30), 0));
        source.Asked = true;
        Assert.False(source.Look(Water(37.1), 0));
        Assert.True(source.Look(Water(36.99), 1000));
        Assert.False(source.Look(Water(42.9), 500_000));
        Assert.True(source.Look(Water(43.01), 501_000));
        Assert.Equal((false, 1, 0), (source.IsOn, source.Starts, source.LimitTrips));
    }

    [Fact]
    public void A_run_outlasts_the_asking_and_the_set_point_until_its_shortest_time_is_over()
    {
        HeatSource source = On();
        source.Asked = false;
        Assert.False(source.Look(Water(44), 119_999));
        Assert.Equal(120_000, source.NextChange(Water(44), 1000, 3_600_000));
        Assert.True(source.Look(Water(44), 120_000));
        source.Asked = true;
        Assert.False(source.Look(Water(20), 179_999));
        Assert.Equal(180_000, source.NextChange(Water(20), 121_000, 3_600_000));
        Assert.True(source.Look(Water(20), 180_000));
    }

    [Fact]
    public void Its_own_high_limit_ends_any_run_and_lets_it_back_five_kelvin_below()
    {
        HeatSource source = On();
        Assert.True(source.Look(Water(50.01), 5000));
        Assert.Equal((false, 1), (source.IsOn, source.LimitTrips));
        var hot = new HeatSource(_source with { Set = ResetCurve.Fixed(49), HighLimitC = 50, DifferentialK = 2 }) { Asked = true };
        hot.Outdoor(0);
        Assert.True(hot.Look(Water(20), 0));
        Assert.True(hot.Look(Water(50.01), 1000));
        Assert.False(hot.Look(Water(47), 500_000)); // below its set point's 48, but not yet 45
        Assert.True(hot.Look(Water(44.99), 501_000));
    }

    [Theory]
    [InlineData(-30, 40)]
    [InlineData(-12, 40)]
    [InlineData(3, 33)]
    [InlineData(18, 26)]
    [InlineData(30, 26)]
    public void The_set_point_follows_the_weather(double outdoor, double set)
    {
        Near.Absolute(set, new ResetCurve(-12, 40, 18, 26).At(outdoor), 1e-12);
        var source = new HeatSource(_source with { Set = new ResetCurve(-12, 40, 18, 26) });
        source.Outdoor(outdoor);
        Near.Absolute(set, source.SetC, 1e-12);
    }

    private static HeatSource On()
    {
        var source = new HeatSource(_source) { Asked = true };
        Assert.True(source.Look(Water(20), 0));
        return source;
    }

    private static RcRun Water(double celsius)
    {
        var run = new RcRun(1);
        run.Begin(0, new RcNetwork([8e4], [], [2]), [celsius], [2 * celsius]);
        return run;
    }
}
