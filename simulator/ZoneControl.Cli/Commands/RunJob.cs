using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;
using ZoneControl.Web;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Commands;

/// <summary>Reads a house and a script, runs them, shows and writes what came of it. Nothing is run before every input is known to be good.</summary>
internal sealed class RunJob(Streams streams, string housePath, string scriptPath, OutputSettings settings)
{
    /// <summary>Does it all and gives the exit code.</summary>
    /// <exception cref="BadInputException">Something given cannot be used.</exception>
    public async Task<int> ExecuteAsync(CancellationToken cancel)
    {
        IReadOnlyList<string> controllers = Controllers();
        Protection without = settings is RunSettings { Without: { } word } ? BenchDoor.ProtectionOf(word) : Protection.None;
        (House house, Script script) = Read();
        CheckPaths();
        using PendingFile? reportFile = settings.Report is { } report ? new PendingFile(report) : null;
        using PendingFile? traceFile = settings.Trace is { } trace ? new PendingFile(trace) : null;

        Run judged = BenchDoor.Run(house, script, controllers[0], without, cancel);
        Run? compared = controllers.Count > 1 ? BenchDoor.Run(house, script, controllers[1], without, cancel) : null;
        ReportView view = ReportBuilder.From(judged, compared, RuleBook.Rules);

        string? html = reportFile is null ? null : await HtmlReport.RenderAsync(view);
        cancel.ThrowIfCancellationRequested();
        if (settings.Json)
            streams.Out.Write(RunJson.From(view));
        else
            TerminalReport.Write(streams.Terminal(), view);
        reportFile?.Commit(writer => writer.Write(html));
        traceFile?.Commit(writer => TraceCsv.Write(writer, judged.Trace, [.. house.Zones.Select(z => z.Name)]));
        Written();
        return judged.Passed ? ExitCode.Pass : ExitCode.Fail;
    }

    private (House House, Script Script) Read()
    {
        HouseReading houseReading = HouseFile.Read(housePath);
        if (houseReading.House is not { } house)
            throw Refused(houseReading.Mistakes, housePath, "The script was not read, since its names are the house's.");
        ScriptReading scriptReading = ScriptFile.Read(scriptPath, house);
        if (scriptReading.Script is not { } script)
            throw Refused([.. houseReading.Mistakes, .. scriptReading.Mistakes], scriptPath, "");
        foreach (FileMistake warning in houseReading.Mistakes.Concat(scriptReading.Mistakes))
            streams.Error.WriteLine(warning);
        return (house, script);
    }

    private static BadInputException Refused(IReadOnlyList<FileMistake> mistakes, string path, string more)
    {
        int errors = mistakes.Count(m => m.IsError);
        string summary = $"{path}: {Quantity.Count(errors, "mistake")}; nothing was run. {more}".TrimEnd();
        return new BadInputException(string.Join('\n', [.. mistakes.Select(m => m.ToString()), summary]));
    }

    private IReadOnlyList<string> Controllers()
    {
        foreach (string name in settings.Controllers)
        {
            if (!BenchDoor.Controllers.Contains(name))
                throw new BadInputException(Words.Unknown("controller", name, BenchDoor.Controllers));
        }

        return settings.Controllers.Length == 0
            ? BenchDoor.Controllers
            : [.. BenchDoor.Controllers.Where(settings.Controllers.Contains)];
    }

    /// <summary>A result must not replace what it was made from, nor another result.</summary>
    private void CheckPaths()
    {
        (string What, string? Path)[] taken =
            [("the house file", housePath), ("the script file", scriptPath), ("--report", settings.Report), ("--trace", settings.Trace)];
        for (int i = 2; i < taken.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (Same(taken[i].Path, taken[j].Path))
                    throw new BadInputException($"{taken[i].What} {taken[i].Path}: is also {taken[j].What}; choose another name.");
            }
        }
    }

    private static bool Same(string? a, string? b) =>
        !string.IsNullOrWhiteSpace(a) && !string.IsNullOrWhiteSpace(b) &&
        string.Equals(Path.GetFullPath(a), Path.GetFullPath(b),
            OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal);

    private void Written()
    {
        TextWriter into = settings.Json ? streams.Error : streams.Out;
        if (settings.Report is { } report)
            into.WriteLine($"Report written to {report}");
        if (settings.Trace is { } trace)
            into.WriteLine($"Trace written to {trace}");
    }
}
