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

    /// <summary>It has not moved since the scan before, and that is no fault yet.</summary>
    Stands,

    /// <summary>The scan is earlier than the one before.</summary>
    RunsBack,

    /// <summary>So many scans at one moment with the pump on.</summary>
    StandsStill,

    /// <summary>The scan is too much later than the announced deadline.</summary>
    ComesLate,
}

/// <summary>
/// Reads the scan clock off the frames, one by one, and says how much of a frame's time counts. A jump back and a clock that
/// stands still show in any trace. That a scan came late shows where the clock moved against the run's time, since the scan
/// before that has its frame, or where no scan was left out: each announces a deadline of its own.
/// </summary>
internal sealed class ScanClock(ControllerSettings house, bool everyScan)
{
    private Frame _last = new() { Ms = 0, Unpowered = true };
    private int _still;

    /// <summary>What the time of the frame read last says.</summary>
    public ClockSign Sign { get; private set; }

    /// <summary>
    /// How much time passed for the controller before the frame read last, ms: what its clock says, and at a fault, where
    /// that says nothing, what is known of the time up to the scan before.
    /// </summary>
    public long PassedMs { get; private set; }

    /// <summary>Reads the next frame.</summary>
    public void Read(in Frame frame)
    {
        bool fresh = frame.PowerUp || frame.Unpowered || _last.Unpowered;
        bool moved = !fresh && frame.ClockAheadMs != _last.ClockAheadMs;
        long run = frame.Ms - _last.Ms;
        Sign = fresh ? ClockSign.Unknown : OfScan(frame, moved);
        PassedMs = Sign switch
        {
            ClockSign.RunsBack => Math.Max(0, run - house.ScanPeriodMs),
            ClockSign.ComesLate => moved ? Math.Max(0, run - house.ScanPeriodMs) : 0,
            _ => moved ? ClockMs(frame) - ClockMs(_last) : run,
        };
        if (Sign is ClockSign.RunsBack or ClockSign.StandsStill or ClockSign.ComesLate)
            _still = 0;
        _last = frame;
    }

    private static long ClockMs(in Frame frame) => frame.Ms + frame.ClockAheadMs;

    private ClockSign OfScan(in Frame frame, bool moved)
    {
        _still = ClockMs(frame) == ClockMs(_last) && _last.Pump ? _still + 1 : 0;
        if (ClockMs(frame) < ClockMs(_last))
            return ClockSign.RunsBack;
        if (_still >= house.StallScans)
            return ClockSign.StandsStill;
        if (!everyScan && !moved)
            return ClockSign.Unknown;
        bool late = _last.NextDeadlineMs is > 0 and not ZoneController.Never
            && ClockMs(frame) - (_last.NextDeadlineMs + _last.ClockAheadMs) > house.StallLimitMs;
        if (late)
            return ClockSign.ComesLate;
        return moved && ClockMs(frame) == ClockMs(_last) ? ClockSign.Stands : ClockSign.Trusted;
    }
}
