using Spectre.Console.Cli;
using ZoneControl.Cli.Terminal;

namespace ZoneControl.Cli.Commands;

/// <summary>The program without a command: the built-in demo, and where to look next.</summary>
internal sealed class DemoCommand(Streams streams) : AsyncCommand<OutputSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, OutputSettings settings, CancellationToken cancellationToken)
    {
        DemoFiles files = DemoFiles.Find();
        int exit = await new RunJob(streams, files.House, files.Script, settings).ExecuteAsync(cancellationToken);
        if (!settings.Json)
            NextSteps.Write(streams.Terminal(), files);
        return exit;
    }
}
