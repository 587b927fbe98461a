using System.Text.Json;
using CsCheck;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class RcNetworkTests
{
    // One body: T = end + (start − end)·e^(−t/RC) by hand. R 0.03 K/W, C 5 MJ/K, 1000 W, outdoors −10, start 10 °C.
    [Theory]
    [InlineData(3600, 10.23714)]
    [InlineData(36_000, 12.13372)]
    [InlineData(86_400, 14.37858)]
    [InlineData(150_000, 16.32121)]
    public void One_body_follows_the_closed_form(int seconds, double celsius)
    {
        var run = new RcRun(1);
        run.Begin(0, new RcNetwork([5e6], [], [1 / 0.03]), [10], [1000 + -10 / 0.03]);
        Near.Absolute(celsius, run.CelsiusAt(0, seconds * 1000L), 6e-6);
    }

    // Slab and room by hand: eigenvalues −6.328704e-6 and −2.954104e-4 1/s of the pair Cs 4.6 MJ/K, Cr 1 MJ/K, 215 W/K between
    // them, 40 W/K outwards; 1000 W into the slab, outdoors 0, both from 15 °C.
    [Theory]
    [InlineData(600, 15.12394, 14.67391)]
    [InlineData(3600, 15.60268, 13.77465)]
    [InlineData(14_400, 16.66374, 13.80904)]
    [InlineData(86_400, 21.42070, 17.88398)]
    [InlineData(345_600, 28.05526, 23.62019)]
    [InlineData(100_000_000, 29.65116, 25.00000)]
    public void Slab_and_room_follow_the_closed_form(int seconds, double slab, double room)
    {
        RcNetwork network = SlabAndRoom();
        double[] rates = [.. network.FadingPerS.Order()];
        Near.Relative(6.328704e-6, rates[0], 1e-6);
        Near.Relative(2.954104e-4, rates[1], 1e-6);
        var run = new RcRun(2);
        run.Begin(0, network, [15, 15], [1000, 0]);
        Near.Absolute(slab, run.CelsiusAt(0, seconds * 1000L), 6e-6);
        Near.Absolute(room, run.CelsiusAt(1, seconds * 1000L), 6e-6);
    }

    // C·dT/dt = b − K·T at the start, worked out from the links: a wrong mode or a lost one would show.
    [Fact]
    public void Houses_of_any_size_begin_to_warm_at_the_rate_that_their_links_give() => Gen.Select(
        Gen.Int[1, 16], Gen.Bool, Gen.Double[0.2, 5], Gen.Double[0, 400].Array[1, 16], Gen.Double[-10, 60].Array[33]).Sample((rooms, alike, size, flow, start) =>
    {
        int n = 1 + 2 * rooms;
        double[] capacity = [1e5, .. Enumerable.Range(0, 2 * rooms).Select(i => (i % 2 == 0 ? 5e6 : 1e6) * (alike ? 1 : 1 + size * i))];
        double[] outward = [3, .. Enumerable.Range(0, 2 * rooms).Select(i => i % 2 == 0 ? 2.0 : 40 * size)];
        (int From, int To, double WPerK)[] links =
        [
            .. Enumerable.Range(0, rooms).Select(i => (0, 1 + 2 * i, alike ? flow[0] : flow[i % flow.Length])),
            .. Enumerable.Range(0, rooms).Select(i => (1 + 2 * i, 2 + 2 * i, 200.0)),
        ];
        var run = new RcRun(n);
        run.Begin(0, new RcNetwork(capacity, links, outward), start.AsSpan(0, n), new double[n]);
        for (int body = 0; body < n; body++)
        {
            double heat = -outward[body] * start[body];
            foreach ((int from, int to, double conductance) in links)
            {
                heat += from == body ? conductance * (start[to] - start[body]) : to == body ? conductance * (start[from] - start[body]) : 0;
            }

            Near.Absolute(start[body], run.CelsiusAt(body, 0), 1e-9);
            Near.Absolute(heat / capacity[body], run.RateKPerS(body, 0), 1e-9 * (1 + rooms * 400 * 70 / capacity[body]));
        }
    });

    // tests/reference/heat/rc.json: SciPy's matrix exponential.
    [Fact]
    public void Networks_of_up_to_sixteen_rooms_follow_the_matrix_exponential()
    {
        int steps = 0;
        foreach (JsonElement net in Reference("rc.json").GetProperty("networks").EnumerateArray())
        {
            double[] capacity = Numbers(net.GetProperty("capacityJPerK"));
            var links = net.GetProperty("links").EnumerateArray().Select(Numbers).Select(l => ((int)l[0], (int)l[1], l[2]));
            var network = new RcNetwork(capacity, [.. links], Numbers(net.GetProperty("outwardWPerK")));
            var run = new RcRun(capacity.Length);
            run.Begin(7000, network, Numbers(net.GetProperty("startC")), Numbers(net.GetProperty("heatW")));
            foreach (JsonElement step in net.GetProperty("steps").EnumerateArray())
            {
                double[] expected = Numbers(step.GetProperty("celsius"));
                for (int i = 0; i < expected.Length; i++)
                {
                    long ms = 7000 + (long)Math.Round(step.GetProperty("seconds").GetDouble() * 1000);
                    Near.Absolute(expected[i], run.CelsiusAt(i, ms), 1e-8 + 1e-10 * Math.Abs(expected[i]), $"body {i}");
                    steps++;
                }
            }
        }

        Assert.Equal(6 * (1 + 3 + 5 + 13 + 33), steps);
    }

    [Fact]
    public void A_run_cut_anywhere_goes_on_as_if_it_had_not_been() =>
        Gen.Select(Gen.Long[1, 400_000_000], Gen.Long[1, 400_000_000]).Sample((a, b) =>
        {
            RcNetwork network = SlabAndRoom();
            var whole = new RcRun(2);
            whole.Begin(0, network, [15, 12], [1000, 300]);
            var second = new RcRun(2);
            second.Begin(a, network, [whole.CelsiusAt(0, a), whole.CelsiusAt(1, a)], [1000, 300]);
            Near.Absolute(whole.CelsiusAt(0, a + b), second.CelsiusAt(0, a + b), 1e-10);
            Near.Absolute(whole.CelsiusAt(1, a + b), second.CelsiusAt(1, a + b), 1e-10);
        }, iter: 2000);

    [Fact]
    public void Integrals_agree_with_the_sum_of_many_small_steps()
    {
        RcNetwork network = SlabAndRoom();
        var run = new RcRun(2);
        run.Begin(0, network, [15, 25], [1000, 0]);
        double simpson = 0;
        const int Steps = 20_000;
        for (int i = 0; i < Steps; i++)
        {
            double At(double part) => 3 * run.CelsiusAt(0, (long)((i + part) * 18_000)) + 5 * run.CelsiusAt(1, (long)((i + part) * 18_000));
            simpson += 18 * (At(0) + 4 * At(0.5) + At(1)) / 6;
        }

        Near.Relative(simpson, run.Integral(Steps * 18_000L, RcRun.ModeWeights(network, [3, 5])), 1e-10);
    }

    [Fact]
    public void A_step_allocates_nothing()
    {
        RcNetwork network = SlabAndRoom();
        var run = new RcRun(2);
        double[] start = [15, 18];
        double[] heat = [1000, 0];
        double sum = Once(0);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
        {
            sum += Once(i);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(sum));

        double Once(long ms)
        {
            run.Begin(ms, network, start, heat);
            return run.CelsiusAt(1, ms + 60_000) + run.FirstLook(1, 18.5, rising: true, ms, ms + 3_600_000);
        }
    }

    [Theory]
    [InlineData(0, 1, 1, "capacity 0 is 0")]
    [InlineData(double.NaN, 1, 1, "capacity 0 is NaN")]
    [InlineData(1, -1, 1, "link 0 to 1 is -1")]
    [InlineData(1, double.PositiveInfinity, 1, "link 0 to 1 is")]
    [InlineData(1, 1, -2, "outward 1 is -2")]
    public void What_is_no_network_is_refused(double capacity, double link, double outward, string words) =>
        Assert.Contains(words, Assert.Throws<ArgumentException>(
            () => new RcNetwork([capacity, 1], [(0, 1, link)], [1, outward])).Message, StringComparison.Ordinal);

    [Fact]
    public void A_body_without_a_way_to_any_fixed_temperature_is_refused() =>
        Assert.Throws<ArgumentException>(() => new RcNetwork([1, 1], [], [1, 0]));

    internal static JsonElement Reference(string name) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", "heat", name))).RootElement;

    internal static double[] Numbers(JsonElement list) => [.. list.EnumerateArray().Select(number => number.GetDouble())];

    private static RcNetwork SlabAndRoom() => new([4.6e6, 1e6], [(0, 1, 215)], [0, 40]);
}
