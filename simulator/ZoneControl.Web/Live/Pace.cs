using System.Diagnostics;

namespace ZoneControl.Web.Live;

/// <summary>Turns real time into bench time: how far to go at each tick, and how fast it really went.</summary>
public sealed class Pace
{
    /// <summary>As fast as it goes.</summary>
    public const int Most = 0;

    /// <summary>The share of a tick that may be spent on moving on; the rest is for showing it and for others.</summary>
    private const double Budget = 0.35;

    private const double TickMs = 250;

    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private double _lastMs;
    private double _owedMs;

    /// <summary>The speeds to choose from, times real time; <see cref="Most"/> for as fast as it goes.</summary>
    public static IReadOnlyList<int> Speeds { get; } = [1, 5, 10, 60, 300, Most];

    /// <summary>Real time between ticks.</summary>
    public static TimeSpan Tick { get; } = TimeSpan.FromMilliseconds(TickMs);

    /// <summary>Wanted speed, times real time; <see cref="Most"/> for as fast as it goes.</summary>
    public int Speed { get; set; } = 10;

    /// <summary>Speed reached of late, times real time; 0 while nothing moves.</summary>
    public double Reached { get; private set; }

    /// <summary>Forgets the time that passed while the bench stood still.</summary>
    public void Begin()
    {
        _lastMs = _watch.Elapsed.TotalMilliseconds;
        _owedMs = 0;
        Reached = 0;
    }

    /// <summary>Moves a bench on by the real time since the last tick.</summary>
    /// <param name="bench">The bench.</param>
    /// <param name="limitMs">Where it halts, ms.</param>
    public void Advance(LiveBench bench, long limitMs)
    {
        ArgumentNullException.ThrowIfNull(bench);
        double now = _watch.Elapsed.TotalMilliseconds;
        double passedMs = Math.Max(1, now - _lastMs);
        _lastMs = now;
        long before = bench.NowMs;
        long period = bench.Guarded.PeriodMs;

        // What a busy machine could not do is owed, but never more than two ticks of it.
        _owedMs = Math.Min(_owedMs + passedMs * Speed, TickMs * 2 * Math.Max(1, Speed));
        long target = Speed == Most ? limitMs : before + (long)_owedMs / period * period;
        bench.AdvanceTo(Math.Min(target, limitMs), () => _watch.Elapsed.TotalMilliseconds - now > TickMs * Budget);
        long moved = bench.NowMs - before;
        _owedMs = Math.Max(0, _owedMs - moved);
        double reached = moved / passedMs;
        Reached = Reached <= 0 ? reached : 0.8 * Reached + 0.2 * reached;
    }
}
