using Spectre.Console;
using Spectre.Console.Cli;
using ZoneControl.Bench.Choosing.NewHouses;
using ZoneControl.Bench.Files;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;

namespace ZoneControl.Cli.Commands;

/// <summary><c>new HOUSE</c>: writes a commented house file from answers. It replaces nothing without being told.</summary>
internal sealed class NewCommand(Streams streams) : AsyncCommand<NewSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, NewSettings settings, CancellationToken cancellationToken)
    {
        if (File.Exists(settings.House) && !settings.Replace)
            throw new BadInputException($"{settings.House}: is there already; give another name, or --replace to write it anew.");
        var mistakes = new List<string>();
        HouseAnswers answers = NewAnswers.From(settings, mistakes);
        Refuse(mistakes, settings.House);
        using var file = new PendingFile(settings.House);
        if (!settings.NoQuestions && streams.Questions() is { } console)
            answers = await new NewQuestions(console, settings, cancellationToken).AskAsync(answers);
        if (answers.Zones.Count == 0)
            throw new BadInputException("No zone: give --zone \"Bath: four-wire, 60 m\" once for each, or answer the questions at a terminal.");

        NewHouse made = HouseWriter.Write(answers, settings.House);
        if (made.House is not { } house)
        {
            Refuse([.. made.Mistakes.Where(mistake => mistake.IsError).Select(NewAnswers.InWords)], settings.House);
            throw new InvalidOperationException("A house file could not be used and nobody said why.");
        }

        cancellationToken.ThrowIfCancellationRequested();
        foreach (FileMistake warning in made.Mistakes)
            streams.Error.WriteLine(warning);
        file.Commit(writer => writer.Write(made.Text));
        IAnsiConsole screen = streams.Terminal();
        Screen.Say(screen, $"Written to {settings.House}, minimum_open = {house.Controller.MinimumOpen}"
            + $"{(made.WhyOpen.Length > 0 ? $" ({made.WhyOpen})" : "")}. What was not asked has a common value there, with a comment.");
        Screen.Say(screen, $"Next: zonecontrol check {settings.House}");
        return ExitCode.Pass;
    }

    private static void Refuse(List<string> mistakes, string path)
    {
        if (mistakes.Count > 0)
            throw new BadInputException(string.Join('\n', [.. mistakes, $"{path}: was not written."]));
    }
}
