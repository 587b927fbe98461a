using ZoneControl.Logic;

namespace ZoneControl.Bench.Running;

/// <summary>Reads from a trace when the pump was held and why.</summary>
public static class HoldSpans
{
    /// <summary>Stretches with one published reason, in order of time, those without a reason left out.</summary>
    public static IReadOnlyList<HoldSpan> Of(Trace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var spans = new List<HoldSpan>();
        for (int i = 0; i < trace.Frames.Count; i++)
        {
            Frame frame = trace.Frames[i];
            long end = i + 1 < trace.Frames.Count ? trace.Frames[i + 1].Ms : trace.EndMs;
            if (frame.Hold == HoldReason.None)
                continue;
            if (spans.Count > 0 && spans[^1].Reason == frame.Hold && spans[^1].ToMs == frame.Ms)
                spans[^1] = spans[^1] with { ToMs = end };
            else
                spans.Add(new HoldSpan(frame.Ms, end, frame.Hold));
        }

        return spans;
    }
}
