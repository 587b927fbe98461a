using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Captures;

/// <summary>A trace as one row of moments, for files.</summary>
internal static class TraceMoments
{
    /// <summary>
    /// Joins frames and samples, up to the trace's end. Of several samples at a frame's moment the last shows what the frame
    /// did, the earlier ones what was before it.
    /// </summary>
    public static IEnumerable<(long Ms, Frame Frame, PlantSample Sample)> Of(Trace trace)
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
                    yield return (inForce.Value.Ms, inForce.Value, trace.Samples[i - 1]);
            }

            bool last = i + 1 == trace.Samples.Count || trace.Samples[i + 1].Ms > sample.Ms;
            if (last && next < trace.Frames.Count && trace.Frames[next].Ms == sample.Ms)
                inForce = trace.Frames[next++];
            if (inForce is { } frame)
                yield return (sample.Ms, frame, sample);
        }

        if (trace.Samples.Count == 0)
            yield break;
        long reached = trace.Samples[^1].Ms;
        for (; next < trace.Frames.Count; next++)
        {
            inForce = trace.Frames[next];
            reached = inForce.Value.Ms;
            yield return (reached, inForce.Value, trace.Samples[^1]);
        }

        // Without a row for the end nobody could tell how long the last one held.
        if (inForce is { } held && trace.EndMs > reached)
            yield return (trace.EndMs, held, trace.Samples[^1]);
    }
}
