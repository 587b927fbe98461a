using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Captures;

/// <summary>What a trace shows at a moment.</summary>
/// <param name="Ms">The moment.</param>
/// <param name="Frame">The frame in force.</param>
/// <param name="Count">How many frames there have been, this one included.</param>
/// <param name="Sample">The plant.</param>
internal readonly record struct TraceMoment(long Ms, Frame Frame, int Count, PlantSample Sample)
{
    /// <summary>Turns with each frame, so that one which shows nothing new is seen too.</summary>
    public bool Turn => (Count & 1) != 0;
}

/// <summary>A trace as one row of moments, for files.</summary>
internal static class TraceMoments
{
    /// <summary>
    /// Joins frames and samples, up to the trace's end. Of several samples at a frame's moment the last shows what the frame
    /// did, the earlier ones what was before it.
    /// </summary>
    public static IEnumerable<TraceMoment> Of(Trace trace)
    {
        int next = 0;
        Frame? inForce = null;
        for (int i = 0; i < trace.Samples.Count; i++)
        {
            PlantSample sample = trace.Samples[i];
            while (next < trace.Frames.Count && trace.Frames[next].Ms < sample.Ms)
            {
                inForce = trace.Frames[next++];
                if (i > 0 && trace.Samples[i - 1].Ms < inForce.Value.Ms)
                    yield return new TraceMoment(inForce.Value.Ms, inForce.Value, next, trace.Samples[i - 1]);
            }

            bool last = i + 1 == trace.Samples.Count || trace.Samples[i + 1].Ms > sample.Ms;
            if (last && next < trace.Frames.Count && trace.Frames[next].Ms == sample.Ms)
                inForce = trace.Frames[next++];
            if (inForce is { } frame)
                yield return new TraceMoment(sample.Ms, frame, next, sample);
        }

        if (trace.Samples.Count == 0)
            yield break;
        long reached = trace.Samples[^1].Ms;
        for (; next < trace.Frames.Count; next++)
        {
            inForce = trace.Frames[next];
            reached = inForce.Value.Ms;
            yield return new TraceMoment(reached, inForce.Value, next + 1, trace.Samples[^1]);
        }

        // Without a row for the end nobody could tell how long the last one held.
        if (inForce is { } held && trace.EndMs > reached)
            yield return new TraceMoment(trace.EndMs, held, next, trace.Samples[^1]);
    }
}
