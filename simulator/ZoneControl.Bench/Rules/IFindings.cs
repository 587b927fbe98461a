namespace ZoneControl.Bench.Rules;

/// <summary>Where monitors say what they saw. Findings are no part of a monitor's state.</summary>
public interface IFindings
{
    /// <summary>A rule was given something to judge.</summary>
    /// <param name="rule">The rule's identity.</param>
    void Occasion(string rule);

    /// <summary>A rule was broken.</summary>
    /// <param name="rule">The rule's identity.</param>
    /// <param name="ms">The moment, ms from the start of the run.</param>
    /// <param name="why">In plain words: what was seen and what the rule asks.</param>
    void Broken(string rule, long ms, string why);
}
