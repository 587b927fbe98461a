using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Running;

/// <summary>One script run on one house by one controller, judged.</summary>
/// <param name="House">The house.</param>
/// <param name="Script">The script.</param>
/// <param name="ControllerName">What drove valves, pump and heat.</param>
/// <param name="Trace">Everything recorded.</param>
/// <param name="Rules">A verdict for each rule of the rule book, in its order.</param>
/// <param name="Expectations">A verdict for each expectation of the script, and for what every healthy run owes its pump.</param>
/// <param name="Holds">When the pump was held and why.</param>
/// <param name="Totals">What it adds up to.</param>
public sealed record Run(
    House House,
    Script Script,
    string ControllerName,
    Trace Trace,
    IReadOnlyList<RuleVerdict> Rules,
    IReadOnlyList<ExpectationVerdict> Expectations,
    IReadOnlyList<HoldSpan> Holds,
    RunTotals Totals)
{
    /// <summary>The verdict: no rule broken and every expectation met.</summary>
    public bool Passed => Rules.All(rule => rule.Judgement != Judgement.Broken) && Expectations.All(expected => expected.Met);
}
