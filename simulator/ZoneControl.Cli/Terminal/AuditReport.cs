using Spectre.Console;
using ZoneControl.Bench.Rules;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>Writes what came of a capture to a terminal, 80 columns wide, readable without colour.</summary>
internal static class AuditReport
{
    private const int MostHappenings = 20;

    public static void Write(IAnsiConsole console, ReportView report)
    {
        CaptureView capture = report.Capture ?? throw new ArgumentException("no report on a capture", nameof(report));
        var clock = new Clock(report.StartClock);
        RunView run = report.Judged;
        Screen.Say(console, "ZoneControl", new Style(decoration: Decoration.Bold));
        Screen.Say(console, Sayings.Job);
        console.WriteLine();
        Screen.Say(console, $"House    {report.HouseName}: {report.HouseSummary}");
        Screen.Say(console, $"Capture  {report.ScriptTitle}");
        if (report.ScriptText.Length > 0)
            console.Write(new Padder(new Text(report.ScriptText)).Padding(9, 0, 0, 0));
        Facts(console, capture);
        LaneSection.Write(console, report);
        Estimate(console, report, capture);
        TerminalReport.Holds(console, run, clock);
        Happenings(console, run, clock);
        RuleSection.Write(console, [.. run.Rules.Where(rule => rule.Verdict.Judgement != Judgement.NotJudged)], clock);
        NotJudged(console, capture);
        Verdict(console, capture, run.Passed);
    }

    private static void Facts(IAnsiConsole console, CaptureView capture)
    {
        Screen.Heading(console, "What was read");
        var grid = new Grid().AddColumn(new GridColumn().NoWrap().PadRight(2)).AddColumn(new GridColumn().PadRight(0));
        foreach ((string name, string value) in capture.Facts)
            grid.AddRow(Screen.Cell(name), Screen.Cell(value));
        console.Write(grid);
    }

    private static void Estimate(IAnsiConsole console, ReportView report, CaptureView capture)
    {
        Screen.Heading(console, "Estimated: what these outputs do to the water");
        Table table = Screen.Plain("", "estimate");
        foreach (Measure measure in Measures.Of([report.Judged.Totals], report.Units))
            table.AddRow([Screen.Cell(measure.Name), .. measure.Values.Select(v => Screen.Cell(v, new Style(decoration: Decoration.Bold)))]);
        console.Write(table);
        Screen.Say(console, "Deadhead: the pump is on with less than its minimum flow.");
        Screen.Say(console, capture.Estimate);
    }

    private static void Happenings(IAnsiConsole console, RunView run, Clock clock)
    {
        if (run.Happenings.Count == 0)
            return;
        Screen.Heading(console, "What happened");
        var grid = new Grid().AddColumn(new GridColumn().NoWrap().PadRight(2)).AddColumn(new GridColumn().PadRight(0));
        foreach (Happening happening in run.Happenings.Take(MostHappenings))
        {
            grid.AddRow(
                Screen.Cell(clock.Seconds(happening.Ms)),
                Screen.Cell(happening.IsAlarm ? $"ALARM {happening.Text}" : happening.Text, Screen.WrongIf(happening.IsAlarm)));
        }

        console.Write(grid);
        if (run.Happenings.Count > MostHappenings)
            Screen.Say(console, $"... and {Quantity.Count(run.Happenings.Count - MostHappenings, "more line")}; --report shows all of them.");
    }

    private static void NotJudged(IAnsiConsole console, CaptureView capture)
    {
        if (capture.NotJudged.Count == 0)
            return;
        Screen.Heading(console, "Not judged");
        foreach ((string why, string rules) in capture.NotJudged)
        {
            Screen.Say(console, rules, new Style(decoration: Decoration.Bold));
            console.Write(new Padder(new Text(why)).Padding(2, 0, 0, 0));
        }
    }

    private static void Verdict(IAnsiConsole console, CaptureView capture, bool passed)
    {
        Screen.Heading(console, "Verdict");
        Screen.Say(console, $"{capture.Word}  {capture.Leading}", new Style(passed ? Color.Green : Color.Red, decoration: Decoration.Bold));
        Screen.Say(console, $"{capture.Grounds}.");
        Screen.Say(console, Sayings.Capture);
        Screen.Say(console, Sayings.Supervisory);
    }
}
