using System.ComponentModel;
using System.Globalization;
using Spectre.Console.Cli;
using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Seasons;
using ZoneControl.Cli.Files;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>check</c> takes.</summary>
internal sealed class CheckSettings : SheetSettings
{
    [CommandOption("--capacity")]
    [Description("Reckon each zone's capacity by its flow as well, and the minimum open that goes with it.")]
    public bool Capacity { get; init; }

    [CommandOption("--record <FILE>")]
    [Description("Hold a record (JSON) of a commissioning run against the house file, and offer its measured times as settings.")]
    public string? Record { get; init; }

    [CommandOption("--design-flow <FLOW>")]
    [Description("Flow that every loop should get, such as \"2 L/min\" or \"0.5 gpm\"; else reckoned from length, spacing, heat and drop.")]
    public string? DesignFlow { get; init; }

    [CommandOption("--heat <HEAT>")]
    [Description("Heat that floors have to give on the coldest day, such as \"50 W/m2\" or \"16 BTU/h/ft2\" (a bare number is W/m²); else what each room loses then.")]
    public string? Heat { get; init; }

    [CommandOption("--spacing <LENGTH>")]
    [Description("Distance between two runs of tube, such as \"200 mm\" or \"8 in\"; else what the house file says.")]
    public string? Spacing { get; init; }

    [CommandOption("--drop <DIFFERENCE>")]
    [Description("How much the water cools in a loop, such as \"5 K\" or \"9 °F\" (a bare number is K); without it 5 K.")]
    public string? Drop { get; init; }

    [CommandOption("--water <TEMPERATURE>")]
    [Description("Water temperature, such as \"40 °C\" or \"104 °F\"; without it 35 °C (95 °F).")]
    public string? Water { get; init; }

    [CommandOption("--room <TEMPERATURE>")]
    [Description("Room temperature, such as \"20 °C\" or \"68 °F\"; else what each thermostat is set to.")]
    public string? Room { get; init; }
}

/// <summary><c>check HOUSE</c>. Exit code 1 when a finding is a fault.</summary>
internal sealed class CheckCommand(Streams streams) : AsyncCommand<CheckSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, CheckSettings settings, CancellationToken cancellationToken)
    {
        var desk = new SheetDesk(streams);
        CheckAssumptions assumed = Assumed(settings);
        House house = await new Inputs(streams, "nothing was checked", cancellationToken).HouseAsync(settings.House, settings.Units);
        SeasonRecord? record = settings.Record is { } path ? ReadRecord(path, house) : null;
        CheckReport report = HouseCheck.Of(house, assumed, settings.Capacity);
        IReadOnlyList<Finding> more = record is null ? [] : RecordFindings.Of(house, record);
        IReadOnlyList<MeasuredSetting> measured = record is null ? [] : RecordFindings.Settings(house, record);
        report = report with { Findings = [.. report.Findings, .. more] };
        SheetView sheet = CheckSheet.From(report, record is null ? [] : [RecordSheet.Offered(house, record)]);
        await desk.ShowAsync(settings, sheet, () => CheckJson.From(report, measured));
        return report.HasFaults ? ExitCode.Fail : ExitCode.Pass;
    }

    private static SeasonRecord ReadRecord(string path, House house)
    {
        RecordReading reading = RecordFile.Read(path);
        SeasonRecord record = reading.Record ?? throw new BadInputException(string.Join('\n', reading.Mistakes.Select(mistake => mistake.ToString())));
        int known = record.Zones.Count(zone => house.ZoneIndex(zone.Zone) >= 0);
        if (record.House == house.Name && 2 * known >= record.Zones.Count)
            return record;
        throw new BadInputException(
            $"{path}: found a record of \"{record.House}\" with {known} of {record.Zones.Count} zones that the house file has, expected one of \"{house.Name}\". "
            + "If the house was renamed, write its new name into the record.");
    }

    private static CheckAssumptions Assumed(CheckSettings s)
    {
        var usual = new CheckAssumptions();
        return usual with
        {
            DesignFlowM3s = SheetDesk.Measure("--design-flow", s.DesignFlow, Dimension.Flow, 1e-6, 0.01, "0.1 to 600 L/min (0.02 to 158 gpm)"),
            FluxWPerM2 = SheetDesk.Measure("--heat", WithUnit(s.Heat, "W/m2"), Dimension.HeatFlux, 5, 200, "5 to 200 W/m² (1.6 to 63 BTU/h/ft²)"),
            SpacingM = SheetDesk.Measure("--spacing", s.Spacing, Dimension.Length, 0.05, 0.6, "50 to 600 mm (2 to 23.6 in)"),
            DropK = SheetDesk.Measure("--drop", WithUnit(s.Drop, "K"), Dimension.Difference, 1, 20, "1 to 20 K (1.8 to 36 °F)") ?? usual.DropK,
            WaterC = SheetDesk.Measure("--water", s.Water, Dimension.Temperature, 5, 95, "5 to 95 °C (41 to 203 °F)") ?? usual.WaterC,
            RoomC = SheetDesk.Measure("--room", s.Room, Dimension.Temperature, 5, 28, "5 to 28 °C (41 to 82 °F)"),
        };
    }

    /// <summary>A bare number has the unit that its option names.</summary>
    private static string? WithUnit(string? text, string unit) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? $"{text} {unit}" : text;
}
