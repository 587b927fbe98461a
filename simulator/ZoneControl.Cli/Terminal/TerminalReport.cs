using Spectre.Console;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>Writes a report to a terminal, 80 columns wide, readable without colour.</summary>
internal static class TerminalReport
{
    private const int MostHolds = 14;
    private const int MostHappenings = 20;

    /// <summary>The whole report, from the head to the verdict.</summary>
    public static void Write(IAnsiConsole console, ReportView report)
    {
        var clock = new Clock(report.StartClock);
        Header(console, report);
        Numbers(console, report);
        LaneSection.Write(console, report);
        Holds(console, report.Judged, clock);
        Happenings(console, report.Judged, clock);
        RuleSection.Write(console, report.Judged.Rules, clock);
        Expectations(console, report.Judged.Expectations, clock);
        Verdict(console, report.Judged);
    }

    private static void Header(IAnsiConsole console, ReportView report)
    {
        Screen.Say(console, "ZoneControl", new Style(decoration: Decoration.Bold));
        Screen.Say(console, Sayings.Job);
        console.WriteLine();
        Screen.Say(console, $"House   {report.HouseName}: {report.HouseSummary}");
        Screen.Say(console, $"Script  {report.ScriptTitle}");
        if (report.ScriptText.Length > 0)
            console.Write(new Padder(new Text(report.ScriptText)).Padding(8, 0, 0, 0));
    }

    private static void Numbers(IAnsiConsole console, ReportView report)
    {
        IReadOnlyList<RunView> runs = Measures.Runs(report);
        Screen.Heading(console, runs.Count > 1 ? "Side by side: one house, one script, run twice" : "Totals");
        Table table = Screen.Plain(["", .. runs.Select(r => r.ControllerName)]);
        foreach (Measure measure in Measures.Of([.. runs.Select(r => r.Totals)], report.Units))
            table.AddRow([Screen.Cell(measure.Name), .. measure.Values.Select(v => Screen.Cell(v, new Style(decoration: Decoration.Bold)))]);
        console.Write(table);
        Screen.Say(console, "Deadhead: the pump is on with less than its minimum flow.");
    }

    internal static void Holds(IAnsiConsole console, RunView run, Clock clock)
    {
        Screen.Heading(console, "Why the pump waited");
        if (run.Holds.Count == 0)
        {
            Screen.Say(console, "The pump was never held.");
            return;
        }

        Table table = Screen.Plain("from", "to", "lasted", "reason");
        foreach (HoldView hold in run.Holds.Take(MostHolds))
        {
            table.AddRow(
                Screen.Cell(clock.Seconds(hold.When.FromMs)),
                Screen.Cell(clock.Seconds(hold.When.ToMs)),
                Screen.Cell(Quantity.Duration(hold.When.LengthMs / 1000.0)),
                Screen.Cell(HoldSign.For(hold.Reason).Word));
        }

        console.Write(table);
        More(console, run.Holds.Count - MostHolds, "hold");
        foreach (HoldSign words in run.Holds.Select(h => h.Reason).Distinct().Order().Select(HoldSign.For))
            Screen.Say(console, $"{words.Word}: {words.Sentence}");
    }

    private static void Happenings(IAnsiConsole console, RunView run, Clock clock)
    {
        Screen.Heading(console, "What happened");
        var grid = new Grid().AddColumn(new GridColumn().NoWrap().PadRight(2)).AddColumn(new GridColumn().PadRight(0));
        foreach (Happening happening in run.Happenings.Take(MostHappenings))
        {
            grid.AddRow(
                Screen.Cell(clock.Seconds(happening.Ms)),
                Screen.Cell(
                    happening.IsAlarm ? $"ALARM {happening.Text}" : happening.Text,
                    Screen.WrongIf(happening.IsAlarm)));
        }

        console.Write(grid);
        More(console, run.Happenings.Count - MostHappenings, "line");
    }

    private static void Expectations(IAnsiConsole console, IReadOnlyList<ExpectationVerdict> expectations, Clock clock)
    {
        if (expectations.Count == 0)
            return;
        Screen.Heading(console, "What the script expects");
        Table table = Screen.Plain("expectation", "verdict", "when", "line");
        foreach (ExpectationVerdict expectation in expectations)
        {
            string seen = expectation.Why.Length > 0 ? $"{expectation.Text}\n{expectation.Why}" : expectation.Text;
            table.AddRow(
                Screen.Cell(seen),
                Screen.Cell(expectation.Met ? "met" : "NOT MET", Screen.WrongIf(!expectation.Met)),
                Screen.Cell(expectation.Ms is { } ms ? clock.Seconds(ms) : "-"),
                Screen.Cell(expectation.Line > 0 ? $"{expectation.Line}" : "-"));
        }

        console.Write(table);
    }

    private static void Verdict(IAnsiConsole console, RunView run)
    {
        Screen.Heading(console, "Verdict");
        Color color = run.Passed ? Color.Green : Color.Red;
        Screen.Say(console, $"{(run.Passed ? "PASS" : "FAIL")}  {Sayings.Leading(run)}", new Style(color, decoration: Decoration.Bold));
        Screen.Say(console, $"{Sayings.Grounds(run)}.");
        if (run.Rules.Any(r => r.Verdict.Judgement == Judgement.NotCalledUpon))
            Screen.Say(console, "A rule not called upon was neither broken nor shown to hold.");
    }

    private static void More(IAnsiConsole console, int left, string what)
    {
        if (left > 0)
            Screen.Say(console, $"... and {Quantity.Count(left, $"more {what}")}; --report shows all of them.");
    }
}
