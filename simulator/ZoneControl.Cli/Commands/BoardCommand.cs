using System.ComponentModel;
using Spectre.Console.Cli;
using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>board</c> takes.</summary>
internal sealed class BoardSettings : HouseSettings
{
    [CommandOption("--settings <FILE>")]
    [Description("Write the controller's settings and pin plan as C#, to be compiled into the firmware.")]
    public string? Settings { get; init; }
}

/// <summary><c>board HOUSE</c>.</summary>
internal sealed class BoardCommand(Streams streams) : AsyncCommand<BoardSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, BoardSettings settings, CancellationToken cancellationToken)
    {
        House house = await new Inputs(streams, "nothing was generated", cancellationToken).HouseAsync(settings.House);
        ResultPaths.Check([("the house file", settings.House)], [("--settings", settings.Settings)]);
        using PendingFile? file = settings.Settings is { } target ? new PendingFile(target) : null;
        BoardSheet sheet = BoardSheet.Of(house);
        cancellationToken.ThrowIfCancellationRequested();
        if (settings.Json)
            streams.Out.Write(BoardJson.From(sheet));
        else
            BoardTerminal.Write(streams.Terminal(), sheet);
        file?.Commit(writer => writer.Write(sheet.SettingsText));
        if (settings.Settings is { } written)
            (settings.Json ? streams.Error : streams.Out).WriteLine($"Settings written to {written}");
        return ExitCode.Pass;
    }
}
