namespace ZoneControl.Bench.Rules;

/// <summary>Counts occasions and keeps each rule's first breach.</summary>
internal sealed class Tally : IFindings
{
    private readonly Dictionary<string, int> _occasions = [];
    private readonly Dictionary<string, (long Ms, string Why)> _first = [];

    /// <inheritdoc/>
    public void Occasion(string rule) => _occasions[rule] = _occasions.GetValueOrDefault(rule) + 1;

    /// <inheritdoc/>
    /// <remarks>A duty's moment lies inside the time that passes, so breaches may be told out of order.</remarks>
    public void Broken(string rule, long ms, string why)
    {
        if (!_first.TryGetValue(rule, out var known) || ms < known.Ms)
            _first[rule] = (ms, why);
    }

    /// <summary>A verdict for each rule of the rule book, in its order.</summary>
    public IReadOnlyList<RuleVerdict> Verdicts() => [.. RuleBook.Rules.Select(rule => Of(rule.Id))];

    private RuleVerdict Of(string rule)
    {
        int occasions = _occasions.GetValueOrDefault(rule);
        if (_first.TryGetValue(rule, out var first))
            return new RuleVerdict(rule, Judgement.Broken, occasions, first.Ms, first.Why);
        return new RuleVerdict(rule, occasions > 0 ? Judgement.Kept : Judgement.NotCalledUpon, occasions, null, "");
    }
}
