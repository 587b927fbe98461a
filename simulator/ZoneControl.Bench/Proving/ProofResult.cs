using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Proving;

/// <summary>What came of a search.</summary>
public enum ProofVerdict
{
    /// <summary>Every reachable state was visited and no rule is broken in any.</summary>
    Proven,

    /// <summary>A rule is broken, or a front end is.</summary>
    Broken,

    /// <summary>A limit ended the search: no rule is broken as far as it went, and that is all.</summary>
    Explored,
}

/// <summary>How often a search gave a rule something to judge.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Count">Moves at which it was called upon.</param>
public sealed record RuleOccasions(string Rule, long Count);

/// <summary>One search over all states, with the monitors of some rules looking on.</summary>
/// <param name="Rules">Those rules.</param>
/// <param name="Stopped">Which limit ended it.</param>
/// <param name="Depth">Scans after the first up to which every run was judged.</param>
/// <param name="States">States visited.</param>
/// <param name="Transitions">Moves made.</param>
/// <param name="Elapsed">Time taken.</param>
/// <param name="PeakBytes">The most memory that states took, bytes.</param>
public sealed record ProofPass(
    IReadOnlyList<string> Rules, StopReason Stopped, int Depth, long States, long Transitions, TimeSpan Elapsed, long PeakBytes);

/// <summary>A part in front of the core that was proven by itself.</summary>
/// <param name="Name">Which part.</param>
/// <param name="States">States visited.</param>
/// <param name="Fault">What it does wrong; null when nothing.</param>
public sealed record FrontEnd(string Name, long States, string? Fault);

/// <summary>The result of a proof.</summary>
public sealed record ProofResult
{
    /// <summary>What came of it.</summary>
    public required ProofVerdict Verdict { get; init; }

    /// <summary>Which limit ended it.</summary>
    public required StopReason Stopped { get; init; }

    /// <summary>Scans after the first up to which every run was judged by every rule; with a breach, the scans that it takes.</summary>
    public required int Depth { get; init; }

    /// <summary>Time that all searches took.</summary>
    public required TimeSpan Elapsed { get; init; }

    /// <summary>Threads that searched.</summary>
    public required int Workers { get; init; }

    /// <summary>The searches that it is made of.</summary>
    public required IReadOnlyList<ProofPass> Passes { get; init; }

    /// <summary>The parts that were proven by themselves.</summary>
    public required IReadOnlyList<FrontEnd> FrontEnds { get; init; }

    /// <summary>Which numbers stood for which times.</summary>
    public required Scaling Scaling { get; init; }

    /// <summary>What the world could do between two scans.</summary>
    public required IReadOnlyList<Move> Moves { get; init; }

    /// <summary>The protection that was taken away.</summary>
    public required Protection Without { get; init; }

    /// <summary>How often each rule had something to judge, in the rule book's order; one with none is neither kept nor broken.</summary>
    public required IReadOnlyList<RuleOccasions> Occasions { get; init; }

    /// <summary>The broken rule; null when none is.</summary>
    public string? Rule { get; init; }

    /// <summary>Why, in words, in scaled times.</summary>
    public string Why { get; init; } = "";

    /// <summary>The moves that lead to the breach with scaled times, one a scan; empty without one.</summary>
    public IReadOnlyList<Move> ScaledRun { get; init; } = [];

    /// <summary>
    /// The script that breaks the rule with the house's real filters and times, as run on the bench; null without a breach,
    /// and when no such script was found: then it may be of the scaled times' or the free contacts' making.
    /// </summary>
    public Run? Replay { get; init; }

    /// <summary>States visited by all searches.</summary>
    public long States => Passes.Sum(pass => pass.States);

    /// <summary>Moves made by all searches.</summary>
    public long Transitions => Passes.Sum(pass => pass.Transitions);

    /// <summary>The most memory that the states of one search took, bytes.</summary>
    public long PeakBytes => Passes.Max(pass => pass.PeakBytes);

    /// <summary>The chance that hashing hid a state in any search, at most (see <see cref="VisitedSet.ErrorBound"/>).</summary>
    public double HashError => Passes.Sum(pass => VisitedSet.ErrorBound(pass.States));
}
