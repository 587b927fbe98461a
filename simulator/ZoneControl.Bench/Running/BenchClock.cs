namespace ZoneControl.Bench.Running;

/// <summary>
/// The controller's clock as the bench lets it see it: that of the plant, unless it is made to jump or to stand still.
/// </summary>
public sealed class BenchClock
{
    private long _aheadMs;
    private long _stoppedAtMs;
    private long _stopsUntilMs = -1;
    private long _stopMs;

    /// <summary>It stands still.</summary>
    public bool Stands => _stopsUntilMs >= 0;

    /// <summary>Jumps ahead, or back for a negative time, ms.</summary>
    public void Jump(long ms)
    {
        _aheadMs += ms;
        _stoppedAtMs += ms;
    }

    /// <summary>Stands still from now on for so long, ms; a stop under way ends here.</summary>
    public void Stop(long nowMs, long forMs)
    {
        if (Stands)
            _aheadMs = _stoppedAtMs - nowMs;
        _stoppedAtMs = nowMs + _aheadMs;
        _stopsUntilMs = nowMs + forMs;
        _stopMs = forMs;
    }

    /// <summary>What it shows, ms, when the plant's time is <paramref name="nowMs"/>.</summary>
    public long Read(long nowMs)
    {
        if (Stands && nowMs < _stopsUntilMs)
            return _stoppedAtMs;
        if (Stands)
        {
            _stopsUntilMs = -1;
            _aheadMs -= _stopMs;
        }

        return nowMs + _aheadMs;
    }
}
