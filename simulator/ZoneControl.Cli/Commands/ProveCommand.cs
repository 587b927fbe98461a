using Spectre.Console.Cli;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Scripts;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;
using ZoneControl.Web;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Commands;

/// <summary><c>prove HOUSE</c>.</summary>
internal sealed class ProveCommand(Streams streams) : AsyncCommand<ProveSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, ProveSettings settings, CancellationToken cancellationToken)
    {
        ProveOptions options = Options(settings);
        House house = await new Inputs(streams, "nothing was searched", cancellationToken).HouseAsync(settings.House);
        using PendingFile? reportFile = settings.Report is { } report ? new PendingFile(report) : null;
        using PendingFile? scriptFile = settings.Script is { } script ? new PendingFile(script) : null;
        ProofResult result = Search(house, options, cancellationToken);
        if (settings.Json)
            streams.Out.Write(ProofJson.From(house, result));
        else
            ProofReport.Write(streams.Terminal(), house, result);
        TextWriter into = settings.Json ? streams.Error : streams.Out;
        if (result.Replay is { } replay)
        {
            string html = await HtmlReport.RenderAsync(ReportBuilder.From(replay, null, RuleBook.Rules));
            reportFile?.Commit(writer => writer.Write(html));
            scriptFile?.Commit(writer => writer.Write(ScriptWriter.Write(replay.Script, house)));
            if (settings.Script is { } written)
                into.WriteLine($"Script written to {written}");
            if (settings.Report is { } drawn)
                into.WriteLine($"Report written to {drawn}");
        }
        else if (settings.Script is not null || settings.Report is not null)
        {
            into.WriteLine("There is no script to write, so no file was written.");
        }

        return result switch
        {
            { Stopped: StopReason.Cancelled, Verdict: ProofVerdict.Explored } => ExitCode.Cancelled,
            { Verdict: ProofVerdict.Proven } => ExitCode.Pass,
            { Verdict: ProofVerdict.Broken } => ExitCode.Fail,
            _ => ExitCode.Explored,
        };
    }

    private ProofResult Search(House house, ProveOptions options, CancellationToken cancel)
    {
        using var progress = new ProgressLine(streams);
        return Prover.Run(house, options, new Told<SearchProgress>(at => progress.Show(() => InWords(at))), cancel);
    }

    private static ProveOptions Options(ProveSettings settings)
    {
        Protection without = Protection.None;
        if (settings.Without is { } word)
            without = BenchDoor.ProtectionOf(word);
        Least("--max-time", settings.MaxTime);
        Least("--max-states", settings.MaxStates ?? 1);
        Least("--max-memory", settings.MaxMemory);
        Least("--scans", settings.Scans);
        ResultPaths.Check(
            [("the house file", settings.House)], [("--script", settings.Script), ("--report", settings.Report)]);
        return new ProveOptions
        {
            MaxStates = settings.MaxStates ?? long.MaxValue,
            MaxTime = TimeSpan.FromSeconds(settings.MaxTime),
            MaxMemoryBytes = (long)settings.MaxMemory << 20,
            MostScans = Math.Min(settings.Scans, 100_000),
            Without = without,
            Rules = without == Protection.None ? null : Protections.Harm,
        };
    }

    private static void Least(string option, long value)
    {
        if (value < 1)
            throw new BadInputException($"{option}: found {value}, expected 1 or more");
    }

    private static string InWords(SearchProgress at) =>
        $"{at.Elapsed.TotalSeconds:0} s, {at.Depth} scans deep, {at.States:N0} states, {at.Waiting:N0} waiting  (Ctrl-C stops it)";
}
