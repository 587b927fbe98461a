using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Winters;

/// <summary>Runs whole seasons of a house, from event to event.</summary>
public static class SeasonRunner
{
    private const long HourMs = Weather.StepMs;

    /// <summary>Runs a season.</summary>
    /// <param name="house">The house.</param>
    /// <param name="weather">The weather, an hour for each hour of the season at least; see <see cref="HeatFromHouse.ToWinter"/>.</param>
    /// <param name="build">Builds the controller, or the panel without protection, that is to be tried.</param>
    /// <param name="options">Length and manner; null for 210 days, skipping.</param>
    /// <param name="progress">Told the share that is done, 0 to 1, about a hundred times.</param>
    /// <param name="cancel">Stops it within a simulated hour.</param>
    /// <exception cref="ArgumentException">The weather is too short, or an option cannot be.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static SeasonResult Run(
        House house,
        Weather weather,
        Func<ControllerSettings, IController> build,
        SeasonOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(weather);
        ArgumentNullException.ThrowIfNull(build);
        options ??= SeasonOptions.Common;
        Demand(options, weather);
        var conditions = new ScriptConditions(house.SeasonWaterC(), house.HeatOrCommon().Weather.PlantRoomC.Value);
        var heated = new HeatedHouse(
            house.ToPlant(conditions), house.ToHeat(), weather, options.EveryScan, options.StrokeSteps);
        IController controller = build(house.ToSettings());
        var session = new SeasonSession(
            house.ToSettings(), heated, controller, house.Pump.FlowSwitchAtM3s.Value, options);
        Play(session, heated, options, progress, cancel);
        return Result(house, weather, options, heated, controller, session);
    }

    private static void Demand(SeasonOptions options, Weather weather)
    {
        if (options.Days is < 1 or > 3660)
            throw new ArgumentOutOfRangeException(nameof(options), options.Days, "expected 1 to 3,660 days");
        if (weather.Hours < options.Days * 24)
        {
            throw new ArgumentException(
                $"{weather.Name} knows {weather.Hours} hours; expected at least {options.Days * 24} for {options.Days} days", nameof(weather));
        }

        SeasonEvents.Demand(options.Events);
    }

    private static void Play(
        SeasonSession session, HeatedHouse house, SeasonOptions options, IProgress<double>? progress, CancellationToken cancel)
    {
        long end = session.OnGrid(options.Days * 24 * HourMs);
        int next = 0;
        long hour = 0;
        long reportEvery = Math.Max(1, options.Days * 24 / 100);
        while (house.NowMs < end)
        {
            cancel.ThrowIfCancellationRequested();
            long hourMs = session.OnGrid((hour + 1) * HourMs);
            long eventMs = next < options.Events.Count ? session.OnGrid(options.Events[next].AtMs) : long.MaxValue;
            long until = Math.Min(Math.Min(hourMs, eventMs), end);
            session.RunBefore(until);
            for (; next < options.Events.Count && options.Events[next].AtMs <= house.NowMs; next++)
                SeasonEvents.Do(options.Events[next].Action, session, house);
            session.Scan();
            if (house.NowMs < hourMs)
                continue;
            hour++;
            options.EachHour?.Invoke(house);
            if (hour % reportEvery == 0)
                progress?.Report((double)house.NowMs / end);
        }

        progress?.Report(1);
    }

    private static SeasonResult Result(
        House house, Weather weather, SeasonOptions options, HeatedHouse heated, IController controller, SeasonSession session)
    {
        PlantModel water = heated.Water;
        double[] outdoors = [.. Enumerable.Range(0, options.Days * 24).Select(hour => weather.InHour(hour))];
        return new SeasonResult
        {
            House = house,
            ControllerName = controller.Name,
            WeatherName = weather.Name,
            Days = options.Days,
            MeanOutdoorC = outdoors.Average(),
            ColdestOutdoorC = outdoors.Min(),
            DeadheadS = water.DeadheadS,
            ShutS = water.ShutS,
            DeadheadEvents = water.DeadheadEvents,
            HottestTrappedC = water.HottestTrappedC,
            PumpStarts = water.PumpStarts,
            PumpRunH = water.PumpRunS / 3600,
            PumpEnergyKWh = water.PumpEnergyWh / 1000,
            SourceStarts = heated.Heat.SourceStarts,
            SourceLimitTrips = heated.Heat.SourceLimitTrips,
            Heat = heated.Heat.Sums(),
            Rooms = heated.Heat.Rooms,
            Scans = session.Scans,
        };
    }
}
