namespace ZoneControl.Bench.Seasons;

/// <summary>One zone's stroke with the pump off.</summary>
public sealed record Stroke
{
    /// <summary>Zone number, from 0.</summary>
    public required int Zone { get; init; }

    /// <summary>Why it was not tried; "" when it was.</summary>
    public string NotTried { get; init; } = "";

    /// <summary>The pump ran, or water moved, unasked, so it was broken off and says nothing of the valve.</summary>
    public bool BrokenOff { get; init; }

    /// <summary>When its own end switch made after its valve was energised, ms; null when it did not.</summary>
    public long? SwitchMadeMs { get; init; }

    /// <summary>When its own end switch broke after the valve was released, ms; null when it did not.</summary>
    public long? SwitchBrokeMs { get; init; }

    /// <summary>Other zones' end switches that made meanwhile, one bit each.</summary>
    public int OtherSwitches { get; init; }

    /// <summary>When the first of them did, after this zone's valve was energised, ms; null when none did.</summary>
    public long? OtherSwitchMs { get; init; }

    /// <summary>How long it was watched after it was energised, ms; 0 when it was not tried.</summary>
    public long WatchedMs { get; init; }

    /// <summary>Its switch was made before anything was energised.</summary>
    public bool SwitchMadeAtRest { get; init; }

    /// <summary>The flow switch saw flow although the pump was not told to run.</summary>
    public bool FlowWithPumpOff { get; init; }

    /// <summary>What the person at the manifold said.</summary>
    public StrokeSighting Seen { get; init; } = StrokeSighting.None;
}

/// <summary>One run of the pump with a set of zones open.</summary>
public sealed record FlowTrial
{
    /// <summary>The zones, one bit each.</summary>
    public required int Zones { get; init; }

    /// <summary>Why the pump did not get to run; "" when it was told to.</summary>
    public string NotRun { get; init; } = "";

    /// <summary>Whether the flow switch saw flow; null without one.</summary>
    public bool? FlowSwitch { get; init; }

    /// <summary>When it did, after the pump was told to run, ms; null when it did not.</summary>
    public long? FlowAfterMs { get; init; }

    /// <summary>What the person at the manifold said.</summary>
    public FlowSighting Seen { get; init; } = FlowSighting.None;
}

/// <summary>Everything a commissioning run saw at the controller's terminals and was told.</summary>
/// <param name="Strokes">Every zone's stroke, in the file's order.</param>
/// <param name="Trials">Runs of the pump, between them with every zone that could be opened.</param>
/// <param name="PumpHeardAtRest">Whether the pump was heard before anything was told to run; null when nobody listened.</param>
/// <param name="FlowAtRest">Whether the flow switch saw flow before anything was told to open.</param>
/// <param name="HasFlowSwitch">Whether a flow switch is fitted.</param>
/// <param name="Minutes">How long it took, min.</param>
public sealed record CommissioningRun(
    IReadOnlyList<Stroke> Strokes, IReadOnlyList<FlowTrial> Trials, bool? PumpHeardAtRest, bool FlowAtRest, bool HasFlowSwitch,
    double Minutes)
{
    /// <summary>Why nothing more was tried; "" for a whole run.</summary>
    public string BrokenOff { get; init; } = "";
}
