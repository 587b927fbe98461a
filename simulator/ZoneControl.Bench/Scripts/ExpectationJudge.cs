using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Scripts;

/// <summary>Says of each expectation whether a trace meets it. A frame holds until the next one, the last until the end.</summary>
public static class ExpectationJudge
{
    /// <summary>A verdict for each expectation, in the script's order.</summary>
    public static IReadOnlyList<ExpectationVerdict> Judge(Script script, House house, Trace trace) =>
        [.. script.Expectations.Select(expectation => Judge(expectation, house, trace))];

    private static ExpectationVerdict Judge(Expectation expectation, House house, Trace trace)
    {
        (bool met, long? ms, string why) = (expectation.State, expectation.When) switch
        {
            (FrameState state, AtMoment at) => At(state, at.Ms, house, trace),
            (FrameState state, Throughout stretch) => Always(state, stretch, house, trace),
            (FrameState state, SomeTime window) => Once(state, window, house, trace),
            (DeadheadAtMost most, Throughout stretch) => Deadhead(most, stretch.FromMs, stretch.UntilMs, trace),
            (DeadheadAtMost most, WholeRun) => Deadhead(most, 0, trace.EndMs, trace),
            (ExercisesDone done, Throughout stretch) => Exercises(done, stretch.FromMs, stretch.UntilMs, trace),
            (ExercisesDone done, WholeRun) => Exercises(done, 0, trace.EndMs, trace),
            _ => throw new ArgumentException($"no way to judge {expectation}", nameof(expectation)),
        };
        return new ExpectationVerdict(expectation.InWords(house), expectation.Line, met, ms, why);
    }

    private static (bool, long?, string) At(FrameState state, long ms, House house, Trace trace)
    {
        int index = trace.EndMs < ms ? -1 : LastFrameAt(trace, ms);
        if (index < 0)
            return NotRecorded(trace);
        Frame frame = trace.Frames[index];
        return state.IsShownBy(frame) ? (true, ms, "") : (false, ms, state.Seen(frame, house));
    }

    private static (bool, long?, string) Always(FrameState state, Throughout stretch, House house, Trace trace)
    {
        for (int i = Math.Max(0, LastFrameAt(trace, stretch.FromMs)); i < trace.Frames.Count; i++)
        {
            Frame frame = trace.Frames[i];
            if (frame.Ms >= stretch.UntilMs)
                break;
            if (!state.IsShownBy(frame))
            {
                long ms = Math.Max(frame.Ms, stretch.FromMs);
                return (false, ms, $"{state.Seen(frame, house)} at {Durations.InWords(ms)}");
            }
        }

        bool recorded = trace.Frames.Count > 0 && trace.Frames[0].Ms <= stretch.FromMs && trace.EndMs >= stretch.UntilMs;
        return recorded ? (true, null, "") : NotRecorded(trace);
    }

    private static (bool, long?, string) Once(FrameState state, SomeTime window, House house, Trace trace)
    {
        long end = window.AfterMs + window.WithinMs;
        Frame? last = null;
        for (int i = Math.Max(0, LastFrameAt(trace, window.AfterMs)); i < trace.Frames.Count; i++)
        {
            Frame frame = trace.Frames[i];
            long ms = Math.Max(frame.Ms, window.AfterMs);
            if (frame.Ms > end || ms > trace.EndMs)
                break;
            if (state.IsShownBy(frame))
                return (true, ms, "");
            last = frame;
        }

        return last is { } seen && trace.EndMs >= end
            ? (false, end, $"{state.Seen(seen, house)} at {Durations.InWords(end)}, and it did not come true before")
            : NotRecorded(trace);
    }

    private static (bool, long?, string) Exercises(ExercisesDone done, long fromMs, long untilMs, Trace trace)
    {
        if (trace.Frames.Count == 0 || trace.Frames[0].Ms > fromMs || trace.EndMs < untilMs)
            return NotRecorded(trace);
        long[] ends = [.. ExerciseEnds.Of(trace).Where(ms => ms >= fromMs && ms < untilMs)];
        if (ends.Length == done.Count)
            return (true, ends.Length > 0 ? ends[^1] : null, "");
        string when = ends.Length > 0 ? $": at {string.Join(", ", ends.Select(Durations.InWords))}" : "";
        return (false, ends.Length > done.Count ? ends[done.Count] : null, $"there were {ends.Length}{when}");
    }

    private static (bool, long?, string) Deadhead(DeadheadAtMost most, long fromMs, long untilMs, Trace trace)
    {
        if (trace.Samples.Count == 0 || trace.EndMs < untilMs)
            return NotRecorded(trace);
        double before = DeadheadMsAt(trace, fromMs);
        double within = DeadheadMsAt(trace, untilMs) - before;

        // Half a millisecond of grace: seconds are doubles, and times are whole milliseconds.
        if (within <= most.Ms + 0.5)
            return (true, null, "");
        PlantSample first = trace.Samples.FirstOrDefault(sample => (sample.DeadheadS * 1000) - before > most.Ms + 0.5)
            ?? trace.Samples[^1];
        long ms = Math.Clamp(first.Ms, fromMs, untilMs);
        return (false, ms, $"{Durations.InWords((long)Math.Round(within))} of deadhead");
    }

    private static double DeadheadMsAt(Trace trace, long ms)
    {
        IReadOnlyList<PlantSample> samples = trace.Samples;
        int after = LastAt(samples.Count, i => samples[i].Ms, ms) + 1;
        if (after == 0)
            return 0;
        PlantSample left = samples[after - 1];
        if (after == samples.Count || left.Ms == ms)
            return left.DeadheadS * 1000;
        PlantSample right = samples[after];
        double share = (double)(ms - left.Ms) / (right.Ms - left.Ms);
        return (left.DeadheadS + ((right.DeadheadS - left.DeadheadS) * share)) * 1000;
    }

    private static int LastFrameAt(Trace trace, long ms) => LastAt(trace.Frames.Count, i => trace.Frames[i].Ms, ms);

    /// <summary>Index of the last of some rising times that is not after <paramref name="ms"/>; -1 when all are.</summary>
    private static int LastAt(int count, Func<int, long> timeOf, long ms)
    {
        int low = 0;
        int high = count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (timeOf(middle) <= ms)
                low = middle + 1;
            else
                high = middle;
        }

        return low - 1;
    }

    private static (bool, long?, string) NotRecorded(Trace trace) => trace.Frames.Count == 0
        ? (false, null, "nothing was recorded")
        : (false, null, $"not recorded: the record goes from {Durations.InWords(trace.Frames[0].Ms)} to {Durations.InWords(trace.EndMs)}");
}
