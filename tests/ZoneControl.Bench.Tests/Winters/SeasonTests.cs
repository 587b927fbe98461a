using CsCheck;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Houses;
using ZoneControl.Bench.Winters;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Tests.Winters;

public class SeasonTests
{
    // Effort is pinned and not time: 0.3 to 0.6 s on two cores when this was written (tests/ZoneControl.Plant.Benchmarks, season).
    [Fact]
    public void A_season_of_the_demo_house_makes_few_scans_and_closes_its_balance()
    {
        House house = Winter.Example("pottery");
        SeasonResult result = SeasonRunner.Run(
            house, house.ToWinter().Make(1, 210), settings => new LibraryController(settings),
            cancel: TestContext.Current.CancellationToken);
        Assert.InRange(result.Scans, 5_000, 100_000);
        Assert.InRange(Math.Abs(result.Heat.BalanceError), 0, 1e-3);
        Assert.Equal((0, 0), (result.DeadheadS, result.DeadheadEvents));
        Assert.InRange(result.HeatKWh, 5_000, 30_000);
        Assert.All(result.Rooms, room => Assert.True(room.ColdestC > 16 && room.Calls > 50, $"{room}"));
    }

    // Common practice: without protection slow valves open minutes after the pump starts, every time all are shut.
    [Fact]
    public void Without_protection_the_same_winter_deadheads_at_nearly_every_start()
    {
        SeasonResult bare = Winter.Run(Winter.Example("pottery"), 14, build: settings => new StraightWiring(settings));
        SeasonResult kept = Winter.Run(Winter.Example("pottery"), 14);
        Assert.True(bare.DeadheadEvents > bare.PumpStarts / 2 && bare.DeadheadS > 60 * bare.DeadheadEvents);
        Assert.Equal(0, kept.DeadheadS);
        Assert.True(bare.HottestTrappedC > kept.HottestTrappedC);
    }

    [Theory]
    [InlineData("pottery")]
    [InlineData("toolworks")]
    [InlineData("retrofit")]
    public void No_rule_is_broken_in_two_weeks_of_winter(string name)
    {
        House house = Winter.Example(name);
        var frames = new List<Frame>();
        SeasonResult result = Winter.Run(house, 14, new SeasonOptions { Watch = frames.Add });
        IReadOnlyList<RuleVerdict> verdicts = Judge.Verdicts(
            house.ToSettings(), new Trace(frames, [], 14 * 86_400_000L), zone => house.Zones[zone].Label);
        Assert.DoesNotContain(verdicts, verdict => verdict.Judgement == Judgement.Broken);
        Assert.Contains(verdicts, verdict => verdict is { Rule: "PUMP-PROOF", Judgement: Judgement.Kept });
        Assert.Equal(0, result.DeadheadS);
    }

    [Fact]
    public void A_batch_gives_the_same_on_one_core_and_on_several_and_tells_how_far_it_is()
    {
        House pottery = Winter.Example("pottery");
        House small = Winter.Example("two-rooms");
        SeasonJob[] jobs =
        [
            .. from seed in Enumerable.Range(1, 6)
               from house in (House[])[pottery, small]
               select new SeasonJob(house, () => Winter.Of(house, seed, 10), settings => new LibraryController(settings), new SeasonOptions { Days = 10 }),
        ];
        var told = new Told();
        string[] one = [.. SeasonBatch.Run(jobs, told, cores: 1, TestContext.Current.CancellationToken).Select(Winter.Figures)];
        Assert.Equal(Enumerable.Range(1, jobs.Length).Select(done => (double)done / jobs.Length), told.Shares);
        foreach (int cores in (int[])[0, 2, 5])
            Assert.Equal(one, SeasonBatch.Run(jobs, cores: cores, cancel: TestContext.Current.CancellationToken).Select(Winter.Figures));
        Assert.Equal(jobs.Length, one.Distinct().Count());
    }

