using Spectre.Console.Cli;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;
using ZoneControl.Web;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Commands;

/// <summary><c>audit HOUSE CAPTURE</c>: judges a capture from elsewhere by the rules of the house.</summary>
internal sealed class AuditCommand(Streams streams) : AsyncCommand<AuditSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, AuditSettings settings, CancellationToken cancellationToken)
    {
        ResultPaths.Check(
            [("the house file", settings.House), ("the capture", settings.Capture), ("the channel map", settings.Map)],
            [("--report", settings.Report)]);
        var inputs = new Inputs(streams, "nothing was judged", cancellationToken);
        House house = await inputs.HouseAsync(settings.House);
        ChannelMap map = settings.Map is { } path ? await inputs.MapAsync(path, house) : ChannelMap.None;
        using PendingFile? reportFile = settings.Report is { } report ? new PendingFile(report) : null;
        AuditResult audit = await JudgeAsync(inputs, house, settings.Capture, map, cancellationToken);

        ReportView view = AuditViewBuilder.From(audit);
        string? html = reportFile is null ? null : await HtmlReport.RenderAsync(view);
        if (settings.Json)
            streams.Out.Write(AuditJson.From(audit, view));
        else
            AuditReport.Write(streams.Terminal(), view);
        reportFile?.Commit(writer => writer.Write(html));
        if (settings.Report is { } written)
            (settings.Json ? streams.Error : streams.Out).WriteLine($"Report written to {written}");
        if (audit.Stopped)
        {
            streams.Error.WriteLine("Stopped by hand: this is the verdict on what was read until then.");
            return ExitCode.Cancelled;
        }

        return audit.Passed ? ExitCode.Pass : ExitCode.Fail;
    }

    private async Task<AuditResult> JudgeAsync(Inputs inputs, House house, string path, ChannelMap map, CancellationToken cancel)
    {
        if (Directory.Exists(path))
            throw new BadInputException($"{path}: found a folder, expected a capture");
        FileStream stream;
        try
        {
            stream = await inputs.OfAsync(
                path, () => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BadInputException($"{path}: found no such file, expected a capture");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException($"{path}: found a file that cannot be read, expected a capture ({e.Message})");
        }

        using var progress = new ProgressLine(streams);
        Audit audit = CaptureAudit.Run(
            house, stream, path, map, new Told<AuditProgress>(at => progress.Show(() => InWords(at))), cancel);
        progress.Clear();
        return inputs.Used(audit.Result, audit.Mistakes, path);
    }

    private static string InWords(AuditProgress at)
    {
        string share = at.Of is { } all and > 0 ? $"{100.0 * at.Bytes / all:0} % of {all / 1e6:#,0} MB" : $"{at.Bytes / 1e6:#,0.0} MB";
        return $"{share}, {at.Edges / 1e6:#,0.0} million changes, {TimeSpan.FromMilliseconds(at.Ms):d\\.hh\\:mm\\:ss} of the capture";
    }
}
