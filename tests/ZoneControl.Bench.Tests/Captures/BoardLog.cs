using System.Globalization;
using System.Text;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Captures;

/// <summary>Writes what a board would log of a run, to the grammar of the board's console log.</summary>
internal static class BoardLog
{
    private static readonly string[] _holds =
    [
        "none", "service", "priority", "lockout", "valve-latched", "limit", "flow-latched", "pump-stuck", "supply",
        "too-few-valves", "proof", "start-delay", "rest", "reset",
    ];

    private static readonly string[] _contacts = ["season", "flow", "limit", "freeze", "priority", "reset", "supply", "service-pump"];

    private static readonly string[] _alarms =
    [
        "flow-trip", "flow-latched", "pump-stuck", "limit-latched", "frost-in-lockout", "priority-long", "exercise-put-off",
        "time-fault", "no-supply", "service-ended",
    ];

    public static string Of(Run run)
    {
        var log = new StringBuilder("rst:0x1 (POWERON_RESET),boot:0x13\n");
        Frame last = default;
        Frame before = default;
        bool silent = true;
        foreach (Frame frame in run.Trace.Frames)
        {
            string fault = silent ? "" : ClockFault(before, frame);
            before = frame;
            if (frame.Unpowered)
            {
                silent = true;
                continue;
            }

            long ms = frame.Ms + frame.ClockAheadMs;
            if (frame.PowerUp || silent)
            {
                log.Append(CultureInfo.InvariantCulture, $"@{ms} boot log=1 fp=0badc0de zones={run.House.Zones.Count} period=100 pins=direct\n");
                for (int zone = 0; zone < run.House.Zones.Count; zone++)
                    log.Append(CultureInfo.InvariantCulture, $"@{ms} name z{zone + 1} {run.House.Zones[zone].Name}\n");
                last = default;
                silent = false;
            }
            else if (fault.Length == 0 && frame.ShowsTheSameAs(last with { ClockAheadMs = frame.ClockAheadMs, PowerUp = false }))
            {
                continue; // nothing but the clock: a scan in which nothing changed prints nothing
            }

            if (fault.Length > 0)
                Line(log, ms, fault);
            Group(log, ms, last, frame);
            last = frame;
        }

        log.Append(CultureInfo.InvariantCulture, $"@{run.Trace.EndMs} alive scans=1 overruns=0\n");
        return log.ToString();
    }

    // The bench records the scan before its clock moves, so that the fault can be told from the two.
    private static string ClockFault(in Frame was, in Frame now)
    {
        if (was.ClockAheadMs == now.ClockAheadMs)
            return "";
        (long before, long after) = (was.Ms + was.ClockAheadMs, now.Ms + now.ClockAheadMs);
        if (after < before)
            return $"clock back was={before}";
        if (after == before)
            return was.Pump && !now.Pump ? $"clock stands was={before}" : "";
        bool late = was.NextDeadlineMs != ZoneController.Never && after > was.NextDeadlineMs + was.ClockAheadMs + 1000;
        return late && (now.Alarms & Alarm.TimeFault) != 0 ? $"clock late was={before}" : "";
    }

    private static void Group(StringBuilder log, long ms, in Frame was, in Frame now)
    {
        Zones(log, ms, "call", was.Calls, now.Calls);
        Zones(log, ms, "switch", was.EndSwitches, now.EndSwitches);
        Zones(log, ms, "sense", was.Senses, now.Senses);
        Zones(log, ms, "hand", was.Hands, now.Hands);
        Words(log, ms, "contact", _contacts, was.Contacts, now.Contacts);
        Zones(log, ms, "valve", was.Valves, now.Valves);
        if (was.Pump != now.Pump)
            Line(log, ms, "pump " + OnOff(now.Pump));
        if (was.Heat != now.Heat)
            Line(log, ms, "heat " + OnOff(now.Heat));
        if (was.Hold != now.Hold)
            Line(log, ms, "hold " + _holds[(int)now.Hold]);
        Zones(log, ms, "late", was.LateValves, now.LateValves);
        Zones(log, ms, "latched", was.LatchedValves, now.LatchedValves);
        Zones(log, ms, "early", was.EarlySwitches, now.EarlySwitches);
        Zones(log, ms, "stuck", was.StuckSwitches, now.StuckSwitches);
        Words(log, ms, "alarm", _alarms, was.Alarms, now.Alarms);
        Zones(log, ms, "proven", was.ProvenValves, now.ProvenValves);
        string next = now.NextDeadlineMs == ZoneController.Never
            ? "never" : (now.NextDeadlineMs + now.ClockAheadMs).ToString(CultureInfo.InvariantCulture);
        Line(log, ms, "next " + next);
    }

    private static void Zones(StringBuilder log, long ms, string what, int was, int now)
    {
        for (int zone = 0; zone < 16; zone++)
        {
            if (((was ^ now) & (1 << zone)) != 0)
                Line(log, ms, $"{what} z{zone + 1} {OnOff((now & (1 << zone)) != 0)}");
        }
    }

    private static void Words(StringBuilder log, long ms, string what, string[] words, int was, int now)
    {
        for (int bit = 0; bit < words.Length; bit++)
        {
            if (((was ^ now) & (1 << bit)) != 0)
                Line(log, ms, $"{what} {words[bit]} {OnOff((now & (1 << bit)) != 0)}");
        }
    }

    private static void Line(StringBuilder log, long ms, string text) => log.Append(CultureInfo.InvariantCulture, $"@{ms} {text}\n");

    private static string OnOff(bool on) => on ? "on" : "off";
}
