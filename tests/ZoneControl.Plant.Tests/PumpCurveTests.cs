using CsCheck;

namespace ZoneControl.Plant.Tests;

public class PumpCurveTests
{
    [Fact]
    public void Three_points_give_the_power_law_through_them()
    {
        // H = 9 − 9·(Q/3)², the reference networks' pump: at Q = 1 it is 8, at 2 it is 5.
        var curve = new PumpCurve([new(0, 9), new(1.5, 6.75), new(3, 0)]);
        Near.Relative(8, curve.Head(1, out double slope), 1e-14);
        Near.Relative(-2, slope, 1e-13);
        Near.Relative(5, curve.Head(2, out _), 1e-14);
        Assert.Equal(9, curve.ShutoffHeadM);
    }

    [Fact]
    public void Two_points_give_a_straight_line()
    {
        var curve = new PumpCurve([new(0, 6), new(2e-3, 0)]);
        Near.Relative(4.5, curve.Head(0.5e-3, out double slope), 1e-14);
        Near.Relative(-3000, slope, 1e-13);
    }

    [Fact]
    public void More_points_are_all_on_the_curve_and_level_stretches_stay_level()
    {
        PumpPoint[] points = [new(0, 6), new(0.2e-3, 6), new(0.5e-3, 5), new(1e-3, 2), new(1.2e-3, 0)];
        var curve = new PumpCurve(points);
        foreach (PumpPoint point in points)
        {
            Near.Absolute(point.HeadM, curve.Head(point.FlowM3s, out _), 1e-12);
        }

        Near.Absolute(6, curve.Head(0.1e-3, out _), 1e-12);
    }

    [Fact]
    public void Past_its_last_point_the_pump_gives_no_head()
    {
        var curve = new PumpCurve([new(0, 9), new(1.5, 6.75), new(3, 0)]);
        Assert.Equal(0, curve.Head(3.5, out double slope));
        Assert.Equal(0, slope);
    }

    [Fact]
    public void Head_never_rises_and_the_slope_is_its_derivative()
    {
        Gen.Select(Houses.AnyCurve, Gen.Double[0.001, 0.998]).Sample((points, part) =>
        {
            var curve = new PumpCurve(points);
            double full = points[^1].FlowM3s;
            double flow = part * full;
            double head = curve.Head(flow, out double slope);
            double step = 1e-6 * full;
            double before = curve.Head(flow - step, out _);
            double after = curve.Head(flow + step, out _);
            Assert.True(before >= head - 1e-12 && head >= after - 1e-12, $"head rises at {flow}");
            Assert.True(slope <= 0);
            Near.Absolute((after - before) / (2 * step), slope, 1e-3 * curve.ShutoffHeadM / full, $"slope at {flow}");
        });
    }

    [Theory]
    [InlineData("expected at least 2", 0.0, 5.0)]
    [InlineData("expected head never to rise", 0.0, 5.0, 1e-3, 6.0, 2e-3, 0.0)]
    [InlineData("expected flow to rise", 0.0, 5.0, 1e-3, 4.0, 1e-3, 0.0)]
    [InlineData("expected 0, the shutoff point", 1e-4, 5.0, 1e-3, 0.0)]
    [InlineData("expected 0, the end of the curve", 0.0, 5.0, 1e-3, 1.0)]
    [InlineData("expected finite numbers", 0.0, 5.0, 1e-3, double.NaN)]
    [InlineData("expected more than 0 and at most 100 m", 0.0, 0.0, 1e-3, 0.0)]
    public void A_list_of_points_that_is_no_curve_is_refused_with_the_reason(string reason, params double[] flowsAndHeads)
    {
        var points = flowsAndHeads.Chunk(2).Select(p => new PumpPoint(p[0], p[1])).ToList();
        Assert.Contains(reason, Assert.Throws<ArgumentException>(() => new PumpCurve(points)).Message, StringComparison.Ordinal);
    }
}
