using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Winters;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;
using ZoneControl.Logic;
using ZoneControl.Plant.Heat;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Cli.Commands;

/// <summary>Reads a house, runs whole winters of it, and shows what came of them.</summary>
internal sealed class WinterJob(Streams streams, WinterSettings settings)
{
    private const int MostWinters = 1000;

    /// <summary>Does it all and gives the exit code: pass when the judged controller never let the pump deadhead.</summary>
    /// <exception cref="BadInputException">Something given cannot be used.</exception>
    public async Task<int> ExecuteAsync(CancellationToken cancel)
    {
        CheckOptions();
        IReadOnlyList<string> controllers = Controllers();
        var inputs = new Inputs(streams, "nothing was run", cancel);
        House house = await inputs.HouseAsync(settings.House, settings.Units);
        IReadOnlyList<Func<Weather>> winters = await WintersAsync(inputs, house);
        var options = new SeasonOptions { Days = settings.Days };
        SeasonJob[] jobs =
        [
            .. from weather in winters from name in controllers select new SeasonJob(house, weather, Builder(name), options),
        ];
        IReadOnlyList<SeasonResult> results;
        using (var progress = new ProgressLine(streams))
            results = Run(jobs, progress.Of(jobs.Length == 1 ? "winter" : "winters"), cancel);
        SeasonResult[][] byWinter = [.. results.Chunk(controllers.Count)];
        bool passed = WinterSheet.Passed(byWinter);
        await new SheetDesk(streams).ShowAsync(settings, WinterSheet.From(byWinter), () => WinterJson.From(byWinter, passed));
        return passed ? ExitCode.Pass : ExitCode.Fail;
    }

    private static IReadOnlyList<SeasonResult> Run(SeasonJob[] jobs, IProgress<double> progress, CancellationToken cancel) => jobs is [var only]
        ? [SeasonRunner.Run(only.House, only.Weather(), only.Build, only.Options, progress, cancel)]
        : SeasonBatch.Run(jobs, progress, cancel: cancel);

    private static Func<ControllerSettings, IController> Builder(string controller) => controller == BenchDoor.Library
        ? controllerSettings => new LibraryController(controllerSettings)
        : controllerSettings => new StraightWiring(controllerSettings);

    private void CheckOptions()
    {
        InRange("--days", settings.Days, 3660);
        InRange("--winters", settings.Winters, MostWinters);
        Inputs.Units(settings.Units);
        if (settings.Weather is not null && (settings.Seed is not null || settings.Winters > 1))
            throw new BadInputException("--weather is one winter as it was; --seed and --winters are for invented ones. Give one or the other.");
    }

    private static void InRange(string option, int value, int most)
    {
        if (value < 1 || value > most)
            throw new BadInputException($"{option}: found {value}, expected 1 to {most}");
    }

    private IReadOnlyList<string> Controllers()
    {
        foreach (string name in settings.Controllers)
        {
            if (!BenchDoor.Usual.Contains(name))
                throw new BadInputException(Words.Unknown("controller", name, BenchDoor.Usual));
        }

        return settings.Controllers.Length == 0
            ? BenchDoor.Usual
            : [.. BenchDoor.Usual.Where(settings.Controllers.Contains)];
    }

    private async Task<IReadOnlyList<Func<Weather>>> WintersAsync(Inputs inputs, House house)
    {
        if (settings.Weather is not { } file)
        {
            SyntheticWinter winter = house.ToWinter();
            long first = settings.Seed ?? 1;
            return [.. Enumerable.Range(0, settings.Winters).Select(i => (Func<Weather>)(() => winter.Make(first + i, settings.Days)))];
        }

        WeatherReading reading = await inputs.OfAsync(
            file, () => WeatherFile.Read(file, house.HeatOrCommon().Weather.FirstDay.Value, settings.Days));
        Weather weather = inputs.Used(reading.Weather, reading.Mistakes, file);
        return [() => weather];
    }
}
