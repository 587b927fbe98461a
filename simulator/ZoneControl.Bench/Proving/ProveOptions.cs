using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>What a proof is asked to do, and what it may take.</summary>
public sealed record ProveOptions
{
    /// <summary>The most states to visit.</summary>
    public long MaxStates { get; init; } = long.MaxValue;

    /// <summary>The longest that the search may take.</summary>
    public TimeSpan MaxTime { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>The most memory that states may take, bytes.</summary>
    public long MaxMemoryBytes { get; init; } = 4L << 30;

    /// <summary>Threads; 0 for one a core.</summary>
    public int Workers { get; init; }

    /// <summary>The largest scaled time, scans, where the order of times can be kept with it.</summary>
    public int MostScans { get; init; } = 1;

    /// <summary>Debounce of every contact inside the search, scans; 0 leaves it to the proof of the filter alone.</summary>
    public int FilterScans { get; init; }

    /// <summary>A protection that is taken away; <see cref="Protection.None"/> for the whole controller.</summary>
    public Protection Without { get; init; }

    /// <summary>Rules to judge; null for all.</summary>
    public IReadOnlySet<string>? Rules { get; init; }

    /// <summary>Kinds of moves that the world does not make; none, to try everything that is fitted.</summary>
    public IReadOnlySet<MoveKind> Except { get; init; } = new HashSet<MoveKind>();

    /// <summary>Builds what is tried from a house's settings; null for the compiled controller of shared-logic.</summary>
    public Func<ControllerSettings, IProvable>? Build { get; init; }
}

/// <summary>A protection that can be taken away, to see the shortest way to harm.</summary>
public enum Protection
{
    /// <summary>None: the controller is whole.</summary>
    None,

    /// <summary>Valves count as open as soon as they are energised; end switches are not looked at.</summary>
    Proof,

    /// <summary>A zone that calls opens alone, and the pump runs as soon as any capacity is proven.</summary>
    Companion,

    /// <summary>A zone is released the moment its call ends, whoever still needs it open.</summary>
    Handover,

    /// <summary>The pump does not wait for its start delay.</summary>
    Delay,
}
