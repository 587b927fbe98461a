using BenchmarkDotNet.Attributes;

namespace ZoneControl.Plant.Benchmarks;

/// <summary>
/// One simulated hour of the plant by number of zones, two loops each, in which every valve opens and shuts once: flows are
/// solved every half second while a valve moves. Water and valves only. Allocation is per simulated hour.
/// </summary>
[MemoryDiagnoser]
public class PlantHour
{
    private PlantModel _plant = null!;

    [Params(2, 4, 8, 16, 31)]
    public int Zones { get; set; }

    [GlobalSetup]
    public void SetUp() => _plant = new PlantModel(new PlantDescription
    {
        WaterC = 35,
        PlantRoomC = 20,
        Pump = new PumpDescription
        {
            Curve = [new(0, 6), new(Zones * 1e-4, 4.5), new(Zones * 2e-4, 0)],
            PowerW = 60,
            MinimumFlowM3s = 2e-5,
            CasingWaterM3 = 3e-4,
            CasingIronKg = 1,
            CasingLossWPerK = 1,
        },
        Mains = new PipeDescription(12, 0.01 * Math.Sqrt(Zones), 1.5e-6, 15),
        Manifolds = [new("only", null)],
        Actuators = [.. Enumerable.Repeat(
            new ActuatorDescription { OpenDeadTimeS = 60, OpenStrokeS = 120, CloseDeadTimeS = 90, CloseStrokeS = 180 }, Zones)],
        Loops = [.. Enumerable.Range(0, 2 * Zones).Select(i =>
            new LoopDescription(i / 2, 0, new PipeDescription(60 + 7 * i % 50, 0.012, 1.5e-6, 12), 1.2))],
    });

    [Benchmark]
    public double OneHour()
    {
        _plant.Drive((int)((1u << Zones) - 1), pump: true, heat: true);
        _plant.AdvanceTo(_plant.NowMs + 1_800_000);
        _plant.Drive(0, pump: true, heat: false);
        _plant.AdvanceTo(_plant.NowMs + 1_800_000);
        return _plant.PumpEnergyWh;
    }
}
