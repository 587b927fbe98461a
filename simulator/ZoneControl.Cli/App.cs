using System.Reflection;
using Spectre.Console.Cli;
using ZoneControl.Cli.Commands;

namespace ZoneControl.Cli;

/// <summary>The command line: takes the arguments, runs a command, and turns whatever happens into a message and an exit code.</summary>
internal static class App
{
    /// <summary>Commands by name, with the options each takes; "" is the program without a command.</summary>
    private static readonly IReadOnlyDictionary<string, Type> _commands = new Dictionary<string, Type>
    {
        [""] = typeof(OutputSettings),
        ["run"] = typeof(RunSettings),
        ["prove"] = typeof(ProveSettings),
    };

    public static async Task<int> RunAsync(IReadOnlyList<string> args, Streams streams, CancellationToken cancel)
    {
        try
        {
            ArgumentCheck.Check(args, _commands);
            return await Build(streams).RunAsync(args, cancel);
        }
        catch (BadInputException e)
        {
            streams.Error.WriteLine(e.Message);
            return ExitCode.BadInput;
        }
        catch (CommandAppException e)
        {
            streams.Error.WriteLine($"{e.Message.TrimEnd('.')}. 'zonecontrol --help' shows what it takes.");
            return ExitCode.BadInput;
        }
        catch (OperationCanceledException)
        {
            streams.Error.WriteLine("Stopped. No file was written.");
            return ExitCode.Cancelled;
        }
        catch (Exception e) when (Environment.GetEnvironmentVariable("ZONECONTROL_DEBUG") is not "1")
        {
            string message = e.Message.ReplaceLineEndings(" ");
            streams.Error.WriteLine(
                $"The program failed and this is its own fault: {message} ({e.GetType().Name}). Please report the command and " +
                "the files; ZONECONTROL_DEBUG=1 shows where it happened.");
            return ExitCode.Fault;
        }
    }

    private static CommandApp<DemoCommand> Build(Streams streams)
    {
        var app = new CommandApp<DemoCommand>();
        app.Configure(config =>
        {
            config.Settings.Registrar.RegisterInstance(streams);
            config.Settings.Console = streams.Terminal();
            config.PropagateExceptions();
            config.SetApplicationName("zonecontrol");
            config.SetApplicationVersion(Version);
            config.Settings.StrictParsing = true;
            config.Settings.TrimTrailingPeriod = false;
            config.AddCommand<RunCommand>("run")
                .WithDescription("Run a script on a house and judge it. Exit code 0: pass, 1: the verdict fails, 2: bad input.")
                .WithExample("run", "house.toml", "script.toml")
                .WithExample("run", "house.toml", "script.toml", "--report", "report.html")
                .WithExample("run", "house.toml", "script.toml", "--json");
            config.AddCommand<ProveCommand>("prove")
                .WithDescription("Visit every reachable state of a house's controller and judge every rule in each. Exit code 0: "
                    + "proven, 1: a rule is broken, 3: a limit ended the search, which proves nothing, 2: bad input.")
                .WithExample("prove", "house.toml")
                .WithExample("prove", "house.toml", "--without", "proof", "--script", "found.toml");
        });
        app.WithDescription(
            "Bench for a supervisory zone controller for floor heating: the pump may run only when water has somewhere to go. " +
            "Without a command it runs the built-in demo. It never replaces a limit, relief valve or safety device.");
        return app;
    }

    private static string Version =>
        typeof(App).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "unknown";
}
