using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary><c>run HOUSE SCRIPT</c>.</summary>
internal sealed class RunCommand(Streams streams) : AsyncCommand<RunSettings>
{
    public override Task<int> ExecuteAsync(CommandContext context, RunSettings settings, CancellationToken cancellationToken) =>
        new RunJob(streams, settings.House, settings.Script, settings).ExecuteAsync(cancellationToken);
}
