using ZoneControl.Bench.Captures;
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
        VirtualBench board = VirtualBench.Of(settings.Pins, settings.BoardLog, controllers);
        Protection without = settings is RunSettings { Without: { } word } ? BenchDoor.ProtectionOf(word) : Protection.None;
        CheckPaths();
        (House house, Script script) = await ReadAsync(cancel);
        using PendingFile? reportFile = settings.Report is { } report ? new PendingFile(report) : null;
        using PendingFile? traceFile = settings.Trace is { } trace ? new PendingFile(trace) : null;
        using PendingFile? logFile = settings.BoardLog is { } log ? new PendingFile(log) : null;
        using PendingFile? vcdFile = settings.Vcd is { } vcd ? new PendingFile(vcd) : null;
        using var progress = new ProgressLine(streams);

        Run Carry(int number) => BenchDoor.Run(
            house, script, controllers[number], without, progress.Of("running", number, controllers.Count), cancel, board);
        Run judged = Carry(0);
        Run? compared = controllers.Count > 1 ? Carry(1) : null;
        progress.Clear();
        ReportView view = ReportBuilder.From(judged, compared, RuleBook.Rules);

        string? html = reportFile is null ? null : await HtmlReport.RenderAsync(view);
        cancel.ThrowIfCancellationRequested();
        if (settings.Json)
            streams.Out.Write(RunJson.From(view));
        else
            TerminalReport.Write(streams.Terminal(), view);
        reportFile?.Commit(writer => writer.Write(html));
        traceFile?.Commit(writer => TraceCsv.Write(writer, judged.Trace, [.. house.Zones.Select(z => z.Name)]));
        logFile?.Commit(writer => board.WriteLog(writer));
        vcdFile?.Commit(writer => TraceVcd.Write(writer, judged.Trace, house));
        Written();
        return judged.Passed ? ExitCode.Pass : ExitCode.Fail;
    }

    private async Task<(House House, Script Script)> ReadAsync(CancellationToken cancel)
    {
        var inputs = new Inputs(streams, "nothing was run", cancel);
        HouseReading houseReading = await inputs.OfAsync(housePath, () => HouseFile.Read(housePath));
        if (houseReading.House is not { } house)
        {
            if (houseReading.LooksLikeScript)
                throw new BadInputException($"{housePath}: is a script file; the house file comes first: zonecontrol run HOUSE SCRIPT. Nothing was run.");
            throw inputs.Refused(houseReading.Mistakes, housePath, "The script was not read, since its names are the house's.");
        }

        ScriptReading scriptReading = await inputs.OfAsync(scriptPath, () => ScriptFile.Read(scriptPath, house));
        Script script = inputs.Used(scriptReading.Script, [.. houseReading.Mistakes, .. scriptReading.Mistakes], scriptPath);
        return (house, script);
    }

    private IReadOnlyList<string> Controllers()
    {
        foreach (string name in settings.Controllers)
        {
            if (!BenchDoor.Controllers.Contains(name))
                throw new BadInputException(Words.Unknown("controller", name, BenchDoor.Controllers));
        }

        if (settings.Controllers.Distinct().Count() > 2)
            throw new BadInputException("Three controllers were named; give --controller once, or twice to compare two.");
        return settings.Controllers.Length == 0
            ? BenchDoor.Usual
            : [.. BenchDoor.Controllers.Where(settings.Controllers.Contains)];
    }

    private void CheckPaths() => ResultPaths.Check(
        [("the house file", housePath), ("the script file", scriptPath)],
        [("--report", settings.Report), ("--trace", settings.Trace), ("--vcd", settings.Vcd),
            ("--board-log", settings.BoardLog)]);

    private void Written()
    {
        TextWriter into = settings.Json ? streams.Error : streams.Out;
        if (settings.Report is { } report)
            into.WriteLine($"Report written to {report}");
        if (settings.Trace is { } trace)
            into.WriteLine($"Trace written to {trace}");
        if (settings.BoardLog is { } log)
            into.WriteLine($"Board's log written to {log}");
        if (settings.Vcd is { } vcd)
            into.WriteLine($"Value change dump written to {vcd}");
    }
}
