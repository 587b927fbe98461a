using System.Numerics;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>Adds a run up: what the plant counted, and what only the trace tells.</summary>
internal static class RunSums
{
    public static RunTotals Of(Trace trace, PlantModel plant)
    {
        long? firstCall = trace.Samples.FirstOrDefault(sample => sample.RawCalls != 0)?.Ms;
        return PlantReadings.Totals(plant, firstCall, Strokes(trace));
    }

    private static int Strokes(Trace trace)
    {
        int strokes = 0;
        int before = 0;
        foreach (Frame frame in trace.Frames)
        {
            strokes += BitOperations.PopCount((uint)((frame.Valves | frame.Senses) & ~before));
            before = frame.Valves | frame.Senses;
        }

        return strokes;
    }
}
