using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Logic;

namespace ZoneControl.Proving.Tests;

/// <summary>The demo's three-zone sibling is proven whole; and an idle counter stands where the search looks for it.</summary>
public class ExampleProofTests
{
    [Fact]
    public void The_annex_is_proven_whole()
    {
        House house = HouseFile.Read(Path.Combine(Repository.Root, "simulator", "examples", "annex.house.toml")).House!;
        ProofResult result = Prover.Run(house, new ProveOptions(), cancel: TestContext.Current.CancellationToken);

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
