using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>What the time of a scan says of its clock (TIME-FAULT).</summary>
public enum ClockSign
{
    /// <summary>Nothing against it that these frames could show; scans may have been left out.</summary>
    Unknown = 0,

    /// <summary>It can be trusted: the scans before it are all there.</summary>
    Trusted,

    /// <summary>The scan is earlier than the one before.</summary>
    RunsBack,

    /// <summary>So many scans at one moment with the pump on.</summary>
    StandsStill,

    /// <summary>The scan is too much later than the announced deadline.</summary>
    ComesLate,
}

/// <summary>
/// Reads the scan clock off the frames, one by one. A jump back and a clock that stands still show in any trace; that a scan
/// came late shows only where no scan was left out, since each announces a deadline of its own.
/// </summary>
internal sealed class ScanClock(ControllerSettings house, bool everyScan)
{
    private Frame _last = new() { Ms = 0, Unpowered = true };
    private int _still;

    /// <summary>What the next frame's time says.</summary>
    public ClockSign Sign(in Frame frame)
    {
        ClockSign sign = frame.PowerUp || frame.Unpowered || _last.Unpowered ? ClockSign.Unknown : OfScan(frame);
        if (sign is not (ClockSign.Unknown or ClockSign.Trusted))
            _still = 0;
        _last = frame;
        return sign;
    }

    private ClockSign OfScan(in Frame frame)
    {
        _still = frame.Ms == _last.Ms && _last.Pump ? _still + 1 : 0;
        if (frame.Ms < _last.Ms)
            return ClockSign.RunsBack;
        if (_still >= house.StallScans)
            return ClockSign.StandsStill;
        // The scan before one that a bench makes jump ahead is always there.
        if (!everyScan && frame.ClockAheadMs <= _last.ClockAheadMs)
            return ClockSign.Unknown;
        bool late = _last.NextDeadlineMs is > 0 and not ZoneController.Never
            && frame.Ms - _last.NextDeadlineMs > house.StallLimitMs;
        return late ? ClockSign.ComesLate : ClockSign.Trusted;
    }
}
