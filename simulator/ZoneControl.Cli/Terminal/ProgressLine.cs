namespace ZoneControl.Cli.Terminal;

/// <summary>
/// One line on a terminal that is written over as work goes on, on whatever threads. Where standard error is no terminal
/// nothing is shown. The first line comes after a second, so that short work stays quiet.
/// </summary>
/// <param name="streams">Where it is shown.</param>
/// <param name="time">What tells the time; the machine's own when null.</param>
internal sealed class ProgressLine(Streams streams, TimeProvider? time = null) : IDisposable
{
    private static readonly TimeSpan _first = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan _every = TimeSpan.FromMilliseconds(200);

    private readonly Lock _lock = new();
    private readonly TimeProvider _time = time ?? TimeProvider.System;
    private readonly long _began = (time ?? TimeProvider.System).GetTimestamp();
    private TimeSpan _due = _first;
    private bool _shown;

    /// <summary>Shows how far it has come, now and then.</summary>
    public void Show(Func<string> words)
    {
        if (!streams.ErrorIsTerminal)
            return;
        lock (_lock)
        {
            TimeSpan now = _time.GetElapsedTime(_began);
            if (now < _due)
                return;
            _due = now + _every;
            string text = words();
            streams.Error.Write('\r' + (text.Length < Screen.Width ? text : text[..(Screen.Width - 1)]).PadRight(Screen.Width - 1));
            _shown = true;
        }
    }

    /// <summary>Work that tells its share, 0 to 1, as a percentage of all <paramref name="pieces"/> of it.</summary>
    public IProgress<double> Of(string what, int piece = 0, int pieces = 1) =>
        new Told<double>(share => Show(() => $"{what}: {100 * (piece + share) / pieces:0} %  (Ctrl-C stops it)"));

    /// <summary>Takes the line away.</summary>
    public void Clear()
    {
        lock (_lock)
        {
            if (_shown)
                streams.Error.Write('\r' + new string(' ', Screen.Width - 1) + '\r');
            _shown = false;
        }
    }

    public void Dispose() => Clear();
}

/// <summary>Tells progress on the very thread that makes it.</summary>
internal sealed class Told<T>(Action<T> tell) : IProgress<T>
{
    public void Report(T value) => tell(value);
}
