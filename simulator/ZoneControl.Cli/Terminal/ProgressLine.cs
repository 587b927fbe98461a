namespace ZoneControl.Cli.Terminal;

/// <summary>
/// Progress of long work on one line of the error stream, where a person sees it; nothing where it would only fill a file.
/// </summary>
internal sealed class ProgressLine(Streams streams, string what) : IProgress<double>, IDisposable
{
    private readonly Lock _lock = new();
    private int _shown = -1;

    /// <inheritdoc/>
    public void Report(double value)
    {
        if (!streams.ErrorIsTerminal)
            return;
        int percent = (int)(value * 100);
        lock (_lock)
        {
            if (percent <= _shown)
                return;
            _shown = percent;
            streams.Error.Write($"\r{what}: {percent,3} %  (Ctrl-C stops it)");
        }
    }

    /// <summary>Takes the line away again.</summary>
    public void Dispose()
    {
        if (_shown >= 0)
            streams.Error.Write("\r" + new string(' ', what.Length + 28) + "\r");
    }
}
