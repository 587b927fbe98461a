using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;

namespace ZoneControl.Web.View;

/// <summary>Builds the view of a run from what the bench recorded.</summary>
public static class ViewBuilder
{
    /// <summary>Holds with one reason and no longer a gap than this between them are shown as one, ms.</summary>
    private const long HoldGapMs = 200;

    /// <summary>The view of one run.</summary>
    /// <param name="controllerName">What drove the pump.</param>
    /// <param name="trace">What was recorded.</param>
    /// <param name="zones">Zones in the house file's order.</param>
    /// <param name="verdicts">Rule verdicts, in the order to show.</param>
    /// <param name="sentences">The rules' sentences; a verdict on a rule that is not among them is shown without.</param>
    /// <param name="expectations">The script's expectations.</param>
    /// <param name="holds">Hold spans in order of time.</param>
    /// <param name="totals">What it adds up to.</param>
    /// <param name="events">The script's events.</param>
    /// <param name="passed">The verdict.</param>
    public static RunView Run(
        string controllerName,
        Trace trace,
        IReadOnlyList<ZoneView> zones,
        IReadOnlyList<RuleVerdict> verdicts,
        IReadOnlyList<Rule> sentences,
        IReadOnlyList<ExpectationVerdict> expectations,
        IReadOnlyList<HoldSpan> holds,
        RunTotals totals,
        IReadOnlyList<(long Ms, string Text)> events,
        bool passed)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        RunLanes lanes = LaneBuilder.From(trace, zones);
        Dictionary<string, string> known = sentences.ToDictionary(r => r.Id, r => r.Sentence);
        return new RunView(
            controllerName,
            lanes,
            Merge(holds),
            [.. events.Select(e => new Happening(e.Ms, e.Text, IsAlarm: false)).Concat(Alarms(lanes)).OrderBy(h => h.Ms)],
            [.. verdicts.Select(v => new RuleView(known.GetValueOrDefault(v.Rule, ""), v))],
            expectations,
            totals,
            passed);
    }

    /// <summary>Joins neighbouring holds that have one reason.</summary>
    public static IReadOnlyList<HoldView> Merge(IReadOnlyList<HoldSpan> holds)
    {
        ArgumentNullException.ThrowIfNull(holds);
        var merged = new List<HoldView>();
        foreach (HoldSpan hold in holds)
        {
            if (hold.Reason == Logic.HoldReason.None || hold.ToMs <= hold.FromMs)
                continue;
            if (merged.Count > 0 && merged[^1].Reason == hold.Reason && hold.FromMs - merged[^1].When.ToMs <= HoldGapMs)
                merged[^1] = merged[^1] with { When = merged[^1].When with { ToMs = hold.ToMs } };
            else
                merged.Add(new HoldView(new Stretch(hold.FromMs, hold.ToMs), hold.Reason));
        }

        return merged;
    }

    /// <summary>A line for each alarm raised in a zone or by the house.</summary>
    private static IEnumerable<Happening> Alarms(RunLanes lanes)
    {
        foreach (ZoneLane lane in lanes.Zones)
        {
            foreach (Stretch late in lane.Late)
                yield return new Happening(late.FromMs, $"{lane.Zone.Name}: valve late, not counted as open", IsAlarm: true);
            foreach (Stretch latched in lane.Latched)
                yield return new Happening(latched.FromMs, $"{lane.Zone.Name}: valve given up until reset", IsAlarm: true);
            foreach (Stretch early in lane.Early)
                yield return new Happening(early.FromMs, $"{lane.Zone.Name}: end switch made too soon, not believed", IsAlarm: true);
            foreach (Stretch stuck in lane.Stuck)
                yield return new Happening(stuck.FromMs, $"{lane.Zone.Name}: end switch still made after closing, not believed", IsAlarm: true);
        }

        foreach (HouseLane lane in lanes.House.Where(lane => lane.IsAlarm))
        {
            foreach (Stretch raised in lane.When)
                yield return new Happening(raised.FromMs, lane.Name, IsAlarm: true);
        }
    }
}
