namespace ZoneControl.Plant.Tests;

public class WarmFrontTests
{
    // Always-open loops, so flows stand from the start. Mains 8 m of 20 mm: 2.513 L.
    private static readonly PlantDescription _house = Houses.Small with
    {
        Manifolds =
        [
            new("near", new PipeDescription(2, 0.016, 1.5e-6, 2)),
            new("far", new PipeDescription(20, 0.016, 1.5e-6, 2)),
        ],
        Loops = [Houses.Loop(-1, 0, 80), Houses.Loop(-1, 1, 80), Houses.Loop(0, 0, 80), Houses.Loop(1, 1, 80)],
    };

    [Fact]
    public void Warm_water_arrives_when_mains_and_the_nearer_branch_have_been_changed()
    {
        var plant = new PlantModel(_house);
        plant.AdvanceTo(5_000);
        plant.Drive(0, pump: true, heat: true);
        double near = plant.LoopFlowM3s(0);
        double seconds = Volume(8, 0.020) / plant.PumpFlowM3s + Volume(2, 0.016) / near;
        long expected = 5_000 + (long)Math.Ceiling(1000 * seconds);
        plant.AdvanceTo(expected - 1);
        Assert.Null(plant.FirstWarmFlowMs);
        plant.AdvanceTo(expected);
        Assert.Equal(expected, plant.FirstWarmFlowMs);
        plant.AdvanceTo(expected + 100_000);
        Assert.Equal(expected, plant.FirstWarmFlowMs);
    }

    [Fact]
    public void Only_what_moves_while_heat_is_asked_for_counts_and_a_pause_keeps_the_place()
    {
        var plain = new PlantModel(_house);
        plain.Drive(0, pump: true, heat: true);
        plain.AdvanceTo(3_600_000);
        long straight = plain.FirstWarmFlowMs!.Value;

        var paused = new PlantModel(_house);
        paused.Drive(0, pump: true, heat: false);
        paused.AdvanceTo(100_000);
        paused.Drive(0, pump: true, heat: true);
        paused.AdvanceTo(100_000 + straight / 2);
        paused.Drive(0, pump: false, heat: true);
        paused.AdvanceTo(200_000);
        paused.Drive(0, pump: true, heat: true);
        paused.AdvanceTo(3_600_000);
        Near.Absolute(200_000 + straight - straight / 2, paused.FirstWarmFlowMs!.Value, 1);
    }

    [Fact]
    public void A_manifold_without_flow_is_never_reached()
    {
        var plant = new PlantModel(_house with { Loops = [Houses.Loop(0, 0, 80), Houses.Loop(-1, 1, 80)] });
        plant.Drive(0, pump: true, heat: true);
        plant.AdvanceTo(3_600_000);
        double far = plant.LoopFlowM3s(1);
        double seconds = Volume(8, 0.020) / plant.PumpFlowM3s + Volume(20, 0.016) / far;
        Assert.Equal((long)Math.Ceiling(1000 * seconds), plant.FirstWarmFlowMs);
    }

    [Fact]
    public void Nothing_arrives_while_everything_is_shut()
    {
        var plant = new PlantModel(Houses.Small);
        plant.Drive(0, pump: true, heat: true);
        plant.AdvanceTo(3_600_000);
        Assert.Null(plant.FirstWarmFlowMs);
    }

    private static double Volume(double length, double diameter) => Math.PI / 4 * diameter * diameter * length;
}
