using BenchmarkDotNet.Attributes;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Winters;
using ZoneControl.Plant.Heat;
using ZoneControl.Plant.Reference;

namespace ZoneControl.Plant.Benchmarks;

/// <summary>A month of a house by number of zones, two loops each, controller and all; 720 simulated hours.</summary>
[MemoryDiagnoser]
public class SeasonRun
{
    private House _house = null!;
    private Weather _weather = null!;

    [Params(2, 4, 8, 16)]
    public int Zones { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        _house = GrownHouse.Of(Zones, 2 * Zones);
        _weather = _house.ToWinter().Make(1, 30);
    }

    [Benchmark]
    public double Month() => SeasonRunner.Run(
        _house, _weather, settings => new LibraryController(settings), new SeasonOptions { Days = 30 }).HeatKWh;
}

/// <summary>The forced week of twelve rooms, begun anew each minute or only where something changes.</summary>
[MemoryDiagnoser]
public class ThermalWeek
{
    [Params(true, false)]
    public bool EachMinute { get; set; }

    [Benchmark]
    public double Week()
    {
        var week = new ForcedWeek(EachMinute);
        double sum = 0;
        for (int minute = 0; minute < ForcedWeek.Minutes; minute++)
        {
            week.Minute(minute);
            sum += week.RoomC(0, minute + 1);
        }

        return sum;
    }
}
