using System.Net;
using System.Net.Sockets;
using Spectre.Console.Cli;
using ZoneControl.Web.Serving;

namespace ZoneControl.Cli.Commands;

/// <summary><c>serve</c>: the page, until Ctrl-C.</summary>
internal sealed class ServeCommand(Streams streams) : AsyncCommand<ServeSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, ServeSettings settings, CancellationToken cancellationToken)
    {
        ServeOptions options = Options(settings);
        await using WebApplication app = PageServer.Build(options);
        try
        {
            await app.StartAsync(cancellationToken);
        }
        catch (Exception e) when (e is IOException or SocketException or UnauthorizedAccessException)
        {
            throw new BadInputException(
                $"--port {options.Port}: cannot listen on {options.Address}: {e.Message.ReplaceLineEndings(" ").TrimEnd('.')}. " +
                "Another program may have it; --port 0 takes any free one.", e);
        }

        streams.Out.WriteLine($"The page is at {app.Urls.First()}");
        streams.Out.WriteLine(IPAddress.IsLoopback(options.Address)
            ? "Only this machine reaches it. Ctrl-C ends it."
            : $"Careful: it listens on {options.Address}, so others on the network reach it, without a password. Ctrl-C ends it.");
        await streams.Out.FlushAsync(CancellationToken.None);
        await app.WaitForShutdownAsync(cancellationToken);
        return ExitCode.Pass;
    }

    private static ServeOptions Options(ServeSettings settings)
    {
        if (settings.Port is < 0 or > 65_535)
            throw new BadInputException($"--port: found {settings.Port}, expected 0 to 65535");
        IPAddress address = IPAddress.Loopback;
        if (settings.Bind is { } bind && !IPAddress.TryParse(bind, out address!))
            throw new BadInputException($"--bind: found \"{bind}\", expected an address such as 127.0.0.1, or 0.0.0.0 for every one of this machine's.");
        if (settings.Folder is { } folder && !Directory.Exists(folder))
            throw new BadInputException($"--folder: found \"{folder}\", expected a folder that is there");
        return new ServeOptions
        {
            Address = address,
            Port = settings.Port,
            Folder = settings.Folder is { } given ? Path.GetFullPath(given) : null,
            Examples = Path.Combine(AppContext.BaseDirectory, "examples"),
            Lessons = Path.Combine(AppContext.BaseDirectory, "lessons"),
        };
    }
}
