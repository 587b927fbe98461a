using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Captures;

/// <summary>Unit of the time column of a table.</summary>
public enum TimeUnit
{
    /// <summary>Seconds.</summary>
    Seconds,

    /// <summary>Milliseconds.</summary>
    Milliseconds,

    /// <summary>Microseconds.</summary>
    Microseconds,

    /// <summary>Nanoseconds.</summary>
    Nanoseconds,
}

/// <summary>What a signal of a capture is, as a channel map says.</summary>
/// <param name="Signal">The signal's name in the capture.</param>
/// <param name="Channel">The channel that it carries.</param>
/// <param name="ActiveLow">0 means on.</param>
/// <param name="GlitchMs">Changes that last less than this, ms, are left out; 0 to 60,000.</param>
/// <param name="Line">Line of the map, from 1.</param>
public sealed record MappedSignal(string Signal, Channel Channel, bool ActiveLow, int GlitchMs, int Line);

/// <summary>What the signals of a capture are, and what else has to be known to judge it.</summary>
public sealed record ChannelMap
{
    /// <summary>No map: signals carry the channels that they are named after.</summary>
    public static ChannelMap None { get; } = new();

    /// <summary>Title for people; possibly "".</summary>
    public string Title { get; init; } = "";

    /// <summary>A few sentences; possibly "".</summary>
    public string Text { get; init; } = "";

    /// <summary>The file's name as the person gave it; "" without a file.</summary>
    public string FileName { get; init; } = "";

    /// <summary>The signals.</summary>
    public IReadOnlyList<MappedSignal> Signals { get; init; } = [];

    /// <summary>Channels that are never on, because the captured thing has no such output.</summary>
    public IReadOnlyList<(ChannelKind Kind, int Mask)> Never { get; init; } = [];

    /// <summary>Name of the time column of a table; null for the first.</summary>
    public string? TimeColumn { get; init; }

    /// <summary>Unit of the time column; null for what its name says, else seconds.</summary>
    public TimeUnit? TimeUnit { get; init; }

    /// <summary>Conditions for the estimate.</summary>
    public ScriptConditions Conditions { get; init; } = new(30, 20);
}
