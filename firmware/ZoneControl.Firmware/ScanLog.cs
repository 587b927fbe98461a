using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>Finds what a scan changed of what is shown, and records it: one record for each mask that differs.</summary>
public sealed class ScanLog
{
    private readonly EventLog _log;
    private readonly int[] _shown = new int[LogEvent.States];
    private readonly int[] _now = new int[LogEvent.States];

    /// <summary>Records into a log.</summary>
    public ScanLog(EventLog log) => _log = log;

    /// <summary>Records what differs from the last time, and then the deadline.</summary>
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
        bool changed = image.PowerUp;
        if (changed)
            _log.Add(image.ScanMs, LogEvent.Boot, 0, 0);
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
