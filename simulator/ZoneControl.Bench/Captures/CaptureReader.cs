namespace ZoneControl.Bench.Captures;

/// <summary>How a capture is written.</summary>
public enum CaptureFormat
{
    /// <summary>Value change dump, IEEE 1364.</summary>
    Vcd,

    /// <summary>Comma-separated values: time and channels.</summary>
    Csv,

    /// <summary>The log of ZoneControl's own board.</summary>
    Log,
}

/// <summary>A signal as a capture names it.</summary>
/// <param name="Name">Its name, scopes joined by points.</param>
/// <param name="Width">How many bits it has; 1 for a column of a table.</param>
/// <param name="LowBit">Number of its least bit, as its range says.</param>
internal sealed record CaptureSignal(string Name, int Width, int LowBit = 0);

/// <summary>Reads a capture that has signals: first what they are, then what they did.</summary>
internal interface ICaptureReader
{
    /// <summary>Reads up to the first moment and gives the signals.</summary>
    /// <exception cref="CaptureMistake">It cannot be read.</exception>
    IReadOnlyList<CaptureSignal> ReadHead();

    /// <summary>Reads to the end and feeds what the joined signals did.</summary>
    /// <param name="bindings">The joined signals.</param>
    /// <param name="feed">Where changes go.</param>
    /// <param name="tick">Called now and then; false ends the reading.</param>
    /// <exception cref="CaptureMistake">It cannot be read on.</exception>
    void Play(IReadOnlyList<Binding> bindings, CaptureFeed feed, Func<bool> tick);

    /// <summary>The line that is being read, from 1.</summary>
    long Line { get; }
}