    [Fact]
    public void A_season_tells_how_far_it_is_and_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        var told = new Told();
        told.At(0.3, stop.Cancel);
        House house = Winter.Example("two-rooms");
        Assert.ThrowsAny<OperationCanceledException>(() => SeasonRunner.Run(
            house, Winter.Of(house, 1, 20), settings => new LibraryController(settings), new SeasonOptions { Days = 20 }, told, stop.Token));
        Assert.InRange(told.Shares[^1], 0.3, 0.32);
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.ThrowsAny<OperationCanceledException>(() => SeasonBatch.Run(
            [new SeasonJob(house, () => Winter.Of(house, 1, 20), settings => new LibraryController(settings))], cancel: stop.Token));
    }

    [Fact]
    public void What_cannot_be_run_is_refused_in_words()
    {
        House house = Winter.Example("two-rooms");
        string Refusal(SeasonOptions options, int hours) => Assert.ThrowsAny<ArgumentException>(() => SeasonRunner.Run(
            house, new Weather("short", new double[hours]), settings => new LibraryController(settings), options)).Message;
        Assert.Contains("short knows 47 hours; expected at least 48", Refusal(new SeasonOptions { Days = 2 }, 47), StringComparison.Ordinal);
        Assert.Contains("expected 1 to 3,660 days", Refusal(new SeasonOptions { Days = 0 }, 48), StringComparison.Ordinal);
        Assert.Contains("event 1 is a CallChange", Refusal(
            new SeasonOptions { Days = 2, Events = [new ScriptEvent(0, new CallChange(1, true))] }, 48), StringComparison.Ordinal);
        Assert.Contains("event 2 comes before", Refusal(new SeasonOptions
        {
            Days = 2,
            Events = [new ScriptEvent(9, new SeasonChange(true)), new ScriptEvent(8, new SeasonChange(false))],
        }, 48), StringComparison.Ordinal);
    }

    [Fact]
    public void In_lockout_no_room_is_heated()
    {
        SeasonResult result = Winter.Run(
            Winter.Example("pottery"), 6, new SeasonOptions { Events = [new ScriptEvent(0, new SeasonChange(true))] });
        Assert.Equal((0, 0.0), (result.SourceStarts, result.Heat.SourceJ));
        Assert.All(result.Rooms, room => Assert.True(room.UnderKh > 50 && room.Calls == 1, $"{room}"));
    }

    [Fact]
    public void Random_houses_stay_numbers_keep_their_balance_and_never_deadhead() =>
        (from zones in Gen.Int[1, 6]
         from lengths in Gen.Int[20, 120].Array[zones, zones * 2]
         from screed in Gen.Int[2, 15]
         from loss in Gen.Int[5, 120]
         from power in Gen.Int[1, 40]
         from differential in Gen.Int[1, 30]
         from water in Gen.Int[1, 300]
         from anticipation in Gen.Int[0, 15]
         from opening in Gen.Int[5, 400]
         from seed in Gen.Long
         select (zones, lengths, screed, loss, power, differential, water, anticipation, opening, seed)).Sample(x =>
        {
            string zones = string.Concat(Enumerable.Range(0, x.zones).Select(zone =>
                $"[[zone]]\nname = \"z{zone}\"\nactuator = \"{(zone % 2 == 0 ? "slow" : "told")}\"\nloops = ["
                + string.Join(", ", x.lengths.Where((_, i) => i % x.zones == zone).Select(m => $"{{ length = \"{m} m\" }}"))
                + $"]\nroom = {{ loss = \"{x.loss} W/K\" }}\nthermostat = {{ differential = \"{x.differential / 10.0} K\","
                + $" anticipation = \"{x.anticipation / 10.0} K\" }}\n"));
            string text = HouseText.Sound[..HouseText.Sound.IndexOf("[[zone]]", StringComparison.Ordinal)]
                .Replace("opening_time = \"4 min\"", $"opening_time = \"{x.opening} s\"", StringComparison.Ordinal)
                .Replace("minimum_flow = \"5 L/min\"", "minimum_flow = \"0.5 L/min\"", StringComparison.Ordinal)
                + zones + $"[heat_source]\npower = \"{x.power} kW\"\nwater = \"{x.water} L\"\n"
                + $"[every_floor]\nscreed = \"{x.screed} cm\"\n[controller]\nminimum_open = 1\n";
            House house = HouseFile.Parse(text, "h").House!;
            SeasonResult result = Winter.Run(house, 4, seed: x.seed);
            Assert.Equal(0, result.DeadheadS);
            Assert.InRange(Math.Abs(result.Heat.BalanceError), 0, 1e-6);
            Assert.All(result.Rooms, room => Assert.All(
                [room.UnderKh, room.OverKh, room.ColdestC, room.WarmestC, room.WarmestFloorC, room.FloorJ], value => Assert.True(double.IsFinite(value))));
            Assert.True(double.IsFinite(result.HottestTrappedC + result.PumpEnergyKWh + result.HeatKWh));
        }, iter: 60);

    private sealed class Told : IProgress<double>
    {
        private double _at = double.PositiveInfinity;
        private Action _then = () => { };

        public List<double> Shares { get; } = [];

        public void At(double share, Action then) => (_at, _then) = (share, then);

        public void Report(double value)
        {
            lock (Shares)
                Shares.Add(value);
            if (value >= _at)
                _then();
        }
    }
}
