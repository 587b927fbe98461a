using ZoneControl.Logic;

namespace ZoneControl.Bench.Running;

/// <summary>
/// Reads from a trace when exercises were done. An exercise is seen from outside: valves open and the pump runs and stops
/// again while nobody calls, no freeze contact asks and no hand; when it stops the alarm of one put off is not raised.
/// </summary>
public static class ExerciseEnds
{
    /// <summary>When the pump stopped at the end of each exercise, ms.</summary>
    public static IReadOnlyList<long> Of(Trace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var ends = new List<long>();
        bool unasked = false;
        Frame was = default;
        foreach (Frame now in trace.Frames)
        {
            bool asked = IsAsked(now);
            if (now.Valves != 0 && was.Valves == 0)
                unasked = !asked;
            unasked &= !asked && now.Valves != 0;
            if (unasked && was.Pump && !now.Pump && (now.Alarms & Alarm.ExercisePutOff) == 0)
                ends.Add(now.Ms);
            was = now;
        }

        return ends;
    }

    // In lockout, or while hot water has priority, calls ask for nothing.
    private static bool IsAsked(in Frame frame)
    {
        if (frame.Unpowered || frame.Hands != 0 || (frame.Contacts & (Contact.Freeze | Contact.ServicePump)) != 0)
            return true;
        bool withheld = (frame.Contacts & (Contact.Lockout | Contact.Priority)) != 0;
        return !withheld && ((frame.Calls & ~frame.LatchedValves) | frame.Senses) != 0;
    }
}
