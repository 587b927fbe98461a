using CsCheck;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

/// <summary>The search for the next crossing against making every look.</summary>
public class FirstLookTests
{
    private static readonly Gen<RcNetwork> _network =
        from n in Gen.Int[1, 5]
        from capacity in Log(1e3, 1e7).Array[n]
        from links in Log(0.1, 500).Array[Math.Max(1, n - 1)]
        from outward in Log(0.1, 500).Array[n]
        select new RcNetwork(capacity, [.. Enumerable.Range(1, n - 1).Select(i => (i - 1, i, links[i - 1]))], outward);

    [Fact]
    public void The_first_look_is_the_one_that_looking_every_second_finds()
    {
        int found = 0;
        (from network in _network
         from start in Gen.Double[0, 40].Array[network.Count]
         from heat in Gen.Double[-2000, 8000].Array[network.Count]
         from body in Gen.Int[0, network.Count - 1]
         from level in Gen.Double[0, 40]
         from near in Gen.Double[-0.2, 0.2]
         from close in Gen.Bool
         from rising in Gen.Bool
         from after in Gen.Long[0, 5_000]
         from length in Gen.Long[1, 4_000_000]
         from warmth in Gen.Double[-3, 3]
         from anticipated in Gen.Bool
         select (network, start, heat, body, level: close ? start[body] + near : level, rising, after, length, warmth, anticipated))
            .Sample(x =>
            {
                var run = new RcRun(5);
                run.Begin(0, x.network, x.start, x.heat);
                var added = x.anticipated ? new Anticipation(-3000, 0.1, x.warmth, 1 / 400.0) : default;
                long before = x.after + x.length;
                long expected = PlantModel.Never;
                for (long ms = (x.after / 1000 + 1) * 1000; ms < before && expected == PlantModel.Never; ms += 1000)
                {
                    expected = run.HasReached(x.body, x.level, x.rising, ms, added) ? ms : expected;
                }

                Assert.Equal(expected, run.FirstLook(x.body, x.level, x.rising, x.after, before, added));
                if (expected is > 10_000 and < PlantModel.Never)
                {
                    Interlocked.Increment(ref found);
                }
            }, iter: 3000);
        Assert.InRange(found, 100, 3000); // or the test looked at nothing of interest
    }

    // A curve that touches the level and turns: one body warmed quickly and cooled by a slow one. By brute force as above.
    [Fact]
    public void A_bump_of_a_few_seconds_above_the_level_is_found()
    {
        var network = new RcNetwork([2e3, 1e6], [(0, 1, 40)], [1, 5]);
        var run = new RcRun(2);
        run.Begin(0, network, [25, 20], [0, -400]);
        double hottest = Enumerable.Range(1, 3600).Max(s => run.CelsiusAt(0, s * 1000L));
        run.Begin(0, network, [20, 25], [0, -400]);
        (double top, int second) = Enumerable.Range(1, 3600).Select(s => (run.CelsiusAt(0, s * 1000L), s)).Max();
        Assert.InRange(second, 10, 3000);
        Assert.True(hottest < 25);
        Assert.Equal(second * 1000L, run.FirstLook(0, top, rising: true, 0, 3_600_000));
        Assert.Equal(PlantModel.Never, run.FirstLook(0, top + 1e-9, rising: true, 0, 3_600_000));
    }

    private static Gen<double> Log(double low, double high) => Gen.Double[Math.Log(low), Math.Log(high)].Select(Math.Exp);
}
