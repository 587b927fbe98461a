using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>winter</c> takes.</summary>
internal sealed class WinterSettings : SheetSettings
{
    [CommandOption("--seed <NUMBER>")]
    [Description("Seed of the invented winter; the same seed is the same winter on every machine. Without it: 1.")]
    public long? Seed { get; init; }

    [CommandOption("--winters <COUNT>")]
    [Description("So many winters, of this seed and the next ones, on all cores: shows the spread. Without it: 1.")]
    public int Winters { get; init; } = 1;

    [CommandOption("--weather <FILE>")]
    [Description("Hourly outdoor temperatures instead of an invented winter: CSV with a column outdoor_c or outdoor_f, or a file in EPW layout.")]
    public string? Weather { get; init; }

    [CommandOption("--days <COUNT>")]
    [Description("Length, 1 to 3660. Without it: 210.")]
    public int Days { get; init; } = 210;

    [CommandOption("--controller <NAME>")]
    [Description("Who drives the pump: 'library' (ZoneControl's logic) or 'straight' (the pump wired straight to the calls). Without it: both, and the verdict is that of 'library'.")]
    public string[] Controllers { get; init; } = [];
}

/// <summary><c>winter HOUSE</c>.</summary>
internal sealed class WinterCommand(Streams streams) : AsyncCommand<WinterSettings>
{
    public override Task<int> ExecuteAsync(CommandContext context, WinterSettings settings, CancellationToken cancellationToken) =>
        new WinterJob(streams, settings).ExecuteAsync(cancellationToken);
}
