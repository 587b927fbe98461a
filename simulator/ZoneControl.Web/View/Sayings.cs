using ZoneControl.Bench.Rules;

namespace ZoneControl.Web.View;

/// <summary>Sentences that terminal and report share.</summary>
public static class Sayings
{
    /// <summary>The job in a line.</summary>
    public const string Job = "The pump may run only when water has somewhere to go.";

    /// <summary>What a supervisory controller is not.</summary>
    public const string Supervisory =
        "ZoneControl is a supervisory controller. It never replaces a limit, relief valve or safety device that the heat " +
        "source or the code requires.";

    /// <summary>Who wires what.</summary>
    public const string Wiring =
        "Mains wiring is work for a licensed electrician, the heat source's own limits stay in place, and local code decides.";

    /// <summary>What a simulated run is worth.</summary>
    public const string Model =
        "These numbers come from a model of the house described in the file. They show how the logic behaves; they are no " +
        "measurement of a real house.";

    /// <summary>What a judged capture is worth.</summary>
    public const string Capture =
        "Rules are judged by what the capture shows and the house file says. What the capture does not show is not judged, and " +
        "water is estimated by a model, not measured.";

    /// <summary>How a rule came out, in words; broken stands out without colour.</summary>
    public static string Word(Judgement judgement) => judgement switch
    {
        Judgement.Kept => "kept",
        Judgement.NotCalledUpon => "not called upon",
        Judgement.Broken => "BROKEN",
        Judgement.NotJudged => "not judged",
        _ => throw new ArgumentOutOfRangeException(nameof(judgement), judgement, "a judgement without words"),
    };

    /// <summary>What the verdict rests on: "16 rules kept, 2 not called upon; 9 of 9 expectations met; deadhead 0 s".</summary>
    public static string Grounds(RunView run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var rules = new List<string>();
        foreach (Judgement judgement in (Judgement[])[Judgement.Broken, Judgement.Kept, Judgement.NotCalledUpon, Judgement.NotJudged])
        {
            int count = run.Rules.Count(r => r.Verdict.Judgement == judgement);
            if (count > 0)
                rules.Add(rules.Count == 0 ? $"{Quantity.Count(count, "rule")} {Word(judgement)}" : $"{count} {Word(judgement)}");
        }

        var parts = new List<string>();
        if (rules.Count > 0)
            parts.Add(string.Join(", ", rules));
        if (run.Expectations.Count > 0)
            parts.Add($"{run.Expectations.Count(e => e.Met)} of {Quantity.Count(run.Expectations.Count, "expectation")} met");
        parts.Add($"deadhead {Quantity.Duration(run.Totals.DeadheadS)}");
        return string.Join("; ", parts);
    }

    /// <summary>The verdict's leading sentence: what went wrong, or how the pump fared.</summary>
    public static string Leading(RunView run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Passed)
            return PumpSentence(run);
        string[] broken = [.. run.Rules.Where(r => r.Verdict.Judgement == Judgement.Broken).Select(r => r.Verdict.Rule)];
        int unmet = run.Expectations.Count(e => !e.Met);
        var wrong = new List<string>();
        if (broken.Length > 0)
            wrong.Add($"broken: {string.Join(", ", broken)}");
        if (unmet > 0)
            wrong.Add($"{Quantity.Count(unmet, "expectation")} not met");
        if (wrong.Count == 0 || run.Totals.DeadheadS > 0)
            wrong.Add($"deadhead {Quantity.Duration(run.Totals.DeadheadS)}");
        string all = string.Join("; ", wrong);
        return char.ToUpperInvariant(all[0]) + all[1..] + ".";
    }

    /// <summary>What happened to the pump, in a sentence.</summary>
    public static string PumpSentence(RunView run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Totals.PumpStarts == 0)
            return "The pump never ran.";
        return run.Totals.DeadheadS > 0
            ? $"The pump ran with less than its minimum flow for {Quantity.Duration(run.Totals.DeadheadS)}."
            : "The pump never ran with less than its minimum flow.";
    }
}
