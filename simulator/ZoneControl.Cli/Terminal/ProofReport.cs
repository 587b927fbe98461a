using System.Globalization;
using Spectre.Console;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Scripts;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>Writes the result of a proof to a terminal, 80 columns wide.</summary>
internal static class ProofReport
{
    private const int MostSums = 6;

    public static void Write(IAnsiConsole console, House house, ProofResult result)
    {
        Screen.Say(console, "ZoneControl", new Style(decoration: Decoration.Bold));
        Screen.Say(console, $"Every reachable state of: {house.Name}");
        if (result.Without != Protection.None)
        {
            Screen.Say(console, $"What if: {Protections.InWords(result.Without)}");
            Screen.Say(console, $"Judged: {string.Join(", ", Protections.Harm)}.");
        }

        Searched(console, result);
        Times(console, result);
        Assumed(console, house, result);
        if (result.Rule is not null)
            Broken(console, house, result);
        Verdict(console, result);
    }

    private static void Searched(IAnsiConsole console, ProofResult result)
    {
        Screen.Heading(console, "What was searched");
        Table table = Screen.Plain("rules", "scans deep", "states", "moves", "s", "MB");
        foreach (ProofPass pass in result.Passes)
        {
            string rules = pass.Rules.Count > 2 ? $"{pass.Rules.Count} rules together" : string.Join(", ", pass.Rules);
            table.AddRow(
                Screen.Cell(rules), Screen.Cell($"{pass.Depth}{(pass.Stopped == StopReason.None ? "" : ", stopped")}"),
                Screen.Cell(Number(pass.States)), Screen.Cell(Number(pass.Transitions)),
                Screen.Cell(pass.Elapsed.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture)),
                Screen.Cell(Number(pass.PeakBytes >> 20)));
        }

        console.Write(table);
        double rate = result.Transitions / Math.Max(0.001, result.Elapsed.TotalSeconds);
        Screen.Say(console, $"{Number((long)rate)} moves a second on {Quantity.Count(result.Workers, "thread")}. "
            + "States are kept as 128-bit hashes: the chance that one was hidden is below "
            + result.HashError.ToString("0.0e0", CultureInfo.InvariantCulture) + ".");
        FrontEnds(console, result);
    }

    private static void FrontEnds(IAnsiConsole console, ProofResult result)
    {
        foreach (FrontEnd end in result.FrontEnds)
        {
            Screen.Say(
                console,
                $"{end.Name}: {(end.Fault is null ? $"proven alone, {Number(end.States)} states" : end.Fault)}.",
                Screen.WrongIf(end.Fault is not null));
        }
    }

    private static void Times(IAnsiConsole console, ProofResult result)
    {
        Screen.Heading(console, "Scaled times");
        Screen.Say(console, "Small numbers of scans stand for the house's times. They keep the order of all times, and of "
            + $"{result.Scaling.SumsKept} sums of two against a third; {result.Scaling.SumsLost.Count} sums are not kept.");
        Table table = Screen.Plain("scans", "stands for");
        foreach (var group in result.Scaling.Times.GroupBy(time => time.Scans).OrderBy(group => group.Key))
        {
            table.AddRow(
                Screen.Cell($"{group.Key}"),
                Screen.Cell(string.Join(", ", group.Select(time => $"{time.Name} {Durations.InWords(time.Ms)}"))));
        }

        console.Write(table);
        foreach (string sum in result.Scaling.SumsLost.Take(MostSums))
            Screen.Say(console, $"not kept: {sum}");
        if (result.Scaling.SumsLost.Count > MostSums)
            Screen.Say(console, $"... and {result.Scaling.SumsLost.Count - MostSums} more; --scans keeps more of them.");
    }

    private static void Assumed(IAnsiConsole console, House house, ProofResult result)
    {
        Screen.Heading(console, "What may happen, and what is assumed");
        Screen.Say(console, $"One of these in any scan: {string.Join(", ", Move.InWords(result.Moves, house))}.");
        Screen.Say(console, "Assumed: contacts as accepted (debounce is proven apart), one change a scan, outputs that reach their "
            + "relays. Not looked at: relay contacts, shut isolators, water, other houses.");
        string[] uncalled = [.. result.Occasions.Where(rule => rule.Count == 0).Select(rule => rule.Rule)];
        if (uncalled.Length > 0 && result.Verdict != ProofVerdict.Broken && result.Without == Protection.None)
            Screen.Say(console, $"Never called upon in this house: {string.Join(", ", uncalled)}.");
    }

    private static void Broken(IAnsiConsole console, House house, ProofResult result)
    {
        Screen.Heading(console, "The shortest way to break a rule");
        Bench.Rules.Rule rule = RuleBook.Rules.First(known => known.Id == result.Rule);
        if (result.Replay is not { } replay)
        {
            Screen.Say(console, $"{rule.Id}: {result.Why}, after {result.Depth} scans of scaled time.", Screen.Wrong);
            Screen.Say(console, "No script was found that breaks it with the house's real filters and times: it may be of the scaled "
                + "times' making. What changes, by scans of scaled time:");
            foreach ((int scan, Move move) in result.ScaledRun.Index().Where(step => step.Item.Kind != MoveKind.Wait))
                Screen.Say(console, $"{scan,14}  {move.InWords(house)}");
            return;
        }

        RuleVerdict verdict = replay.Rules.First(judged => judged.Rule == rule.Id);
        Screen.Say(console, $"{rule.Id} broken at {Durations.InWords(verdict.FirstMs ?? 0)}: {verdict.Why}", Screen.Wrong);
        Screen.Say(console, $"It asks: {rule.Sentence}");
        console.WriteLine();
        foreach (ScriptEvent happened in replay.Script.Events)
            Screen.Say(console, $"{Durations.InWords(happened.AtMs),14}  {happened.Action.InWords(replay.House)}");
        LaneSection.Write(console, ReportBuilder.From(replay, null, RuleBook.Rules));
    }

    private static void Verdict(IAnsiConsole console, ProofResult result)
    {
        Screen.Heading(console, "Verdict");
        (string word, string text, Color color) = result.Verdict switch
        {
            ProofVerdict.Proven => ("PROVEN",
                "every reachable state of this house was visited, and no rule is broken in any: for these scaled times and these contacts.",
                Color.Green),
            ProofVerdict.Broken when result.Rule is null => ("BROKEN", "a front end does not do what the search takes it to do.", Color.Red),
            ProofVerdict.Broken => ("BROKEN", $"{result.Rule}: {result.Why} (in scaled time).", Color.Red),
            _ => ("EXPLORED",
                $"to depth {result.Depth}: no rule is broken in any run of {result.Depth} scans. That is no proof. Stopped: {Stopped(result.Stopped)}.",
                Color.Yellow),
        };
        Screen.Say(console, $"{word}  {text}", new Style(color, decoration: Decoration.Bold));
    }

    private static string Stopped(StopReason reason) => reason switch
    {
        StopReason.States => "the most states were visited",
        StopReason.Time => "the time was up",
        StopReason.Memory => "the memory was used up",
        _ => "by hand",
    };

    private static string Number(long value) => value.ToString("N0", CultureInfo.InvariantCulture);
}
