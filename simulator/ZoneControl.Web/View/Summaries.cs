namespace ZoneControl.Web.View;

/// <summary>Drawings in words, for people who hear the page.</summary>
public static class Summaries
{
    /// <summary>What the timing lanes show.</summary>
    public static string Lanes(RunView run, Clock clock)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(clock);
        var said = new List<string> { $"From {clock.Minutes(run.Lanes.StartMs)} to {clock.Minutes(run.Lanes.EndMs)}." };
        foreach (ZoneLane lane in run.Lanes.Zones)
        {
            string calls = lane.Calls.Count == 0 ? "no call" : $"calls {Spoken(lane.Calls, clock)}";
            string opened = lane.Energised.Count == 0 ? "never opened" : $"valves energised {Spoken(lane.Energised, clock)}";
            said.Add($"{lane.Zone.Name}: {calls}; {opened}.");
        }

        said.Add(run.Lanes.Pump.Count == 0 ? "The pump stays off." : $"Pump on {Spoken(run.Lanes.Pump, clock)}.");
        if (run.Lanes.Deadhead.Count > 0)
            said.Add($"With less than its minimum flow {Spoken(run.Lanes.Deadhead, clock)}.");
        foreach (HouseLane lane in run.Lanes.House)
            said.Add($"{(lane.IsAlarm ? "Alarm: " : "")}{lane.Name} {Spoken(lane.When, clock)}.");
        said.Add(run.Holds.Count == 0
            ? "The pump is never held."
            : "Held: " + string.Join("; ", run.Holds.Select(
                h => $"{HoldSign.For(h.Reason).Word} {Spoken([h.When], clock)}")) + ".");
        return string.Join(" ", said);
    }

    /// <summary>A stretch with a name, for a tool tip: "Pump on, 06:40:00 to 06:52:10, 12 min 10 s".</summary>
    public static string Tip(string name, Stretch stretch, Clock clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return $"{name}, {clock.Seconds(stretch.FromMs)} to {clock.Seconds(stretch.ToMs)}, " +
            Quantity.Duration(stretch.LengthMs / 1000.0);
    }

    private static string Spoken(IReadOnlyList<Stretch> stretches, Clock clock) =>
        string.Join(", ", stretches.Select(s => $"{clock.Seconds(s.FromMs)} to {clock.Seconds(s.ToMs)}"));
}
