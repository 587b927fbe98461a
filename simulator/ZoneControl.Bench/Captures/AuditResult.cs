using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Captures;

/// <summary>A stretch of a capture of which nothing is known.</summary>
/// <param name="FromMs">First moment, ms from the capture's first.</param>
/// <param name="ToMs">End, ms.</param>
/// <param name="Why">In words.</param>
public sealed record CaptureGap(long FromMs, long ToMs, string Why);

/// <summary>Something that a capture tells beside its channels.</summary>
/// <param name="Ms">When, ms from the capture's first moment.</param>
/// <param name="Text">What.</param>
/// <param name="IsAlarm">Whether somebody should look at it.</param>
public sealed record CaptureNote(long Ms, string Text, bool IsAlarm);

/// <summary>What came of a capture. Times are ms from its first moment.</summary>
public sealed record AuditResult
{
    /// <summary>The house that it was judged by.</summary>
    public required House House { get; init; }

    /// <summary>The map that named its signals.</summary>
    public required ChannelMap Map { get; init; }

    /// <summary>The capture's name as the person gave it.</summary>
    public required string Capture { get; init; }

    /// <summary>How it is written.</summary>
    public required CaptureFormat Format { get; init; }

    /// <summary>Its own time of its first moment, ms.</summary>
    public long BeganMs { get; init; }

    /// <summary>Its last moment.</summary>
    public long EndMs { get; init; }

    /// <summary>Bytes read.</summary>
    public long Bytes { get; init; }

    /// <summary>Changes of channels read.</summary>
    public long Edges { get; init; }

    /// <summary>Glitches that were left out.</summary>
    public long Glitches { get; init; }

    /// <summary>Reading was stopped by hand before the end.</summary>
    public bool Stopped { get; init; }

    /// <summary>Whether it begins with a power-up, so that nothing before it matters.</summary>
    public bool BeginsWithPowerUp { get; init; }

    /// <summary>Channels that were judged, each with the signal that carries it.</summary>
    public IReadOnlyList<(string Channel, string Signal)> Channels { get; init; } = [];

    /// <summary>Signals that carry no channel.</summary>
    public IReadOnlyList<string> Unused { get; init; } = [];

    /// <summary>Stretches that could not be judged, the first few.</summary>
    public IReadOnlyList<CaptureGap> Gaps { get; init; } = [];

    /// <summary>How many there were.</summary>
    public int GapCount { get; init; }

    /// <summary>A verdict a rule; those that could not be judged say why.</summary>
    public required IReadOnlyList<RuleVerdict> Rules { get; init; }

    /// <summary>Whether contacts were published as their wires show.</summary>
    public required RuleVerdict Wires { get; init; }

    /// <summary>What the captured outputs would do to the described house: an estimate.</summary>
    public required RunTotals Estimate { get; init; }

    /// <summary>When estimating ended because of too many changes; null when it did not.</summary>
    public long? EstimateGaveUpMs { get; init; }

    /// <summary>For pictures: what was shown, and the estimated water.</summary>
    public required Trace Picture { get; init; }

    /// <summary>The picture ends before the capture does, because there were too many changes.</summary>
    public bool PictureIsCut => Picture.EndMs < EndMs;

    /// <summary>When the pump was held and why, where that is published.</summary>
    public IReadOnlyList<HoldSpan> Holds { get; init; } = [];

    /// <summary>What else the capture tells.</summary>
    public IReadOnlyList<CaptureNote> Notes { get; init; } = [];

    /// <summary>Anything was judged at all.</summary>
    public bool AnythingJudged => Rules.Any(rule => rule.Judgement is Judgement.Kept or Judgement.Broken);

    /// <summary>The verdict: something was judged and nothing was found broken.</summary>
    public bool Passed => AnythingJudged && Rules.All(rule => rule.Judgement != Judgement.Broken)
        && Wires.Judgement != Judgement.Broken;
}
