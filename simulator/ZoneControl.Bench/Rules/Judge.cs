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
    /// Frames in the order of their scans. A scan whose time cannot be believed (<see cref="ScanClock"/>) is judged as if no
    /// time had passed before it; a moment told after one is that of the clock as it went on.
    /// </param>
    /// <param name="nameOf">A zone's name by its number, for the reasons.</param>
    /// <exception cref="ArgumentException">The trace ends before its last frame.</exception>
    public static IReadOnlyList<RuleVerdict> Verdicts(ControllerSettings house, Trace trace, Func<int, string> nameOf)
    {
        var tally = new Tally();
        var monitors = new MonitorSet(house, nameOf, tally);
        if (trace.Frames.Count > 0)
            monitors.NowMs = trace.Frames[0].Ms;
        var clock = new ScanClock(house, trace.EveryScan);
        foreach (Frame recorded in trace.Frames)
        {
            // The controller is judged by the clock it was given; what is told is told by the bench's.
            long aheadMs = recorded.ClockAheadMs;
            Frame frame = aheadMs == 0 ? recorded : OnItsOwnClock(recorded);
            ClockSign sign = clock.Sign(frame);
            if (sign is ClockSign.RunsBack or ClockSign.ComesLate || frame.Ms < monitors.NowMs)
                monitors.NowMs = frame.Ms;
            else
                PassTo(monitors, frame.Ms);
            tally.AheadMs = aheadMs;
            monitors.Step(0, frame, sign);
        }

        if (trace.Frames.Count > 0)
            PassTo(monitors, trace.EndMs + tally.AheadMs);
        return tally.Verdicts();
    }

    private static Frame OnItsOwnClock(in Frame frame) => frame with
    {
        Ms = frame.Ms + frame.ClockAheadMs,
        NextDeadlineMs = frame.NextDeadlineMs == ZoneController.Never
            ? ZoneController.Never
            : frame.NextDeadlineMs + frame.ClockAheadMs,
    };

    private static void PassTo(MonitorSet monitors, long ms)
    {
        long left = ms - monitors.NowMs;
        if (left < 0)
            throw new ArgumentException($"time runs back from {monitors.NowMs} ms to {ms} ms", nameof(ms));
        for (; left > 0; left -= LongestStepMs)
            monitors.Pass((int)Math.Min(left, LongestStepMs));
    }

    private sealed class Tally : IFindings
    {
        private readonly Dictionary<string, int> _occasions = [];
        private readonly Dictionary<string, (long Ms, string Why)> _first = [];

        /// <summary>How far the controller's clock is ahead of the bench's, ms.</summary>
        public long AheadMs { get; set; }

        public void Occasion(string rule) => _occasions[rule] = _occasions.GetValueOrDefault(rule) + 1;

        // A duty's moment lies inside the time that passes, so breaches may be told out of order.
        public void Broken(string rule, long ms, string why)
        {
            ms -= AheadMs;
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
