using Spectre.Console;
using Spectre.Console.Testing;
using ZoneControl.Bench.Rules;
using ZoneControl.Cli.Terminal;
using ZoneControl.Logic;
using ZoneControl.Web.Tests;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Tests;

public class TerminalReportTests
{
    private static string[] Lines(ReportView report, bool colour = false, int width = 80)
    {
        using var console = new TestConsole();
        console.Profile.Width = width;
        if (colour)
            console.Colors(ColorSystem.TrueColor).EmitAnsiSequences();
        TerminalReport.Write(console, report);
        return console.Output.Replace(ScreenWriter.Joint, ' ').Split('\n');
    }

    public static TheoryData<string> Variants => ["metric", "us", "failing", "alone", "long names", "many holds"];

    private static ReportView Variant(string name)
    {
        ReportView plain = Morning.Report();
        return name switch
        {
            "us" => Morning.Report(UnitSystem.UsCustomary),
            "failing" => Morning.Report(passed: false),
            "alone" => Morning.Report(compared: false),
            "long names" => plain with
            {
                HouseName = new string('h', 100),
                ScriptTitle = string.Join(' ', Enumerable.Repeat("title", 40)),
                ScriptText = string.Join(' ', Enumerable.Repeat("text", 200)),
                Judged = plain.Judged with
                {
                    ControllerName = string.Join(' ', Enumerable.Repeat("controller", 8)),
                    Rules = [new RuleView(new string('s', 300), new RuleVerdict("RULE-WITH-A-LONG-NAME", Judgement.Broken, 123_456, 1, new string('w', 200)))],
                },
            },
            "many holds" => plain with
            {
                Judged = plain.Judged with
                {
                    Holds = [.. Enumerable.Range(0, 90).Select(i => new HoldView(
                        new Stretch(i * 60_000, i * 60_000 + 30_000), Enum.GetValues<HoldReason>()[1 + i % 5]))],
                },
            },
            _ => plain,
        };
    }

    [Fact]
    public void A_narrow_terminal_breaks_no_rule_name()
    {
        string[] lines = Lines(Morning.Report(), width: 60);
        Assert.All(Morning.Report().Judged.Rules, rule => Assert.Contains(lines, line => line.Trim().StartsWith(rule.Verdict.Rule + " ", StringComparison.Ordinal)));
        Assert.All(lines, line => Assert.True(line.Length <= 60, line));
    }

    [Theory]
    [MemberData(nameof(Variants))]
    public void No_line_is_longer_than_80_characters(string variant) =>
        Assert.All(Lines(Variant(variant)), line => Assert.True(line.Length <= 80, $"{line.Length}: {line}"));

    [Fact]
    public void Without_colour_there_is_no_escape_and_the_text_is_the_same()
    {
        string[] plain = Lines(Morning.Report());
        Assert.DoesNotContain(plain, line => line.Contains('\u001b', StringComparison.Ordinal));
        string[] coloured = Lines(Morning.Report(), colour: true);
        Assert.Contains(coloured, line => line.Contains('\u001b', StringComparison.Ordinal));
        Assert.Equal(plain, coloured.Select(line => System.Text.RegularExpressions.Regex.Replace(line, "\u001b\\[[0-9;]*m", "")));
    }

    [Fact]
    public void The_two_runs_stand_side_by_side_with_the_controller_on_the_right()
    {
        string[] lines = Lines(Morning.Report());
        Assert.Contains(lines, l => l.TrimStart().StartsWith("Deadhead  ", StringComparison.Ordinal) && Squeezed(l) == "Deadhead 18 min 0 s");
        Assert.Contains(lines, l => Squeezed(l) == "Hottest trapped water 71.3 °C 32.1 °C");
        Assert.Contains(Lines(Morning.Report(UnitSystem.UsCustomary)), l => Squeezed(l) == "Hottest trapped water 160.3 °F 89.8 °F");
    }

    [Fact]
    public void A_pass_and_a_fail_say_why()
    {
        Assert.Contains("PASS  The pump never ran with less than its minimum flow.", Lines(Morning.Report()));
        string[] failing = Lines(Morning.Report(passed: false));
        Assert.Contains("FAIL  Broken: PUMP-PROOF; 1 expectation not met.", failing);
        Assert.Contains(failing, l => l.StartsWith("PUMP-PROOF BROKEN at 06:25:12.5: the pump was on", StringComparison.Ordinal));
    }

    [Fact]
    public void More_holds_than_fit_are_counted_not_dropped_in_silence()
    {
        Assert.Contains("... and 76 more holds; --report shows all of them.", Lines(Variant("many holds")));
    }

    [Fact]
    public void Holds_are_explained_once_each()
    {
        string all = string.Join('\n', Lines(Morning.Report()));
        Assert.Equal(2, all.Split("valves opening: ").Length);
        Assert.Contains("season lockout: ", all, StringComparison.Ordinal);
    }

    private static string Squeezed(string line) => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
