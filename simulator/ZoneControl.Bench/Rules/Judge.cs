using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>Judges a whole trace by every rule of the rule book.</summary>
public static class Judge
{
    /// <summary>One verdict a rule, in the rule book's order, each with its first breach.</summary>
    /// <param name="house">What the house file says to a controller; lawful, as <see cref="SettingsCheck"/> says.</param>
    /// <param name="trace">
    /// Frames in order of time. What passes for the controller is what its clock says (<see cref="ScanClock"/>); breaches are
    /// dated by the run's time.
    /// </param>
    /// <param name="nameOf">A zone's name by its number, for the reasons.</param>
    /// <exception cref="ArgumentException">Frames run backwards, or the trace ends before its last frame.</exception>
    public static IReadOnlyList<RuleVerdict> Verdicts(ControllerSettings house, Trace trace, Func<int, string> nameOf)
    {
        var tally = new Tally();
        var judge = new RunningJudge(house, nameOf, tally, trace.EveryScan);
        foreach (Frame frame in trace.Frames)
            judge.Take(frame);
        if (trace.Frames.Count > 0)
            judge.PassTo(trace.EndMs);
        return tally.Verdicts();
    }
}
