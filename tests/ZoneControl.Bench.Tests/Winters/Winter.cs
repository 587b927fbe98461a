using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Tests.Files;
using ZoneControl.Bench.Winters;
using ZoneControl.Logic;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Tests.Winters;

/// <summary>Seasons for tests.</summary>
internal static class Winter
{
    public static House Example(string name)
    {
        HouseReading reading = HouseFile.Read(Path.Combine(ExampleTests.Folder(), name + ".house.toml"));
        Assert.Empty(reading.Mistakes);
        return reading.House!;
    }

    /// <summary>From the middle of January on, so that something happens.</summary>
    public static Weather Of(House house, long seed, int days) => (house.ToWinter() with { FirstDay = 15 }).Make(seed, days);

    public static SeasonResult Run(
        House house, int days, SeasonOptions? options = null, Func<ControllerSettings, IController>? build = null, long seed = 1) =>
        SeasonRunner.Run(
            house,
            Of(house, seed, days),
            build ?? (settings => new LibraryController(settings)),
            (options ?? new SeasonOptions()) with { Days = days },
            cancel: TestContext.Current.CancellationToken);

    /// <summary>Each figure of a result, to compare to the last digit.</summary>
    public static string Figures(SeasonResult result) => string.Join('\n',
    [
        .. result.Rooms.Select(room => room.ToString()), result.Heat.ToString(),
        $"{result.DeadheadS:R} {result.DeadheadEvents} {result.HottestTrappedC:R} {result.PumpStarts} {result.PumpRunH:R}"
            + $" {result.PumpEnergyKWh:R} {result.SourceStarts} {result.SourceLimitTrips} {result.WeatherName}",
    ]);
}
