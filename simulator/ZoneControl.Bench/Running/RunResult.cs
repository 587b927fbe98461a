namespace ZoneControl.Bench.Running;

/// <summary>What a run adds up to.</summary>
public sealed record RunTotals
{
    /// <summary>Seconds the pump was energised with less than its minimum flow.</summary>
    public required double DeadheadS { get; init; }

    /// <summary>Seconds of that with every valve shut, so that nothing flowed at all.</summary>
    public required double ShutS { get; init; }

    /// <summary>Separate stretches of deadhead.</summary>
    public required int DeadheadEvents { get; init; }

    /// <summary>Hottest water in the pump's casing, °C.</summary>
    public required double HottestTrappedC { get; init; }

    /// <summary>Pump starts.</summary>
    public required int PumpStarts { get; init; }

    /// <summary>Seconds the pump was on.</summary>
    public required double PumpRunS { get; init; }

    /// <summary>Electrical energy of the pump, Wh.</summary>
    public required double PumpEnergyWh { get; init; }

    /// <summary>From the first call to the first warm water at a manifold that feeds an open zone, s; null if it never came.</summary>
    public required double? FirstWarmFlowS { get; init; }

    /// <summary>Valve strokes: times any zone's valves were energised.</summary>
    public required int ValveStrokes { get; init; }
}

/// <summary>One expectation of the script and how it came out.</summary>
/// <param name="Text">The expectation in words.</param>
/// <param name="Line">Line in the script file, from 1.</param>
/// <param name="Met">Whether it came true.</param>
/// <param name="Ms">The moment that decided: when it failed, or when it was met; null when neither has a moment.</param>
/// <param name="Why">What was seen instead; empty when met.</param>
public sealed record ExpectationVerdict(string Text, int Line, bool Met, long? Ms, string Why);

/// <summary>A stretch of time with one hold reason.</summary>
/// <param name="FromMs">First moment, ms.</param>
/// <param name="ToMs">End, ms.</param>
/// <param name="Reason">The published reason.</param>
public sealed record HoldSpan(long FromMs, long ToMs, Logic.HoldReason Reason);
