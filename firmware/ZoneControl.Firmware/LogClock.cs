using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>
/// Tells, for the log, how a scan's clock failed. The controller publishes only that it did (TIME-FAULT); whoever reads the
/// log later needs the time of the scan before, since nothing after it can be believed.
/// </summary>
public sealed class LogClock
{
    private readonly ControllerSettings _settings;
    private long _nextMs;
    private bool _pump;
    private int _still;

    /// <summary>For a controller with these settings.</summary>
    public LogClock(ControllerSettings settings) => _settings = settings;

    /// <summary>The time of the scan looked at last, ms; before the first 0.</summary>
    public long LastMs { get; private set; }

    /// <summary>
    /// How the clock of this scan failed against the scan looked at last: <see cref="LogEvent.ClockBack"/>,
    /// <see cref="LogEvent.ClockStands"/>, <see cref="LogEvent.ClockLate"/>, or -1 for a clock that can be trusted. Call it for
    /// every scan, and then <see cref="Take"/>.
    /// </summary>
    public int FaultOf(OutputImage image)
    {
        if (image.PowerUp)
            return -1;
        if (image.ScanMs < LastMs)
            return LogEvent.ClockBack;
        if (image.ScanMs == LastMs && _pump && _still + 1 >= _settings.StallScans)
            return LogEvent.ClockStands;
        return image.ScanMs > _nextMs && image.ScanMs - _nextMs > _settings.StallLimitMs ? LogEvent.ClockLate : -1;
    }

    /// <summary>Takes a scan as the one that the next is looked at against.</summary>
    public void Take(OutputImage image, bool fault)
    {
        _still = image.ScanMs == LastMs && _pump && !fault && !image.PowerUp ? _still + 1 : 0;
        LastMs = image.ScanMs;
        _nextMs = image.NextDeadlineMs;
        _pump = image.Pump;
    }
}
