using CsCheck;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Proving.Tests;

/// <summary>
/// Scaled times keep what they say they keep; and the controller only adds up and compares times, so that what scaled times
/// show does not hang on how long they are. Faults that only long times would show are planted, to see which check sees them.
/// </summary>
public class ScalingTests
{
    private const int Factor = 100;

    [Fact]
    public void Scaled_times_keep_their_order_and_the_sums_that_are_said_to_be_kept()
    {
        Gen.Int[1, 5000].Array[2, 9].Sample(times =>
        {
            long[] values = [.. times.Select(time => (long)time).Append(1).Distinct().Order()];
            var solver = new OrderAndSums(values, 60, []);
            int[] small = solver.Solve();
            Assert.Equal(1, small[0]);
            Assert.Equal(small.Distinct().Order(), small);
            int kept = 0;
            for (int a = 0; a < values.Length; a++)
            {
                for (int b = a; b < values.Length; b++)
                {
                    for (int c = b + 1; c < values.Length; c++)
                    {
                        bool same = Math.Sign(values[a] + values[b] - values[c]) == Math.Sign(small[a] + small[b] - small[c]);
                        bool lost = solver.Lost.Any(sum => (sum.A, sum.B, sum.C) == (a, b, c));
                        Assert.True(same || lost, $"{values[a]} + {values[b]} against {values[c]}");
                        kept += lost ? 0 : 1;
                    }
                }
            }

            Assert.Equal(kept, solver.Kept);
        }, iter: 200);
    }

    [Fact]
    public void Times_that_are_a_hundred_times_longer_show_the_same_a_hundred_times_later()
    {
        Assert.Null(FirstDifference(settings => new LibrarySubject(settings)));
    }

    [Theory]
    [InlineData("a constant hidden in the start delay", "PumpSequence",
        "x.Service ? 0 : s.PumpStartDelayMs - x.DemandAgeMs", "x.Service || x.DemandAgeMs > 30_000 ? 0 : s.PumpStartDelayMs - x.DemandAgeMs")]
    [InlineData("an age too small for long times", "Wait", "        age += dt;\n        return age > cap", "        age = (short)(age + dt);\n        return age > cap")]
    [InlineData("a rundown of fixed length", "ControllerState", "_rundownMs = settings.PumpRundownMs;", "_rundownMs = 300;")]
    public void A_fault_that_only_long_times_show_is_seen_by_the_comparison(string name, string file, string whole, string broken)
    {
        Assert.True(FirstDifference(PlantedController.With(file, whole, broken)) is not null, name);
    }

    [Fact]
    public void Scaled_times_alone_cannot_see_a_hidden_constant()
    {
        // This is why the comparison above is part of the argument.
        var build = PlantedController.With(
            "PumpSequence", "x.Service ? 0 : s.PumpStartDelayMs - x.DemandAgeMs",
            "x.Service || x.DemandAgeMs > 30_000 ? 0 : s.PumpStartDelayMs - x.DemandAgeMs");
        ProofResult result = Prover.Run(SmallHouses.Of("timed"), new ProveOptions { Build = build }, cancel: TestContext.Current.CancellationToken);

        Assert.Equal(ProofVerdict.Proven, result.Verdict);
    }

    [Fact]
    public void A_fault_that_shows_only_when_one_time_is_longer_than_another_is_found_because_order_is_kept()
    {
        // Rest counted to the rundown: harmless where the rest is the shorter one.
        var build = PlantedController.With("PumpSequence", "Wait.Age(x.RestMs, dt, s.PumpMinOffMs)", "Wait.Age(x.RestMs, dt, s.PumpRundownMs)");
        ProofResult result = Prover.Run(SmallHouses.Of("timed"), new ProveOptions { Build = build }, cancel: TestContext.Current.CancellationToken);

        Assert.Equal(ProofVerdict.Broken, result.Verdict);
    }

    /// <summary>One house with short times and with times a hundred times as long, under the same moves: the first scan that differs.</summary>
    private static int? FirstDifference(Func<ControllerSettings, IProvable> build)
    {
        ControllerSettings small = SmallHouses.Of("service").ToSettings();
        ControllerSettings scaled = Scaling.Of(small, 60, zone => $"{zone}").Settings;
        scaled.StallLimitMs = 100;
        foreach (TimeSlot slot in TimeSlot.Of(scaled, zone => $"{zone}"))
            slot.Set(slot.Ms * 40); // and so some minutes when a hundred times as long
        scaled.SwitchLimitMs[0] = scaled.OpeningMs[0]; // no switch asks for it, but it has to be lawful
        ControllerSettings large = Scaling.Copy(scaled);
        large.SwitchLimitMs[0] *= Factor;
        large.ScanPeriodMs *= Factor;
        large.StallLimitMs *= Factor;
        foreach (TimeSlot slot in TimeSlot.Of(large, zone => $"{zone}"))
            slot.Set(slot.Ms * Factor);
        IReadOnlyList<Move> moves = [.. Move.All(scaled).Where(move => move.Kind is not (MoveKind.Power or MoveKind.ExerciseDue or MoveKind.ClockBack))];
        IProvable one = build(scaled), two = build(large);
        var random = new Random(7);
        var inputs = new InputImage();
        OutputImage shown = new(), same = new();
        World world = World.AtRest(scaled);
        for (int scan = 0; scan < 300_000; scan++)
        {
#pragma warning disable CA5394 // chance, not secrets
            if (random.Next(900) == 0)
                world.Make(moves[random.Next(moves.Count)]);
#pragma warning restore CA5394
            world.Show(scaled, inputs);
            one.Scan((long)scan * scaled.ScanPeriodMs, inputs, shown);
            two.Scan((long)scan * large.ScanPeriodMs, inputs, same);
            Frame first = Frame.From(shown) with { NextDeadlineMs = 0, Ms = 0 };
            if (first != Frame.From(same) with { NextDeadlineMs = 0, Ms = 0 })
                return scan;
        }

        return null;
    }
}
