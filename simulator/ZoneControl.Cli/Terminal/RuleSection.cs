using Spectre.Console;
using ZoneControl.Bench.Rules;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>The rule table: two rules abreast, and under it what each broken one asks and what was seen.</summary>
internal static class RuleSection
{
    public static void Write(IAnsiConsole console, IReadOnlyList<RuleView> rules, Clock clock)
    {
        if (rules.Count == 0)
            return;
        Screen.Heading(console, "Rules, judged from inputs and outputs alone");
        Table table = Screen.Plain("rule", "verdict", "judged", "rule", "verdict", "judged");
        int rows = (rules.Count + 1) / 2;
        for (int row = 0; row < rows; row++)
            table.AddRow([.. Cells(rules[row]), .. row + rows < rules.Count ? Cells(rules[row + rows]) : []]);
        console.Write(table);
        foreach (RuleView rule in rules.Where(r => r.Verdict.Why.Length > 0 || r.Verdict.Judgement == Judgement.Broken))
            Details(console, rule, clock);
    }

    private static Text[] Cells(RuleView rule)
    {
        Style style = Screen.WrongIf(rule.Verdict.Judgement == Judgement.Broken);
        string verdict = rule.Verdict.Judgement == Judgement.NotCalledUpon ? "not called" : Sayings.Word(rule.Verdict.Judgement);
        return [new Text(rule.Verdict.Rule, style), new Text(verdict, style), new Text($"{rule.Verdict.Occasions}")];
    }

    private static void Details(IAnsiConsole console, RuleView rule, Clock clock)
    {
        string when = rule.Verdict.FirstMs is { } ms ? $" at {clock.Seconds(ms)}" : "";
        Screen.Say(
            console,
            $"{rule.Verdict.Rule} {Sayings.Word(rule.Verdict.Judgement)}{when}: {rule.Verdict.Why}",
            Screen.WrongIf(rule.Verdict.Judgement == Judgement.Broken));
        if (rule.Sentence.Length > 0)
            console.Write(new Padder(new Text($"It asks: {rule.Sentence}")).Padding(2, 0, 0, 0));
    }
}
