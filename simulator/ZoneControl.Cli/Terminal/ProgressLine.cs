using System.Diagnostics;

namespace ZoneControl.Cli.Terminal;

/// <summary>
/// One line on a terminal that is written over as work goes on. Where standard error is no terminal nothing is shown. The first
/// line comes after a second, so that short work stays quiet.
/// </summary>
internal sealed class ProgressLine(Streams streams) : IDisposable
{
    private const int FirstMs = 1000;
    private const int EveryMs = 200;

    private readonly Stopwatch _since = Stopwatch.StartNew();
    private long _dueMs = FirstMs;
    private bool _shown;

    /// <summary>Shows how far it has come, now and then.</summary>
    public void Show(Func<string> words)
    {
        if (!streams.ErrorIsTerminal || _since.ElapsedMilliseconds < _dueMs)
            return;
        _dueMs = _since.ElapsedMilliseconds + EveryMs;
        string text = words();
        streams.Error.Write('\r' + (text.Length < Screen.Width ? text : text[..(Screen.Width - 1)]).PadRight(Screen.Width - 1));
        _shown = true;
    }

    /// <summary>Takes the line away.</summary>
    public void Clear()
    {
        if (_shown)
            streams.Error.Write('\r' + new string(' ', Screen.Width - 1) + '\r');
        _shown = false;
    }

    public void Dispose() => Clear();
}

/// <summary>Tells progress on the very thread that makes it.</summary>
internal sealed class Told<T>(Action<T> tell) : IProgress<T>
{
    public void Report(T value) => tell(value);
}
