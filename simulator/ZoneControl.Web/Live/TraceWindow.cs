using ZoneControl.Bench.Running;

namespace ZoneControl.Web.Live;

/// <summary>Cuts a stretch of time out of a trace, so that a long run costs no more to draw than a short one.</summary>
public static class TraceWindow
{
    /// <summary>The part between two moments, ms. What held before it begins at its first moment.</summary>
    public static Trace Cut(Trace trace, long fromMs, long toMs)
    {
        ArgumentNullException.ThrowIfNull(trace);
        int firstFrame = FirstAfter(trace.Frames, frame => frame.Ms, fromMs);
        var frames = new List<Frame>();
        if (firstFrame > 0)
            frames.Add(trace.Frames[firstFrame - 1] with { Ms = fromMs });
        for (int i = firstFrame; i < trace.Frames.Count && trace.Frames[i].Ms < toMs; i++)
            frames.Add(trace.Frames[i]);
        int firstSample = FirstAfter(trace.Samples, sample => sample.Ms, fromMs);
        var samples = new List<PlantSample>();
        if (firstSample > 0)
            samples.Add(trace.Samples[firstSample - 1] with { Ms = fromMs });
        for (int i = firstSample; i < trace.Samples.Count && trace.Samples[i].Ms <= toMs; i++)
            samples.Add(trace.Samples[i]);
        return new Trace(frames, samples, Math.Min(toMs, trace.EndMs));
    }

    /// <summary>The frame in force at a moment, ms; null before the first.</summary>
    public static Frame? FrameAt(Trace trace, long ms)
    {
        ArgumentNullException.ThrowIfNull(trace);
        int after = FirstAfter(trace.Frames, frame => frame.Ms, ms);
        return after > 0 ? trace.Frames[after - 1] : null;
    }

    /// <summary>The last sample taken up to a moment, ms; null before the first.</summary>
    public static PlantSample? SampleAt(Trace trace, long ms)
    {
        ArgumentNullException.ThrowIfNull(trace);
        int after = FirstAfter(trace.Samples, sample => sample.Ms, ms);
        return after > 0 ? trace.Samples[after - 1] : null;
    }

    private static int FirstAfter<T>(IReadOnlyList<T> list, Func<T, long> at, long ms)
    {
        int low = 0;
        int high = list.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (at(list[middle]) <= ms)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
