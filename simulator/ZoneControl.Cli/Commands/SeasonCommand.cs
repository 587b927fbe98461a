using Spectre.Console.Cli;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Seasons;
using ZoneControl.Cli.Files;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Cli.Commands;

/// <summary><c>season HOUSE start|stop|commission|record|history</c>.</summary>
internal sealed class SeasonCommand(Streams streams) : AsyncCommand<SeasonSettings>
{
    private static readonly string[] _whats = ["start", "stop", "commission", "record", "history"];

    private readonly SheetDesk _desk = new(streams);

    public override async Task<int> ExecuteAsync(CommandContext context, SeasonSettings settings, CancellationToken cancellationToken)
    {
        if (!_whats.Contains(settings.What))
            throw new BadInputException(Words.Unknown("kind of season work", settings.What, _whats));
        settings.RefuseIdle();
        DateOnly day = RecordByHand.Day(settings.Date);
        House house = await new Inputs(streams, "nothing was done", cancellationToken).HouseAsync(settings.House, settings.Units);
        switch (settings.What)
        {
            case "start":
                SheetView start = SeasonSheet.Start(house, ReadHistory(settings.House).Entries);
                await _desk.ShowAsync(settings, start, () => SheetViewJson.From(start));
                return ExitCode.Pass;
            case "stop":
                SheetView stop = SeasonSheet.Stop(house);
                await _desk.ShowAsync(settings, stop, () => SheetViewJson.From(stop));
                return ExitCode.Pass;
            case "history":
                HistoryReading history = ReadHistory(settings.House);
                SheetView sheet = HistorySheet.From(house, history);
                await _desk.ShowAsync(settings, sheet, () => HistoryJson.From(house, history));
                return sheet.Verdict!.Good ? ExitCode.Pass : ExitCode.Fail;
            case "record":
                SeasonRecord byHand = RecordByHand.From(house, settings, day);
                await ShowAsync(settings, house, byHand);
                Keep(settings.House, byHand, settings.Json);
                return Exit(house, byHand);
            default:
                return await CommissionAsync(settings, house, day, cancellationToken);
        }
    }

    private async Task<int> CommissionAsync(SeasonSettings settings, House house, DateOnly day, CancellationToken cancel)
    {
        Installation installation = PlantedFaults.Read(house, settings.Faults);
        string controller = settings.Controller ?? BenchDoor.Library;
        if (controller is not (BenchDoor.Library or BenchDoor.Firmware))
            throw new BadInputException(Words.Unknown("controller", controller, [BenchDoor.Library, BenchDoor.Firmware]));
        AskedPerson? asked = null;
        if (settings.Ask)
        {
            if (settings.Nobody)
                throw new BadInputException("--ask and --nobody: found both, expected one of them");
            asked = new AskedPerson(house, streams.Questions()
                ?? throw new BadInputException("--ask: found nobody at the terminal, expected a person who can answer"), cancel);
            asked.Greet();
        }

        CommissioningRun run = Commissioner.Run(
            house, installation,
            handed => controller == BenchDoor.Firmware ? new VirtualBench(null).Build(handed) : new LibraryController(handed.ToSettings()),
            settings.Nobody ? Onlooker.Nobody : Onlooker.Person, cancel: cancel, asked: asked);
        SeasonRecord record = RecordOf.Run(house, run, Diagnosis.Of(house, run), controller, day);
        if (asked is not null)
            record = record with { Notes = "What moved, got warm and was heard was answered by a person at the terminal." };
        await ShowAsync(settings, house, record);
        if (settings.Keep)
            Keep(settings.House, record, settings.Json);
        return Exit(house, record);
    }

    private static int Exit(House house, SeasonRecord record) =>
        RecordFindings.Faults(house, record) > 0 ? ExitCode.Fail : ExitCode.Pass;

    private Task ShowAsync(SeasonSettings settings, House house, SeasonRecord record) =>
        _desk.ShowAsync(settings, RecordSheet.From(house, record), () => RecordFile.Write(record));

    private HistoryReading ReadHistory(string housePath)
    {
        HistoryReading history = History.Read(housePath);
        foreach (FileMistake mistake in history.Mistakes)
            streams.Error.WriteLine($"{mistake}; left out");
        return history;
    }

    private void Keep(string housePath, SeasonRecord record, bool json)
    {
        string folder = History.FolderOf(housePath);
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"{folder}: cannot be made ({e.Message.TrimEnd('.')}); the record was not kept.");
        }

        string name = History.NewName(folder, record);
        using var file = new PendingFile(name);
        file.Commit(writer => writer.Write(RecordFile.Write(record)));
        (json ? streams.Error : streams.Out).WriteLine($"Kept as {name}");
    }
}
