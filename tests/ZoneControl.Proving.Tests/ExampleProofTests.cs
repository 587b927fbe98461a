using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Logic;

namespace ZoneControl.Proving.Tests;

/// <summary>
/// The demo's three-zone sibling is proven: without exercises and clock faults, which takes seconds, and with them where
/// PROVE_WHOLE=1 is set, which takes about a minute of processor time in Release. And an idle counter stands where the search looks for it.
/// </summary>
public class ExampleProofTests
{
    [Fact]
    public void The_annex_is_proven()
    {
        House house = HouseFile.Read(Path.Combine(Repository.Root, "simulator", "examples", "annex.house.toml")).House!;
        bool whole = Environment.GetEnvironmentVariable("PROVE_WHOLE") == "1";
        var options = new ProveOptions
        {
            MaxTime = TimeSpan.FromHours(1),
            Except = whole ? new HashSet<MoveKind>() : new HashSet<MoveKind> { MoveKind.ExerciseDue, MoveKind.ClockBack },
        };
        ProofResult result = Prover.Run(house, options, cancel: TestContext.Current.CancellationToken);

        Assert.True(result.Verdict == ProofVerdict.Proven, $"{result.Verdict} {result.Stopped} {result.Rule}: {result.Why}");
    }

    [Fact]
    public void The_search_finds_the_idle_seconds_of_a_controller()
    {
        ControllerSettings house = SmallHouses.Of("exercise").ToSettings();
        var controller = new ZoneController(house);
        var inputs = new InputImage();
        var outputs = new OutputImage();
        for (long ms = 0; ms <= 7300; ms += house.ScanPeriodMs)
            controller.Scan(ms, inputs, outputs);
        int[] state = new int[controller.StateLength];
        controller.Save(state);

        Assert.Equal((7, 300), (state[controller.IdlePlace], state[controller.IdlePlace + 1]));
    }

    [Fact]
    public void An_exercise_falls_due_exactly_after_its_interval()
    {
        ControllerSettings house = SmallHouses.Of("exercise").ToSettings();
        var controller = new ZoneController(house);
        var inputs = new InputImage();
        var outputs = new OutputImage();
        long last = 0;
        for (long ms = 0; ; ms += house.ScanPeriodMs)
        {
            controller.Scan(ms, inputs, outputs);
            if (outputs.Valves != 0)
                break;
            last = ms;
            Assert.True(ms <= house.ExerciseIntervalS * 1000L, "no exercise came");
        }

        Assert.Equal(house.ExerciseIntervalS * 1000L - house.ScanPeriodMs, last);
    }
}
