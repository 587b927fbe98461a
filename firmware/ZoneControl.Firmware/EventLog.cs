using System.Threading;

namespace ZoneControl.Firmware;

/// <summary>
/// Records on their way from the scan to the console: a ring of ints that never waits. When it is full, what comes is
/// dropped and counted. One thread adds, one takes.
/// </summary>
public sealed class EventLog
{
    /// <summary>How many records it holds.</summary>
    public const int Size = 256;

    private readonly int[] _whats = new int[Size];
    private readonly long[] _times = new long[Size];
    private readonly int[] _values = new int[Size];
    private readonly int[] _seconds = new int[Size];
    private int _head; // next place to fill; only the adder moves it
    private int _tail; // next place to empty; only the taker moves it
    private int _dropped; // since power-up

    /// <summary>How many were dropped since power-up.</summary>
    public int Dropped => _dropped;

    /// <summary>The record that <see cref="Take"/> took: what, an event of <see cref="LogEvent"/>.</summary>
    public int What { get; private set; }

    /// <summary>Its time, ms.</summary>
    public long Ms { get; private set; }

    /// <summary>Its value.</summary>
    public int Value { get; private set; }

    /// <summary>Its second value.</summary>
    public int Second { get; private set; }

    /// <summary>Adds a record, or counts it as dropped.</summary>
    public void Add(long ms, int what, int value, int second)
    {
        int next = (_head + 1) % Size;
        if (next == _tail)
        {
            _dropped++;
            return;
        }

        _whats[_head] = what;
        _times[_head] = ms;
        _values[_head] = value;
        _seconds[_head] = second;
        Interlocked.Exchange(ref _head, next); // the record is whole before the taker can see it
    }

    /// <summary>Takes the oldest record; false when there is none.</summary>
    public bool Take()
    {
        if (_tail == _head)
            return false;
        What = _whats[_tail];
        Ms = _times[_tail];
        Value = _values[_tail];
        Second = _seconds[_tail];
        Interlocked.Exchange(ref _tail, (_tail + 1) % Size);
        return true;
    }
}
