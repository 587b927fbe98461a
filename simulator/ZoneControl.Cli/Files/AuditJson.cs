using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Scripts;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Files;

/// <summary>The result of <c>audit</c> for programs. Times are ms from the capture's first moment.</summary>
/// <param name="Schema">Name and number of this layout.</param>
/// <param name="House">The house's name.</param>
/// <param name="Capture">The capture as it was given.</param>
/// <param name="Format">"vcd", "csv" or "log".</param>
/// <param name="Passed">The verdict.</param>
/// <param name="Verdict">In a word: PASS, FAIL or NOT JUDGED.</param>
/// <param name="BeganMs">The capture's own time of its first moment.</param>
/// <param name="EndMs">Its last moment.</param>
/// <param name="Bytes">Bytes read.</param>
/// <param name="Changes">Changes of channels read; lines of a log.</param>
/// <param name="Glitches">Changes left out as glitches.</param>
/// <param name="Stopped">It was stopped by hand; judged as far as it was read.</param>
/// <param name="BeginsWithPowerUp">Whether nothing before its beginning matters.</param>
/// <param name="Channels">Channels and the signals that carry them.</param>
/// <param name="UnusedSignals">Signals that carry no channel.</param>
/// <param name="Gaps">How many stretches could not be judged.</param>
/// <param name="Estimate">What the captured outputs do to the described house; an estimate.</param>
/// <param name="Rules">A verdict a rule.</param>
/// <param name="Wires">Whether contacts were published as their wires show.</param>
/// <param name="Holds">When the pump was held, where that is published.</param>
/// <param name="Happenings">Alarms and what else the capture tells.</param>
public sealed record AuditJson(
    string Schema, string House, string Capture, string Format, bool Passed, string Verdict, long BeganMs, long EndMs, long Bytes,
    long Changes, long Glitches, bool Stopped, bool BeginsWithPowerUp, IReadOnlyList<AuditJson.OneChannel> Channels,
    IReadOnlyList<string> UnusedSignals, int Gaps, RunJson.Sums Estimate, IReadOnlyList<RunJson.OneRule> Rules, RunJson.OneRule Wires,
    IReadOnlyList<RunJson.OneHold> Holds, IReadOnlyList<RunJson.OneHappening> Happenings)
{
    private const string SchemaName = "zonecontrol.audit.1";

    private static readonly AuditJsonContext _json = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>A channel and its signal.</summary>
    public sealed record OneChannel(string Channel, string Signal);

    /// <summary>The result as text that ends with a line feed.</summary>
    public static string From(AuditResult audit, ReportView report)
    {
        ArgumentNullException.ThrowIfNull(audit);
        ArgumentNullException.ThrowIfNull(report);
        var json = new AuditJson(
            SchemaName, report.HouseName, audit.Capture, Word(audit.Format), audit.Passed, report.Capture?.Word ?? "", audit.BeganMs,
            audit.EndMs, audit.Bytes, audit.Edges, audit.Glitches, audit.Stopped, audit.BeginsWithPowerUp,
            [.. audit.Channels.Select(pair => new OneChannel(pair.Channel, pair.Signal))],
            audit.Unused,
            audit.GapCount,
            RunJson.Summed(audit.Estimate),
            [.. audit.Rules.Select(One)],
            One(audit.Wires),
            [.. report.Judged.Holds.Select(h => new RunJson.OneHold(h.When.FromMs, h.When.ToMs, HoldWords.Of(h.Reason).Word))],
            [.. report.Judged.Happenings.Select(h => new RunJson.OneHappening(h.Ms, h.Text, h.IsAlarm))]);
        return JsonSerializer.Serialize(json, _json.AuditJson) + "\n";
    }

    private static RunJson.OneRule One(RuleVerdict verdict) =>
        new(verdict.Rule, RunJson.Word(verdict.Judgement), verdict.Occasions, verdict.FirstMs, verdict.Why);

    private static string Word(CaptureFormat format) => format switch
    {
        CaptureFormat.Vcd => "vcd",
        CaptureFormat.Csv => "csv",
        _ => "log",
    };
}

/// <summary>How the result is taken apart; made at build time, so that nothing is looked up at run time.</summary>
[JsonSerializable(typeof(AuditJson))]
internal sealed partial class AuditJsonContext : JsonSerializerContext;
