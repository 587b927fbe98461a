namespace ZoneControl.Bench.Proving;

/// <summary>What ended a search before every state was visited.</summary>
public enum StopReason
{
    /// <summary>Nothing: it came to its end.</summary>
    None,

    /// <summary>The most states were visited.</summary>
    States,

    /// <summary>The time was up.</summary>
    Time,

    /// <summary>The memory was used up.</summary>
    Memory,

    /// <summary>Somebody stopped it.</summary>
    Cancelled,
}

/// <summary>How far a search has come.</summary>
/// <param name="Depth">Every run of so many scans has been judged.</param>
/// <param name="States">States visited.</param>
/// <param name="Transitions">Moves made.</param>
/// <param name="Waiting">States that are yet to be gone on from.</param>
/// <param name="Elapsed">Time taken.</param>
public sealed record SearchProgress(int Depth, long States, long Transitions, long Waiting, TimeSpan Elapsed);
