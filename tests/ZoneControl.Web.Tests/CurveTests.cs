using CsCheck;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests;

public class CurveTests
{
    [Fact]
    public void A_thinned_curve_stays_within_its_tolerance_at_every_point_left_out()
    {
        Gen.Select(Gen.Double[-100, 100].Array[0, 60], Gen.Double[0, 20]).Sample((values, tolerance) =>
        {
            TimedValue[] all = [.. values.Select((v, i) => new TimedValue(i * 1000L, v))];
            IReadOnlyList<TimedValue> kept = Curve.Thin(all, tolerance);
            Assert.All(all, p => Assert.InRange(Curve.At(kept, p.Ms) - p.Value, -tolerance - 1e-9, tolerance + 1e-9));
        });
    }

    [Fact]
    public void A_straight_line_keeps_only_its_ends()
    {
        TimedValue[] line = [.. Enumerable.Range(0, 100).Select(i => new TimedValue(i * 1000, 3 + 0.5 * i))];
        Assert.Equal([line[0], line[^1]], Curve.Thin(line, 1e-6));
    }

    [Fact]
    public void A_long_saw_is_thinned_in_moments()
    {
        // Ever smaller teeth split off one point at a time; with the square of the points this would take minutes.
        const int points = 100_000;
        TimedValue[] saw = [.. Enumerable.Range(0, points).Select(i => new TimedValue(i * 1000L, i % 2 * (2.0 - i / (double)points)))];
        var watch = System.Diagnostics.Stopwatch.StartNew();
        Assert.Equal(points, Curve.Thin(saw, 0.1).Count);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 15);
    }

    [Fact]
    public void Both_sides_of_a_step_are_kept()
    {
        TimedValue[] step = [new(0, 0), new(1000, 0), new(2000, 0), new(2000, 5), new(3000, 5), new(4000, 5)];
        Assert.Equal([step[0], step[2], step[3], step[5]], Curve.Thin(step, 0.01));
    }

    [Fact]
    public void Between_two_points_a_curve_is_a_straight_line_and_outside_them_it_is_level()
    {
        TimedValue[] curve = [new(1000, 10), new(3000, 20)];
        Assert.Equal(10, Curve.At(curve, 0));
        Assert.Equal(12.5, Curve.At(curve, 1500));
        Assert.Equal(20, Curve.At(curve, 9000));
        Assert.Equal(0, Curve.At([], 500));
    }
}
