using System.Reflection;
using Spectre.Console.Cli;
using ZoneControl.Cli.Commands;

namespace ZoneControl.Cli;

/// <summary>The command line: takes the arguments, runs a command, and turns whatever happens into a message and an exit code.</summary>
internal static class App
{
    /// <summary>Commands by name, with the options each takes; "" is the program without a command.</summary>
    private static readonly Dictionary<string, Type> _commands = new Dictionary<string, Type>
    {
        [""] = typeof(OutputSettings),
        ["run"] = typeof(RunSettings),
        ["new"] = typeof(NewSettings),
        ["check"] = typeof(CheckSettings),
        ["season"] = typeof(SeasonSettings),
        ["board"] = typeof(BoardSettings),
        ["serve"] = typeof(ServeSettings),
        ["winter"] = typeof(WinterSettings),
        ["compare"] = typeof(CompareSettings),
        ["audit"] = typeof(AuditSettings),
        ["prove"] = typeof(ProveSettings),
    };

    public static async Task<int> RunAsync(IReadOnlyList<string> args, Streams streams, CancellationToken cancel)
    {
        try
        {
            return await Build(streams).RunAsync(ArgumentCheck.Check(args, _commands), cancel);
        }
        catch (BadInputException e)
        {
            streams.Error.WriteLine(e.Message);
            return ExitCode.BadInput;
        }
        catch (CommandAppException e)
        {
            string command = args.Count > 0 && _commands.ContainsKey(args[0]) ? args[0] + " " : "";
            streams.Error.WriteLine($"{e.Message.TrimEnd('.')}. 'zonecontrol {command}--help' shows what it takes.");
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
            config.AddCommand<NewCommand>("new")
                .WithDescription("Write a house file from answers to a few questions, or from options. Exit code 0: written, 2: bad input, and nothing was written.")
                .WithExample("new", "my.house.toml")
                .WithExample("new", "my.house.toml", "--zone", "\"Bath: four-wire, 60 m\"")
                .WithExample("new", "us.house.toml", "--units", "us", "--zone", "\"Den: two-wire, 200 ft\"");
            config.AddCommand<CheckCommand>("check")
                .WithDescription("Check a house: flows, minimum open, times, transformer, bypass, balance. Exit code 0: no fault, 1: a fault, 2: bad input.")
                .WithExample("check", "house.toml")
                .WithExample("check", "house.toml", "--units", "us", "--report", "check.html");
            config.AddCommand<CompareCommand>("compare")
                .WithDescription("The same winter, or script, under each protection of the pump: deadhead, comfort, energy, faults, costs. "
                    + "Exit code 0: compared, 2: bad input.")
                .WithExample("compare", "house.toml", "--report", "compare.html")
                .WithExample("compare", "house.toml", "--price", "controller=90", "--electricity", "0.30");
            config.AddCommand<SeasonCommand>("season")
                .WithDescription("Sheets for the start and the end of a season, the commissioning run, and the history kept beside the house file. "
                    + "Exit code 0: nothing found wrong, 1: commission or history found something, 2: bad input.")
                .WithExample("season", "house.toml", "start", "--report", "autumn.html")
                .WithExample("season", "house.toml", "commission", "--keep")
                .WithExample("season", "house.toml", "record", "--opened", "bath=\"3 min 5 s\"")
                .WithExample("season", "house.toml", "history");
            config.AddCommand<BoardCommand>("board")
                .WithDescription("Show the board that a house needs: pins, terminals, parts, loads; write its settings as C#. Exit code 2: bad input.")
                .WithExample("board", "house.toml")
                .WithExample("board", "house.toml", "--settings", "GeneratedSettings.cs");
            config.AddCommand<ServeCommand>("serve")
                .WithDescription("Serve the page: the bench to see and break, lessons, your own files. Ctrl-C ends it.")
                .WithExample("serve")
                .WithExample("serve", "--folder", "my-houses", "--port", "0");
            config.AddCommand<WinterCommand>("winter")
                .WithDescription("Run a house through a whole winter, or many. Exit code 0: the pump never deadheaded, 1: it did, 2: bad input.")
                .WithExample("winter", "house.toml")
                .WithExample("winter", "house.toml", "--report", "winter.html")
                .WithExample("winter", "house.toml", "--seed", "7", "--winters", "20")
                .WithExample("winter", "house.toml", "--weather", "weather.csv", "--days", "120");
            config.AddCommand<AuditCommand>("audit")
                .WithDescription("Judge a capture of a real board or panel by the same rules. Exit codes as for run.")
                .WithExample("audit", "house.toml", "capture.vcd")
                .WithExample("audit", "house.toml", "panel.csv", "--map", "panel.map.toml");
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
