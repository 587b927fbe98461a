using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Files;

/// <summary>The result of <c>run</c> for programs. Fields may be added under one schema number; none changes its meaning.</summary>
/// <param name="Schema">Name and number of this layout.</param>
/// <param name="House">The house's name.</param>
/// <param name="Script">The script's title.</param>
/// <param name="Passed">The verdict, that of the first run.</param>
/// <param name="Runs">The judged run first, then the one to compare with.</param>
public sealed record RunJson(string Schema, string House, string Script, bool Passed, IReadOnlyList<RunJson.OneRun> Runs)
{
    private const string SchemaName = "zonecontrol.run.1";

    /// <summary>Letters such as ü stay as they are: the text goes to files and pipes, never into a page.</summary>
    private static readonly RunJsonContext _json = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>One run. Times are ms from its start; energy is electrical.</summary>
    public sealed record OneRun(
        string Controller, bool Judged, bool Passed, long EndMs, Sums Totals, IReadOnlyList<OneRule> Rules,
        IReadOnlyList<OneExpectation> Expectations, IReadOnlyList<OneHold> Holds, IReadOnlyList<OneHappening> Happenings);

    /// <summary>What it adds up to.</summary>
    public sealed record Sums(
        double DeadheadS, double ShutS, int DeadheadEvents, double HottestTrappedDegC, double? FirstWarmFlowS, int PumpStarts,
        double PumpRunS, double PumpEnergyWh, int ValveStrokes);

    /// <summary>A rule's verdict: "kept", "notCalledUpon", "broken" or "notJudged".</summary>
    public sealed record OneRule(string Rule, string Judgement, int Occasions, long? FirstBrokenMs, string Why);

    /// <summary>An expectation's verdict.</summary>
    public sealed record OneExpectation(string Text, int Line, bool Met, long? AtMs, string Why);

    /// <summary>A stretch in which the pump was held, with the reason in the words of script files.</summary>
    public sealed record OneHold(long FromMs, long ToMs, string Reason);

    /// <summary>An event or alarm.</summary>
    public sealed record OneHappening(long AtMs, string Text, bool Alarm);

    /// <summary>The result of a report, as text that ends with a line feed.</summary>
    public static string From(ReportView report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var runs = new List<OneRun> { One(report.Judged, judged: true) };
        if (report.Compared is { } compared)
            runs.Add(One(compared, judged: false));
        var json = new RunJson(SchemaName, report.HouseName, report.ScriptTitle, report.Judged.Passed, runs);
        return JsonSerializer.Serialize(json, _json.RunJson) + "\n";
    }

    private static OneRun One(RunView run, bool judged) => new(
        run.ControllerName,
        judged,
        run.Passed,
        run.Lanes.EndMs,
        Summed(run.Totals),
        [.. run.Rules.Select(r => new OneRule(
            r.Verdict.Rule, Word(r.Verdict.Judgement), r.Verdict.Occasions,
            r.Verdict.FirstMs, r.Verdict.Why))],
        [.. run.Expectations.Select(e => new OneExpectation(e.Text, e.Line, e.Met, e.Ms, e.Why))],
        [.. run.Holds.Select(h => new OneHold(h.When.FromMs, h.When.ToMs, HoldWords.Of(h.Reason).Word))],
        [.. run.Happenings.Select(h => new OneHappening(h.Ms, h.Text, h.IsAlarm))]);

    internal static Sums Summed(RunTotals totals) => new(
        Rounded(totals.DeadheadS), Rounded(totals.ShutS), totals.DeadheadEvents, Rounded(totals.HottestTrappedC),
        totals.FirstWarmFlowS is { } s ? Rounded(s) : null, totals.PumpStarts, Rounded(totals.PumpRunS),
        Rounded(totals.PumpEnergyWh), totals.ValveStrokes);

    internal static string Word(Judgement judgement) => judgement switch
    {
        Judgement.Kept => "kept",
        Judgement.NotCalledUpon => "notCalledUpon",
        Judgement.Broken => "broken",
        Judgement.NotJudged => "notJudged",
        _ => throw new ArgumentOutOfRangeException(nameof(judgement), judgement, "a judgement without a word"),
    };

    /// <summary>Thousandths are finer than anything the model knows, and keep noise in the last bits out of comparisons.</summary>
    private static double Rounded(double value) => Math.Round(value, 3);
}

/// <summary>How the result is taken apart; made at build time, so that nothing is looked up at run time.</summary>
[JsonSerializable(typeof(RunJson))]
internal sealed partial class RunJsonContext : JsonSerializerContext;
