using System.ComponentModel;
using System.Globalization;
using Spectre.Console.Cli;
using ZoneControl.Bench.Choosing.Protections;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>compare</c> takes.</summary>
internal sealed class CompareSettings : SheetSettings
{
    [CommandOption("--seed <NUMBER>")]
    [Description("Seed of the winter's weather; the same seed gives the same result. Else 1.")]
    public long? Seed { get; init; }

    [CommandOption("--days <DAYS>")]
    [Description("Length of the winter, 1 to 366 days; else 210.")]
    public int? Days { get; init; }

    [CommandOption("--script <FILE>")]
    [Description("Compare over this script instead of a winter.")]
    public string? Script { get; init; }

    [CommandOption("--price <PART=PRICE>")]
    [Description("Price of one of a part, once for each: delay-relay, end-switch, bypass, regulated-pump, flow-switch, controller.")]
    public string[] Prices { get; init; } = [];

    [CommandOption("--electricity <PRICE>")]
    [Description("Price of a kWh of electricity.")]
    public string? Electricity { get; init; }

    [CommandOption("--heat-price <PRICE>")]
    [Description("Price of a kWh of heat.")]
    public string? HeatPrice { get; init; }

    [CommandOption("--years <YEARS>")]
    [Description("Years to add up, 1 to 50; else 10.")]
    public int Years { get; init; } = 10;
}

/// <summary><c>compare HOUSE</c>: the same winter, or script, under each protection.</summary>
internal sealed class CompareCommand(Streams streams) : AsyncCommand<CompareSettings>
{
    private readonly SheetDesk _desk = new(streams);

    public override async Task<int> ExecuteAsync(CommandContext context, CompareSettings settings, CancellationToken cancellationToken)
    {
        Prices prices = ReadPrices(settings);
        if (settings.Days is < 1 or > 366)
            throw new BadInputException($"--days: found {settings.Days}, expected 1 to 366");
        if (settings.Script is not null && (settings.Seed is not null || settings.Days is not null))
            throw new BadInputException("--seed and --days are for a winter, and --script takes its place. Give one or the other.");
        var inputs = new Inputs(streams, "nothing was compared", cancellationToken);
        House house = await inputs.HouseAsync(settings.House, settings.Units);
        Script? script = settings.Script is { } path ? await inputs.ScriptAsync(path, house) : null;
        using var line = new ProgressLine(streams);
        IProgress<double> progress = line.Of("comparing");
        Comparison comparison = script is null
            ? Comparison.OverWinter(house, settings.Seed ?? 1, settings.Days ?? 210, progress, cancel: cancellationToken)
            : Comparison.OverScript(house, script, progress, cancellationToken);
        line.Clear();
        await _desk.ShowAsync(settings, CompareSheet.From(comparison, prices), () => CompareJson.From(comparison, prices, settings.Seed ?? 1));
        return ExitCode.Pass;
    }

    private static Prices ReadPrices(CompareSettings settings)
    {
        if (settings.Years is < 1 or > 50)
            throw new BadInputException($"--years: found {settings.Years}, expected 1 to 50");
        var parts = new Dictionary<string, double>();
        foreach (string text in settings.Prices)
        {
            string[] pair = text.Split('=', 2);
            if (!ProtectionList.Parts.Contains(pair[0]))
                throw new BadInputException(Words.Unknown("part", pair[0], ProtectionList.Parts));
            parts[pair[0]] = Price("--price", pair.Length == 2 ? pair[1] : "", text);
        }

        return new Prices
        {
            Parts = parts,
            Electricity = settings.Electricity is { } electricity ? Price("--electricity", electricity, electricity) : null,
            Heat = settings.HeatPrice is { } heat ? Price("--heat-price", heat, heat) : null,
            Years = settings.Years,
        };
    }

    private static double Price(string option, string number, string text) =>
        double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double price) && price <= 1e9
            ? price
            : throw new BadInputException($"{option}: found \"{text}\", expected a price of 0 or more with a decimal point, such as {(option == "--price" ? "bypass=45" : "0.30")}");
}
