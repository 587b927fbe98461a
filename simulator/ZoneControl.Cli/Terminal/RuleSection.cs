using Spectre.Console;
using ZoneControl.Bench.Rules;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>The rule table: two rules abreast where there is room, and under it what each broken one asks and what was seen.</summary>
internal static class RuleSection
{
    public static void Write(IAnsiConsole console, IReadOnlyList<RuleView> rules, Clock clock)
    {
        if (rules.Count == 0)
            return;
        Screen.Heading(console, "Rules, judged from inputs and outputs alone");
        // Narrower, names would be broken in the middle.
        int abreast = console.Profile.Width >= Screen.Width ? 2 : 1;
        Table table = Screen.Plain([.. Enumerable.Repeat<string[]>(["rule", "verdict", "judged"], abreast).SelectMany(h => h)]);
        int rows = (rules.Count + abreast - 1) / abreast;
        for (int row = 0; row < rows; row++)
            table.AddRow([.. Enumerable.Range(0, abreast).Select(i => row + i * rows).Where(i => i < rules.Count).SelectMany(i => Cells(rules[i]))]);
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
