using ZoneControl.Bench.Rules;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>What a trace is expected to come out as.</summary>
internal static class Verdict
{
    public static IReadOnlyList<RuleVerdict> All(TraceBuilder trace, ControllerSettings? house = null) =>
        Judge.Verdicts(house ?? Workshop.Settings(), trace.Trace(), Workshop.NameOf);

    /// <summary>The rule had occasions and was kept, and so was every other rule.</summary>
    public static void IsKept(string rule, TraceBuilder trace, int occasions, ControllerSettings? house = null)
    {
        var all = All(trace, house);
        Assert.Equal("", Told(all.Where(v => v.Judgement == Judgement.Broken)));
        RuleVerdict one = all.Single(v => v.Rule == rule);
        Assert.Equal(Judgement.Kept, one.Judgement);
        Assert.Equal(occasions, one.Occasions);
        Assert.Null(one.FirstMs);
        Assert.Equal("", one.Why);
    }

    /// <summary>The rule was broken at that moment for that reason, and besides it only the named siblings.</summary>
    public static void IsBroken(string rule, long ms, string words, TraceBuilder trace, params string[] siblings) =>
        IsBroken(rule, ms, words, trace, Workshop.Settings(), siblings);

    /// <summary>The same in another house.</summary>
    public static void IsBroken(
        string rule, long ms, string words, TraceBuilder trace, ControllerSettings house, params string[] siblings)
    {
        var all = All(trace, house);
        var broken = all.Where(v => v.Judgement == Judgement.Broken).ToList();
        RuleVerdict? one = broken.SingleOrDefault(v => v.Rule == rule);
        Assert.True(one is not null, $"{rule} is not broken; broken: {Told(broken)}");
        Assert.Equal(ms, one.FirstMs);
        Assert.Contains(words, one.Why, StringComparison.Ordinal);
        string expected = string.Join(" ", siblings.Append(rule).Order(StringComparer.Ordinal));
        string found = string.Join(" ", broken.Select(v => v.Rule).Order(StringComparer.Ordinal));
        Assert.True(expected == found, $"expected broken: {expected}; found: {Told(broken)}");
    }

    /// <summary>Nothing in the trace called upon the rule, and nothing is broken.</summary>
    public static void IsNotCalledUpon(string rule, TraceBuilder trace, ControllerSettings? house = null)
    {
        var all = All(trace, house);
        Assert.Equal("", Told(all.Where(v => v.Judgement == Judgement.Broken)));
        RuleVerdict one = all.Single(v => v.Rule == rule);
        Assert.Equal(Judgement.NotCalledUpon, one.Judgement);
        Assert.Equal(0, one.Occasions);
    }

    private static string Told(IEnumerable<RuleVerdict> verdicts) =>
        string.Join("; ", verdicts.Select(v => $"{v.Rule} at {v.FirstMs} ms: {v.Why}"));
}
