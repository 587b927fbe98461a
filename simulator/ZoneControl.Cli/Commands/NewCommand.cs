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
    public override Task<int> ExecuteAsync(CommandContext context, NewSettings settings, CancellationToken cancellationToken)
    {
        if (File.Exists(settings.House) && !settings.Replace)
            throw new BadInputException($"{settings.House}: is there already; give another name, or --replace to write it anew.");
        HouseAnswers answers = NewAnswers.From(settings);
        using var file = new PendingFile(settings.House);
        IAnsiConsole? asking = settings.NoQuestions ? null : streams.Questions();
        if (asking is not null)
            answers = new NewQuestions(asking).Ask(answers, settings);
        if (answers.Zones.Count == 0)
            throw new BadInputException("No zone: give --zone \"Bath: four-wire, 60 m\" once for each, or answer the questions at a terminal.");

        NewHouse made = HouseWriter.Write(answers, settings.House);
        if (made.House is null)
        {
            throw new BadInputException(string.Join('\n',
                [.. made.Mistakes.Select(mistake => mistake.ToString()), $"{settings.House}: was not written; the lines above are those it would have had."]));
        }

        cancellationToken.ThrowIfCancellationRequested();
        foreach (FileMistake warning in made.Mistakes)
            streams.Error.WriteLine(warning);
        file.Commit(writer => writer.Write(made.Text));
        IAnsiConsole console = streams.Terminal();
        Screen.Say(console, $"Written to {settings.House}, minimum_open = {made.House.Controller.MinimumOpen}.");
        Screen.Say(console, $"Next: zonecontrol check {settings.House}");
        return Task.FromResult(ExitCode.Pass);
    }
}
