namespace ZoneControl.Bench.Rules;

/// <summary>How a rule came out of a trace.</summary>
public enum Judgement
{
    /// <summary>The rule had occasions to be broken and was not.</summary>
    Kept,

    /// <summary>Nothing in the trace called upon the rule: not broken, not shown either.</summary>
    NotCalledUpon,

    /// <summary>Broken at least once.</summary>
    Broken,

    /// <summary>The trace lacks a channel that the rule needs.</summary>
    NotJudged,
}

/// <summary>One rule's verdict over a whole trace.</summary>
/// <param name="Rule">Identity, as in the rule table: "PUMP-PROOF".</param>
/// <param name="Judgement">How it came out.</param>
/// <param name="Occasions">How often the trace gave the rule something to judge.</param>
/// <param name="FirstMs">When it was first broken, ms; null unless broken.</param>
/// <param name="Why">In plain words: what was seen and what the rule asks; empty when kept.</param>
public sealed record RuleVerdict(string Rule, Judgement Judgement, int Occasions, long? FirstMs, string Why);
