namespace ZoneControl.Web.Serving;

/// <summary>
/// Lets one long piece of work run at a time, whoever asked for it, so that a class that proves all at once does not
/// stop every bench.
/// </summary>
public sealed class OneAtATime : IDisposable
{
    private readonly SemaphoreSlim _place = new(1, 1);

    /// <summary>Runs work on another thread once it is its turn.</summary>
    /// <exception cref="OperationCanceledException">It was stopped, waiting or working.</exception>
    public async Task<T> RunAsync<T>(Func<T> work, Action started, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(started);
        await _place.WaitAsync(cancel);
        try
        {
            started();
            return await Task.Run(work, cancel);
        }
        finally
        {
            _place.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _place.Dispose();
}

/// <summary>Reports progress no more often than a person can read it.</summary>
/// <param name="tell">Told on whatever thread reports.</param>
internal sealed class CalmProgress<T>(Action<T> tell) : IProgress<T>
{
    private long _dueMs;

    /// <inheritdoc/>
    public void Report(T value)
    {
        long now = Environment.TickCount64;
        if (now < Interlocked.Read(ref _dueMs))
            return;
        Interlocked.Exchange(ref _dueMs, now + 250);
        tell(value);
    }
}
