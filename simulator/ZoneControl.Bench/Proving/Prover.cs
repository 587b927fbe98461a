using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>Explores every reachable state of a house's controller and judges every rule in each.</summary>
public static class Prover
{
    /// <summary>Searches until everything is visited, a rule is broken, or a limit is reached.</summary>
    /// <param name="house">The house.</param>
    /// <param name="options">What to do and what it may take.</param>
    /// <param name="progress">Told after each level of each search.</param>
    /// <param name="cancel">Stops the search; the result then says how far it came.</param>
    public static ProofResult Run(
        House house, ProveOptions options, IProgress<SearchProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(options);
        ControllerSettings real = house.ToSettings();
        string NameOf(int zone) => house.Zones[zone].Label;
        Func<ControllerSettings, IProvable> build = options.Build ?? (settings => Protections.Build(settings, options.Without));
        Scaling scaling = Scaling.Of(real, options.MostScans, NameOf, options.FilterScans);
        Move[] moves = [.. Move.All(real).Where(move => !options.Except.Contains(move.Kind))];
        var whole = new ProductPlan(scaling.Settings, () => build(Scaling.Copy(scaling.Settings)), moves, null, NameOf);
        List<SearchPass> passes = Search(whole, options, progress, cancel);
        SearchPass? broken = passes.Where(pass => pass.Outcome.Breach is not null).MinBy(pass => pass.Outcome.Depth);
        SearchPass? stopped = passes.FirstOrDefault(pass => pass.Outcome.Stopped != StopReason.None);
        Breach? breach = broken?.Outcome.Breach;
        string? rule = breach is null ? null : RuleBook.Rules[breach.Rule].Id;
        Run? replay = null;
        if (broken is not null && rule is not null && !cancel.IsCancellationRequested)
        {
            ProductPlan plan = whole with { Rules = new HashSet<string> { rule } };
            replay = Replay.Of(house, real, build, plan, scaling.Times, broken.Outcome.Moves, rule, breach!.Why, cancel);
        }

        FrontEnd filter = FilterProof.Run(build);
        return new ProofResult
        {
            FrontEnds = [filter],
            Verdict = broken is not null || filter.Fault is not null ? ProofVerdict.Broken : stopped is not null ? ProofVerdict.Explored : ProofVerdict.Proven,
            Stopped = stopped?.Outcome.Stopped ?? StopReason.None,
            Depth = broken?.Outcome.Depth ?? (stopped is null ? passes.Max(pass => pass.Outcome.Depth) : passes.Min(pass => pass.Outcome.Depth)),
            Elapsed = passes.Aggregate(TimeSpan.Zero, (sum, pass) => sum + pass.Outcome.Elapsed),
            Workers = WorkersOf(options),
            Passes = [.. passes.Select(pass => pass.Told())],
            Scaling = scaling,
            Moves = moves,
            Without = options.Without,
            Occasions =
            [
                .. RuleBook.Rules.Select((known, i) => new RuleOccasions(known.Id, passes.Sum(pass => pass.Outcome.Occasions[i]))),
            ],
            Rule = rule,
            Why = breach?.Why ?? "",
            ScaledRun = broken?.Outcome.Moves ?? [],
            Replay = replay,
        };
    }

    private static int WorkersOf(ProveOptions options) => options.Workers > 0 ? options.Workers : Environment.ProcessorCount;

    private static List<SearchPass> Search(
        ProductPlan whole, ProveOptions options, IProgress<SearchProgress>? progress, CancellationToken cancel)
    {
        var passes = new List<SearchPass>();
        IReadOnlyList<IReadOnlySet<string>> groups = RuleGroups.Of(options.Rules);
        TimeSpan left = options.MaxTime;
        int depth = int.MaxValue;
        int searches = groups.Count + 1;
        for (int i = 0; i < groups.Count; i++)
        {
            // The first judges most rules and has most of the time; what one does not need the next ones have.
            TimeSpan share = i == 0 ? left * 0.6 : left / (searches - i);
            var limits = new SearchLimits(
                options.MaxStates, share, options.MaxMemoryBytes, WorkersOf(options), depth);
            SearchOutcome outcome = new Search(whole with { Rules = groups[i] }, limits).Run(progress, cancel);
            passes.Add(new SearchPass(groups[i], outcome));
            left -= outcome.Elapsed;
            if (outcome.Breach is not null)
                depth = outcome.Depth - 1;
            if (cancel.IsCancellationRequested)
                break;
        }

        if (Clocks(whole, options) is { } clocks && !cancel.IsCancellationRequested && left > TimeSpan.Zero)
        {
            var limits = new SearchLimits(options.MaxStates, left, options.MaxMemoryBytes, WorkersOf(options), depth);
            passes.Add(new SearchPass(clocks.Rules!, new Search(clocks, limits).Run(progress, cancel)));
        }

        foreach (IReadOnlySet<string> rules in groups.Skip(passes.Count))
            passes.Add(SearchPass.NotBegun(rules));
        return passes;
    }

    /// <summary>A clock that fails in every way, with nothing else moving but thermostats: that the fault is seen at all.</summary>
    private static ProductPlan? Clocks(ProductPlan whole, ProveOptions options)
    {
        const string Rule = "TIME-FAULT";
        if (options.Rules?.Contains(Rule) == false || options.Except.Contains(MoveKind.ClockBack))
            return null;
        Move[] moves =
        [
            .. whole.Moves.Where(move => move.Kind is MoveKind.Wait or MoveKind.Call or MoveKind.Sense or MoveKind.ClockBack),
            new(MoveKind.ClockStill), new(MoveKind.ClockLate),
        ];
        return whole with { Moves = moves, Rules = new HashSet<string> { Rule } };
    }

    /// <summary>One search with the monitors of some rules.</summary>
    private sealed record SearchPass(IReadOnlySet<string> Rules, SearchOutcome Outcome)
    {
        public static SearchPass NotBegun(IReadOnlySet<string> rules) => new(rules, new SearchOutcome(
            StopReason.Cancelled, 0, 0, 0, TimeSpan.Zero, 0, new long[RuleBook.Rules.Count], null, []));

        public ProofPass Told() => new(
            [.. RuleBook.Rules.Select(rule => rule.Id).Where(Rules.Contains)],
            Outcome.Stopped, Outcome.Depth, Outcome.States, Outcome.Transitions, Outcome.Elapsed, Outcome.PeakBytes);
    }
}
