namespace ZoneControl.Cli;

/// <summary>Reads things that may keep one waiting for ever, such as a pipe that nobody writes to.</summary>
internal static class Patience
{
    private static readonly TimeSpan _quiet = TimeSpan.FromSeconds(2);

    /// <summary>Reads on another thread, so that it can be stopped, and says after a while what it waits for.</summary>
    /// <exception cref="OperationCanceledException">It was stopped; the read goes on by itself until the program ends.</exception>
    public static async Task<T> Read<T>(Func<T> read, string path, Streams streams, CancellationToken cancel)
    {
        Task<T> reading = Task.Factory.StartNew(read, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        Task first = await Task.WhenAny(reading, Task.Delay(_quiet, cancel));
        cancel.ThrowIfCancellationRequested();
        if (first != reading && IsEndless(path))
            streams.Error.WriteLine($"{path}: waiting for it; a pipe gives nothing until somebody writes to it. Ctrl-C stops.");
        return await reading.WaitAsync(cancel);
    }

    // Pipes and devices have no length; on a busy machine plain files may take a while as well.
    private static bool IsEndless(string path)
    {
        try
        {
            return new FileInfo(path) is { Exists: true, Length: 0 };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return false; // reading it says more
        }
    }
}
