using ZoneControl.Bench.Rules;

namespace ZoneControl.Bench.Proving;

/// <summary>
/// Rules that are judged in one search. Monitors only look on, so each may be searched with by itself; what one remembers
/// does not multiply what another does. Those that remember much go alone, all others together.
/// </summary>
internal static class RuleGroups
{
    private static readonly string[] _alone = ["VALVE-LATE", "BOOT-SAFE", "HEAT-FIRST-OFF", "SEASON-EXERCISE"];

    /// <summary>The groups of the asked rules; those together first, since they find most.</summary>
    public static IReadOnlyList<IReadOnlySet<string>> Of(IReadOnlySet<string>? asked)
    {
        string[] rules = [.. RuleBook.Rules.Select(rule => rule.Id).Where(id => asked is null || asked.Contains(id))];
        List<IReadOnlySet<string>> groups = [rules.Except(_alone).ToHashSet()];
        groups.AddRange(rules.Intersect(_alone).Select(rule => new HashSet<string> { rule }));
        return [.. groups.Where(group => group.Count > 0)];
    }
}
