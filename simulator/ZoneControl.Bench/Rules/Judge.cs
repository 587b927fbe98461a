using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>Judges a whole trace by every rule of the rule book.</summary>
public static class Judge
{
    // Frames further apart than this are passed in pieces: a step's time is an int.
    private const int LongestStepMs = 1_000_000_000;

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
        var monitors = new MonitorSet(house, nameOf, tally);
        if (trace.Frames.Count > 0)
            monitors.NowMs = trace.Frames[0].Ms;
        var clock = new ScanClock(house, trace.EveryScan);
        foreach (Frame frame in trace.Frames)
        {
            Refuse(monitors.NowMs, frame.Ms);
            clock.Read(frame);
            Pass(monitors, frame.Ms == monitors.NowMs ? 0 : clock.PassedMs);
            monitors.NowMs = frame.Ms;
            monitors.Step(0, frame, clock.Sign);
        }

        if (trace.Frames.Count > 0)
        {
            Refuse(monitors.NowMs, trace.EndMs);
            Pass(monitors, trace.EndMs - monitors.NowMs);
        }

        return tally.Verdicts();
    }

    private static void Refuse(long nowMs, long nextMs)
    {
        if (nextMs < nowMs)
            throw new ArgumentException($"time runs back from {nowMs} ms to {nextMs} ms", nameof(nextMs));
    }

    private static void Pass(MonitorSet monitors, long ms)
    {
        for (long left = ms; left > 0; left -= LongestStepMs)
            monitors.Pass((int)Math.Min(left, LongestStepMs));
    }

    private sealed class Tally : IFindings
    {
        private readonly Dictionary<string, int> _occasions = [];
        private readonly Dictionary<string, (long Ms, string Why)> _first = [];

        public void Occasion(string rule) => _occasions[rule] = _occasions.GetValueOrDefault(rule) + 1;

        // A duty's moment lies inside the time that passes, so breaches may be told out of order.
        public void Broken(string rule, long ms, string why)
        {
            if (!_first.TryGetValue(rule, out var known) || ms < known.Ms)
                _first[rule] = (ms, why);
        }

        public IReadOnlyList<RuleVerdict> Verdicts() => [.. RuleBook.Rules.Select(rule => Of(rule.Id))];

        private RuleVerdict Of(string rule)
        {
            int occasions = _occasions.GetValueOrDefault(rule);
            if (_first.TryGetValue(rule, out var first))
                return new RuleVerdict(rule, Judgement.Broken, occasions, first.Ms, first.Why);
            return new RuleVerdict(rule, occasions > 0 ? Judgement.Kept : Judgement.NotCalledUpon, occasions, null, "");
        }
    }
}
