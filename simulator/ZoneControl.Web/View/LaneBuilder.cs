using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Web.View;

/// <summary>Turns a trace into lanes: when each thing was on, and how each value went.</summary>
public static class LaneBuilder
{
    /// <summary>Stem travel is drawn to this accuracy, fraction of the stroke.</summary>
    private const double TravelTolerance = 0.005;

    /// <summary>Curves are drawn to this accuracy, fraction of the largest value less the smallest.</summary>
    private const double CurveTolerance = 0.002;

    /// <summary>The lanes of a trace.</summary>
    /// <param name="trace">The trace; frames and samples in order of time.</param>
    /// <param name="zones">The zones, bit 0 of the masks first.</param>
    public static RunLanes From(Trace trace, IReadOnlyList<ZoneView> zones)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(zones);
        var lanes = new ZoneLane[zones.Count];
        for (int zone = 0; zone < zones.Count; zone++)
            lanes[zone] = ZoneLane(trace, zones[zone], zone);
        return new RunLanes(
            trace.EndMs,
            lanes,
            When(trace, f => f.Pump),
            When(trace, f => f.Heat),
            When(trace, f => f.Lockout),
            When(trace, f => f.Unpowered),
            Deadhead(trace),
            Curve.ThinToRange(Values(trace, s => s.PumpFlowM3s), CurveTolerance),
            Curve.ThinToRange(Values(trace, s => s.TrappedWaterC), CurveTolerance))
        {
            House = [.. Contacts(trace), .. Alarms(trace)],
        };
    }

    /// <summary>Contacts that say something when asserted; lockout has its own place, and no supply is an alarm.</summary>
    private static IEnumerable<HouseLane> Contacts(Trace trace)
    {
        (string Name, Func<Frame, bool> Holds)[] lanes =
        [
            ("Flow seen", f => (f.Contacts & Contact.Flow) != 0),
            ("Limit tripped", f => (f.Contacts & Contact.Limit) != 0),
            ("Frost", f => (f.Contacts & Contact.Freeze) != 0),
            ("Hot water first", f => (f.Contacts & Contact.Priority) != 0),
            ("Hand switches", f => f.Hands != 0 || (f.Contacts & Contact.ServicePump) != 0),
            ("Reset pressed", f => (f.Contacts & Contact.Reset) != 0),
        ];
        return lanes.Select(lane => new HouseLane(lane.Name, When(trace, lane.Holds), IsAlarm: false))
            .Where(lane => lane.When.Count > 0);
    }

    private static IEnumerable<HouseLane> Alarms(Trace trace) => AlarmWords.All
        .Select(word => new HouseLane(
            char.ToUpperInvariant(word.Word[0]) + word.Word[1..], When(trace, f => (f.Alarms & word.Alarm) != 0), IsAlarm: true))
        .Where(lane => lane.When.Count > 0);

    /// <summary>The stretches in which something holds of the frame in force; touching ones are one.</summary>
    public static IReadOnlyList<Stretch> When(Trace trace, Func<Frame, bool> holds)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(holds);
        var found = new List<Stretch>();
        long? since = null;
        foreach (Frame frame in trace.Frames)
        {
            if (holds(frame))
            {
                since ??= frame.Ms;
            }
            else if (since is { } from)
            {
                Add(found, from, frame.Ms);
                since = null;
            }
        }

        if (since is { } open)
            Add(found, open, trace.EndMs);
        return found;
    }

    /// <summary>A gated zone's sensed valve is both its call and what energises it.</summary>
    private static ZoneLane ZoneLane(Trace trace, ZoneView view, int zone)
    {
        int bit = 1 << zone;
        return new ZoneLane(
            view,
            When(trace, f => ((f.Calls | f.Senses) & bit) != 0),
            When(trace, f => ((f.Valves | f.Senses) & bit) != 0),
            When(trace, f => (f.ProvenValves & bit) != 0),
            When(trace, f => (f.LateValves & bit) != 0),
            When(trace, f => (f.LatchedValves & bit) != 0),
            When(trace, f => (f.EarlySwitches & bit) != 0),
            Curve.Thin(Values(trace, s => s.Travel[zone]), TravelTolerance))
        {
            Stuck = When(trace, f => (f.StuckSwitches & bit) != 0),
        };
    }

    /// <summary>Deadhead is a count of seconds so far: it lasts wherever the count grows.</summary>
    private static List<Stretch> Deadhead(Trace trace)
    {
        var found = new List<Stretch>();
        for (int i = 1; i < trace.Samples.Count; i++)
        {
            PlantSample before = trace.Samples[i - 1];
            PlantSample after = trace.Samples[i];
            if (after.DeadheadS > before.DeadheadS)
                Add(found, before.Ms, after.Ms);
        }

        return found;
    }

    private static TimedValue[] Values(Trace trace, Func<PlantSample, double> value) =>
        [.. trace.Samples.Select(s => new TimedValue(s.Ms, value(s)))];

    private static void Add(List<Stretch> list, long from, long to)
    {
        if (to <= from)
            return;
        if (list.Count > 0 && list[^1].ToMs == from)
            list[^1] = list[^1] with { ToMs = to };
        else
            list.Add(new Stretch(from, to));
    }
}
