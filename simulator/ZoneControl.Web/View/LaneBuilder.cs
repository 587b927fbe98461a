using ZoneControl.Bench.Running;

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
            Curve.ThinToRange(Values(trace, s => s.TrappedWaterC), CurveTolerance));
    }

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

    private static ZoneLane ZoneLane(Trace trace, ZoneView view, int zone)
    {
        int bit = 1 << zone;
        return new ZoneLane(
            view,
            When(trace, f => (f.Calls & bit) != 0),
            When(trace, f => (f.Valves & bit) != 0),
            When(trace, f => (f.ProvenValves & bit) != 0),
            When(trace, f => (f.LateValves & bit) != 0),
            When(trace, f => (f.LatchedValves & bit) != 0),
            When(trace, f => (f.EarlySwitches & bit) != 0),
            Curve.Thin(Values(trace, s => s.Travel[zone]), TravelTolerance));
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
