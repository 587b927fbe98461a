using Spectre.Console;
using ZoneControl.Cli.Terminal;

namespace ZoneControl.Cli;

/// <summary>Where the program writes.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Mistakes and warnings.</param>
/// <param name="OutIsTerminal">Whether results go to a terminal, so that colour may be used.</param>
internal sealed record Streams(TextWriter Out, TextWriter Error, bool OutIsTerminal)
{
    /// <summary>Whether mistakes go to a terminal, so that progress may be shown there.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>The process's own.</summary>
    public static Streams OfProcess() => new(new GuardedOutput(Console.Out), Console.Error, !Console.IsOutputRedirected)
    {
        ErrorIsTerminal = !Console.IsErrorRedirected,
        Questions = () => Console.IsInputRedirected || Console.IsOutputRedirected ? null : AnsiConsole.Create(new AnsiConsoleSettings()),
    };

    /// <summary>A terminal with a person at it who can be asked; null when there is none.</summary>
    public Func<IAnsiConsole?> Questions { get; init; } = () => null;

    /// <summary>A terminal over <see cref="Out"/>, 80 columns wide or as narrow as it really is; colour only where it can be seen and is wanted.</summary>
    public IAnsiConsole Terminal()
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(new ScreenWriter(Out)),
            Interactive = InteractionSupport.No,
            Ansi = OutIsTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = OutIsTerminal && Environment.GetEnvironmentVariable("NO_COLOR") is null or ""
                ? ColorSystemSupport.Detect
                : ColorSystemSupport.NoColors,
        });
        console.Profile.Width = OutIsTerminal ? Math.Clamp(console.Profile.Width, 60, Screen.Width) : Screen.Width;
        console.Profile.Capabilities.Unicode = true;
        return console;
    }
}
