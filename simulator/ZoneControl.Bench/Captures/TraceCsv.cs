using System.Globalization;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// A trace as a table: one line for each moment at which the plant was sampled or the controller changed what it shows.
/// Two lines of one moment are the two sides of a step. Columns, in this order:
/// <list type="bullet">
/// <item><c>time_s</c> from the start of the run; <c>powered</c>, <c>power_up</c>, <c>lockout</c>, <c>pump</c>,
/// <c>heat_demand</c> as 0 or 1; <c>hold_reason</c> in the words of script files;</item>
/// <item>for each zone, with its name in front: <c>thermostat</c> and <c>end_switch_contact</c> before debounce,
/// <c>call</c> and <c>end_switch</c> after it, <c>valve</c> energised, <c>proven</c>, <c>late</c>, <c>latched</c>,
/// <c>switch_early</c>, <c>switch_stuck</c>, <c>sense</c> of a gated valve, <c>hand</c> switch, all 0 or 1, then <c>travel</c> (0 shut to 1 open) and <c>flow_L_per_min</c>;</item>
/// <item><c>pump_flow_L_per_min</c>, <c>bypass_flow_L_per_min</c>, <c>pump_head_m</c>, <c>trapped_water_degC</c>,
/// <c>deadhead_s</c> so far;</item>
/// <item>for each contact of the house, by its key in house files: <c>contact</c> asserted before debounce and
/// <c>accepted</c> after it, 0 or 1; <c>alarms</c> of the house in the words of script files, with semicolons between;
/// <c>clock_ahead_s</c>, how far the controller's clock is ahead; <c>deadline_s</c>, the announced deadline or <c>never</c>;
/// <c>season contact</c>; and for each zone <c>sense_contact</c>, before debounce;
/// <c>scan</c>, which turns with every scan that is recorded.</item>
/// </list>
/// Units are these whatever the house file shows results in, so that a program reading the table needs no other file.
/// </summary>
public static class TraceCsv
{
    private static readonly string[] _zoneColumns =
    [
        "thermostat", "call", "end_switch_contact", "end_switch", "valve", "proven", "late", "latched", "switch_early",
        "switch_stuck", "sense", "hand", "travel", "flow_L_per_min",
    ];

    private static readonly (string Key, int Contact)[] _contacts =
        [.. ContactKind.All.Where(kind => kind.Contact != Contact.Lockout).Select(kind => (kind.Key, kind.Contact)),
        ("service", Contact.ServicePump)];

    /// <summary>Writes the table.</summary>
    /// <param name="into">Where to.</param>
    /// <param name="trace">The trace.</param>
    /// <param name="zones">Zone names in the order of the masks' bits.</param>
    public static void Write(TextWriter into, Trace trace, IReadOnlyList<string> zones)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(zones);
        Csv.Record(into,
        [
            "time_s", "powered", "power_up", "lockout", "pump", "heat_demand", "hold_reason",
            .. zones.SelectMany(zone => _zoneColumns.Select(column => $"{zone} {column}")),
            "pump_flow_L_per_min", "bypass_flow_L_per_min", "pump_head_m", "trapped_water_degC", "deadhead_s",
            .. _contacts.SelectMany(contact => (string[])[$"{contact.Key} contact", $"{contact.Key} accepted"]),
            "alarms", "clock_ahead_s", "deadline_s", "season contact", .. zones.Select(zone => $"{zone} sense_contact"), "scan",
        ]);
        foreach (TraceMoment moment in TraceMoments.Of(trace))
            Csv.Record(into, Line(moment, zones.Count));
    }

    private static List<string> Line(in TraceMoment moment, int zones)
    {
        (long ms, Frame frame, PlantSample sample) = (moment.Ms, moment.Frame, moment.Sample);
        var fields = new List<string>
        {
            Seconds(ms),
            Bit(!frame.Unpowered),
            Bit(frame.PowerUp),
            Bit(frame.Lockout),
            Bit(frame.Pump),
            Bit(frame.Heat),
            HoldWords.Of(frame.Hold).Word,
        };
        for (int zone = 0; zone < zones; zone++)
        {
            foreach (int mask in (int[])[sample.RawCalls, frame.Calls, sample.RawSwitches, frame.EndSwitches, frame.Valves,
                frame.ProvenValves, frame.LateValves, frame.LatchedValves, frame.EarlySwitches,
                frame.StuckSwitches, frame.Senses, frame.Hands])
            {
                fields.Add(Bit((mask & 1 << zone) != 0));
            }

            fields.Add(Number(sample.Travel[zone]));
            fields.Add(Number(sample.ZoneFlowM3s[zone] * 60_000));
        }

        fields.AddRange(
            [Number(sample.PumpFlowM3s * 60_000), Number(sample.BypassFlowM3s * 60_000), Number(sample.PumpHeadM),
            Number(sample.TrappedWaterC), Number(sample.DeadheadS)]);
        foreach ((_, int contact) in _contacts)
        {
            fields.Add(Bit((sample.RawContacts & contact) != 0));
            fields.Add(Bit((frame.Contacts & contact) != 0));
        }

        fields.Add(string.Join("; ", AlarmWords.All.Where(word => (frame.Alarms & word.Alarm) != 0).Select(word => word.Word)));
        fields.Add(Seconds(frame.ClockAheadMs));
        fields.Add(frame.NextDeadlineMs == ZoneController.Never ? "never" : Seconds(frame.NextDeadlineMs));
        fields.Add(Bit((sample.RawContacts & Contact.Lockout) != 0));
        for (int zone = 0; zone < zones; zone++)
            fields.Add(Bit((sample.RawSenses & (1 << zone)) != 0));
        fields.Add(Bit(moment.Turn));
        return fields;
    }

    private static string Bit(bool on) => on ? "1" : "0";

    // In whole milliseconds, so that they are read back as they were.
    private static string Seconds(long ms) => (ms / 1000m).ToString("0.###", CultureInfo.InvariantCulture);

    private static string Number(double value)
    {
        string text = value.ToString("0.######", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
