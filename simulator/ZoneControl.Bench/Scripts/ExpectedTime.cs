namespace ZoneControl.Bench.Scripts;

/// <summary>At which times something is expected.</summary>
public abstract record ExpectedTime
{
    /// <summary>The times in words; "" for the whole run.</summary>
    public abstract string InWords();
}

/// <summary>At one moment.</summary>
/// <param name="Ms">ms from the start.</param>
public sealed record AtMoment(long Ms) : ExpectedTime
{
    /// <inheritdoc/>
    public override string InWords() => $"at {Durations.InWords(Ms)}";
}

/// <summary>At every moment of a stretch, its end not included.</summary>
/// <param name="FromMs">First moment, ms from the start.</param>
/// <param name="UntilMs">End, ms from the start.</param>
public sealed record Throughout(long FromMs, long UntilMs) : ExpectedTime
{
    /// <inheritdoc/>
    public override string InWords() => $"from {Durations.InWords(FromMs)} until {Durations.InWords(UntilMs)}";
}

/// <summary>At some moment of a window, both ends included.</summary>
/// <param name="AfterMs">Start of the window, ms from the start.</param>
/// <param name="WithinMs">Its length, ms.</param>
public sealed record SomeTime(long AfterMs, long WithinMs) : ExpectedTime
{
    /// <inheritdoc/>
    public override string InWords() => AfterMs == 0
        ? $"within {Durations.InWords(WithinMs)}"
        : $"within {Durations.InWords(WithinMs)} after {Durations.InWords(AfterMs)}";
}

/// <summary>Over the whole run.</summary>
public sealed record WholeRun : ExpectedTime
{
    /// <inheritdoc/>
    public override string InWords() => "";
}
