using CsCheck;

namespace ZoneControl.Plant.Tests.Heat;

/// <summary>Flows in steps of a stroke, as seasons take them, against flows solved every half second.</summary>
public class StrokeStepTests
{
    [Fact]
    public void With_still_valves_flows_are_the_same()
    {
        var fine = new PlantModel(Houses.Small);
        var steps = new PlantModel(Houses.Small, strokeSteps: 8);
        foreach (PlantModel plant in (PlantModel[])[fine, steps])
        {
            plant.Drive(0b11, pump: true, heat: true);
            plant.AdvanceTo(600_000);
        }

        for (int loop = 0; loop < 2; loop++)
        {
            Near.Relative(fine.LoopFlowM3s(loop), steps.LoopFlowM3s(loop), 1e-9);
            Assert.True(fine.LoopFlowM3s(loop) > 0);
        }

        Near.Relative(fine.PumpFlowM3s, steps.PumpFlowM3s, 1e-9);
        Near.Relative(fine.PumpHeadM, steps.PumpHeadM, 1e-9);
        Assert.Equal((fine.Travel(0), fine.EndSwitches), (steps.Travel(0), steps.EndSwitches));
    }

    // A stroke of 120 s in 8 steps: each is 15 s, so anything that hangs on flow is off by half of that at most.
    [Fact]
    public void Deadhead_is_off_by_at_most_half_a_step()
    {
        double Deadhead(int strokeSteps)
        {
            var plant = new PlantModel(Houses.Small, strokeSteps);
            plant.Drive(0b11, pump: true, heat: true);
            plant.AdvanceTo(600_000);
            return plant.DeadheadS;
        }

        double fine = Deadhead(0);
        Assert.InRange(fine, 60, 180);
        Near.Absolute(fine, Deadhead(8), 7.5);
        Near.Absolute(fine, Deadhead(31), 2);
    }

    [Fact]
    public void Flow_changes_at_the_middle_of_each_step_and_only_there()
    {
        var plant = new PlantModel(Houses.Small with { Actuators = [Houses.TwoWire, Houses.TwoWire] }, strokeSteps: 8);
        plant.Drive(0b01, pump: true, heat: false);
        var changes = new List<long>();
        while (plant.NextFlowChangeMs != PlantModel.Never)
        {
            plant.AdvanceTo(plant.NextFlowChangeMs);
            changes.Add(plant.NowMs);
        }

        // 60 s of dead time, then the middles of eight steps of 15 s.
        Assert.Equal([.. Enumerable.Range(0, 8).Select(step => 60_000 + 7500 + 15_000L * step)], changes);
    }

    [Fact]
    public void Cutting_time_changes_nothing() => Gen.Long[1, 50_000].Sample(cut =>
    {
        (double, double, int) Run(long step)
        {
            var plant = new PlantModel(Houses.Small, strokeSteps: 8);
            long[] moves = [0, 130_000, 200_000, 420_000];
            for (int move = 0; move < moves.Length; move++)
            {
                plant.AdvanceTo(moves[move]);
                plant.Drive(move switch { 0 => 0b01, 1 => 0b11, 2 => 0b10, _ => 0 }, pump: true, heat: true);
                long until = move + 1 < moves.Length ? moves[move + 1] : 900_000;
                for (long at = moves[move]; at < until; at = Math.Min(at + step, until))
                {
                    plant.AdvanceTo(at);
                }
            }

            plant.AdvanceTo(900_000);
            return (plant.DeadheadS, plant.PumpEnergyWh, plant.DeadheadEvents);
        }

        Assert.Equal(Run(1_000_000), Run(cut));
    }, iter: 200);

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    [InlineData(32)]
    public void Steps_that_cannot_be_are_refused(int steps) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlantModel(Houses.Small, steps));
}
