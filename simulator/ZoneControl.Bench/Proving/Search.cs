using System.Diagnostics;

namespace ZoneControl.Bench.Proving;

/// <summary>
/// Breadth-first search over every state that a plan can reach, level by level, all workers on one level at a time: so the
/// first breach found is one that no shorter run shows. A level is a scan.
/// </summary>
internal sealed class Search(ProductPlan plan, SearchLimits limits)
{
    private readonly VisitedSet _visited = new(limits.MemoryBytes * 3 / 5);
    private readonly Trail _trail = new(limits.Workers);
    private readonly Stack<Block> _spare = new();
    private readonly Stopwatch _clock = new();
    private long _mostBytes;
    private long _levelBytes;
    private int _stop;

    public SearchOutcome Run(IProgress<SearchProgress>? progress, CancellationToken cancel)
    {
        _clock.Start();
        var explorers = new Explorer[limits.Workers];
        for (int i = 0; i < explorers.Length; i++)
            explorers[i] = new Explorer(i, plan, _visited, _trail, NewBlock);
        var now = new Frontier();
        var next = new Frontier();
        explorers[0].Begin(now);
        int depth = 0;
        while (now.Count > 0 && depth < limits.Depth && explorers.All(explorer => explorer.Found is null))
        {
            bool whole = Level(explorers, now, next, cancel);
            progress?.Report(new SearchProgress(depth, _visited.Count, Transitions(explorers), next.Count, _clock.Elapsed));
            if (explorers.Any(explorer => explorer.Found is not null))
            {
                depth++;
                break;
            }

            if (!whole)
                break;
            depth++;
            now.Clear(_spare);
            (now, next) = (next, now);
        }

        _clock.Stop();
        return Outcome(explorers, depth);
    }

    private bool Level(Explorer[] explorers, Frontier now, Frontier next, CancellationToken cancel)
    {
        _levelBytes = now.Bytes;
        bool Stop() => Volatile.Read(ref _stop) != 0 || MustStop(next, cancel);
        void Work(int worker)
        {
            while (now.Take() is { } block)
            {
                if (!explorers[worker].Expand(block, next, Stop))
                    break;
            }

            explorers[worker].Flush(next);
        }

        if (explorers.Length == 1 || now.Count < 64)
        {
            Work(0);
        }
        else
        {
            Thread[] threads = [.. Enumerable.Range(0, explorers.Length).Select(i => new Thread(() => Work(i)))];
            foreach (Thread thread in threads)
                thread.Start();
            foreach (Thread thread in threads)
                thread.Join();
        }

        Measure(next);
        return Volatile.Read(ref _stop) == 0 && !_visited.Full;
    }

    private bool MustStop(Frontier next, CancellationToken cancel)
    {
        StopReason reason = cancel.IsCancellationRequested ? StopReason.Cancelled
            : _clock.Elapsed > limits.Time ? StopReason.Time
            : _visited.Count >= limits.States ? StopReason.States
            : _visited.Full || Measure(next) > limits.MemoryBytes ? StopReason.Memory
            : StopReason.None;
        if (reason == StopReason.None)
            return false;
        Interlocked.CompareExchange(ref _stop, (int)reason, 0);
        return true;
    }

    private long Measure(Frontier next)
    {
        long bytes = _visited.Bytes + _trail.Bytes + _levelBytes + next.Bytes;
        if (bytes > Interlocked.Read(ref _mostBytes))
            Interlocked.Exchange(ref _mostBytes, bytes);
        return bytes;
    }

    private Block NewBlock()
    {
        lock (_spare)
            return _spare.Count > 0 ? _spare.Pop() : new Block();
    }

    private SearchOutcome Outcome(Explorer[] explorers, int depth)
    {
        Breach? breach = explorers.Select(explorer => explorer.Found).OfType<Breach>().MinBy(found => found.Rule);
        int rules = explorers[0].Occasions.Count;
        StopReason stop = breach is not null ? StopReason.None
            : _visited.Full ? StopReason.Memory : (StopReason)Volatile.Read(ref _stop);
        return new SearchOutcome(
            stop,
            depth,
            _visited.Count,
            Transitions(explorers),
            _clock.Elapsed,
            Interlocked.Read(ref _mostBytes),
            [.. Enumerable.Range(0, rules).Select(rule => explorers.Sum(explorer => explorer.Occasions[rule]))],
            breach,
            breach is null ? [] : [.. _trail.To(breach.Node), .. breach.Node == Trail.None ? [] : new[] { breach.Move }]);
    }

    private static long Transitions(Explorer[] explorers) => explorers.Sum(explorer => explorer.Transitions);
}

/// <summary>What a search may take.</summary>
/// <param name="States">States visited.</param>
/// <param name="Time">Time.</param>
/// <param name="MemoryBytes">Memory for states, bytes.</param>
/// <param name="Workers">Threads.</param>
/// <param name="Depth">Scans: a breach that takes more is not looked for.</param>
internal sealed record SearchLimits(long States, TimeSpan Time, long MemoryBytes, int Workers, int Depth = int.MaxValue);

/// <summary>How a search ended.</summary>
/// <param name="Stopped">Which limit ended it before its end.</param>
/// <param name="Depth">Every run of so many scans after the first was judged; with a breach, the scans that it takes.</param>
/// <param name="States">States visited.</param>
/// <param name="Transitions">Moves made.</param>
/// <param name="Elapsed">Time taken.</param>
/// <param name="PeakBytes">The most memory that states took.</param>
/// <param name="Occasions">How often each rule was given something to judge, in the rule book's order.</param>
/// <param name="Breach">The breach; null when there was none.</param>
/// <param name="Moves">The moves that lead to it, one a scan.</param>
internal sealed record SearchOutcome(
    StopReason Stopped,
    int Depth,
    long States,
    long Transitions,
    TimeSpan Elapsed,
    long PeakBytes,
    IReadOnlyList<long> Occasions,
    Breach? Breach,
    IReadOnlyList<Move> Moves);
