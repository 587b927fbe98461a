using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>Finds what a scan changed of what is shown, and records it: one record for each mask that differs.</summary>
public sealed class ScanLog
{
    private readonly EventLog _log;
    private readonly LogClock _clock;
    private readonly int[] _shown = new int[LogEvent.States];
    private readonly int[] _now = new int[LogEvent.States];

    /// <summary>Records into a log what a controller with these settings decides.</summary>
    public ScanLog(EventLog log, ControllerSettings settings)
    {
        _log = log;
        _clock = new LogClock(settings);
    }

    /// <summary>Records what differs from the last scan, and then the deadline; call it for every scan.</summary>
    public void Note(OutputImage image)
    {
        int[] now = _now;
        now[LogEvent.Calls] = image.AcceptedCalls;
        now[LogEvent.Switches] = image.AcceptedSwitches;
        now[LogEvent.Senses] = image.AcceptedSenses;
        now[LogEvent.Hands] = image.AcceptedHands;
        now[LogEvent.Contacts] = image.AcceptedContacts;
        now[LogEvent.Valves] = image.Valves;
        now[LogEvent.Pump] = image.Pump ? 1 : 0;
        now[LogEvent.Heat] = image.Heat ? 1 : 0;
        now[LogEvent.Hold] = (int)image.Hold;
        now[LogEvent.Late] = image.LateValves;
        now[LogEvent.Latched] = image.LatchedValves;
        now[LogEvent.Early] = image.EarlySwitches;
        now[LogEvent.Stuck] = image.StuckSwitches;
        now[LogEvent.Alarms] = image.Alarms;
        now[LogEvent.Proven] = image.ProvenValves;
        int fault = _clock.FaultOf(image);
        bool changed = image.PowerUp || fault >= 0;
        if (image.PowerUp)
            _log.Add(image.ScanMs, LogEvent.Boot, 0, 0);
        if (fault >= 0)
            _log.Add(image.ScanMs, fault, (int)(_clock.LastMs >> 32), (int)_clock.LastMs);
        _clock.Take(image, fault >= 0);
        for (int what = LogEvent.Calls; what < LogEvent.States; what++)
        {
            if (now[what] == _shown[what])
                continue;
            _shown[what] = now[what];
            changed = true;
            _log.Add(image.ScanMs, what, now[what], 0);
        }

        if (changed)
            _log.Add(image.ScanMs, LogEvent.Next, UntilNext(image), 0);
    }

    private static int UntilNext(OutputImage image) =>
        image.NextDeadlineMs == ZoneController.Never ? -1 : (int)(image.NextDeadlineMs - image.ScanMs);
}
