using Spectre.Console;
using ZoneControl.Logic;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>The timing lanes of the judged run, with the pump of the run to compare with underneath.</summary>
internal static class LaneSection
{
    private const int LabelWidth = 18;

    public static void Write(IAnsiConsole console, ReportView report)
    {
        RunView run = report.Judged;
        var clock = new Clock(report.StartClock);
        int columns = Math.Max(10, Math.Min(console.Profile.Width, Screen.Width) - LabelWidth);
        var lanes = new TextLanes(run.Lanes, columns);
        (string labels, string marks) = lanes.Axis(clock);
        Screen.Heading(console, $"Timing lanes: {run.ControllerName}");
        Line(console, clock.Heading, labels, Style.Plain);
        Line(console, "", marks, new Style(decoration: Decoration.Dim));
        foreach (ZoneLane zone in run.Lanes.Zones)
            Lane(console, lanes.Zone(zone), zone.Late.Count > 0 ? Color.Red : Color.Teal);
        Lane(console, lanes.Pump("Pump"), Color.Blue);
        Lane(console, lanes.Heat("Heat demand"), Color.Olive);
        Lane(console, lanes.Holds("Pump held", run.Holds), Color.Purple);
        foreach (HouseLane lane in run.Lanes.House)
            Lane(console, lanes.House(lane), lane.IsAlarm ? Color.Red : Color.Grey);
        if (report.Compared is { } compared)
        {
            Line(console, "", marks.Replace('┬', '┴'), new Style(decoration: Decoration.Dim));
            Lane(console, new TextLanes(compared.Lanes, columns).Pump("Pump, the other"), Color.Red);
        }

        Legend(console, run, report.Compared);
    }

    private static void Legend(IAnsiConsole console, RunView run, RunView? compared)
    {
        console.WriteLine();
        Screen.Say(console, $"zones  {TextLanes.Opening} opening   {TextLanes.OpenCalled} proven open   {TextLanes.OpenUncalled} proven open without a call of its own");
        Screen.Say(console, $"       {TextLanes.Closing} closing   {TextLanes.Waiting} calls, not served   {TextLanes.Failed} late, given up, alarm");
        Screen.Say(console, $"pump   {TextLanes.On} on  {TextLanes.PartlyOn} on for part of the cell  {TextLanes.Starved} on with less than its minimum flow");
        HoldReason[] reasons = [.. run.Holds.Select(h => h.Reason).Distinct().Order()];
        if (reasons.Length > 0)
        {
            Screen.Say(console, "held   " + string.Join("  ", reasons.Select(r =>
                $"{HoldSign.For(r).Letter} {HoldSign.For(r).Word}")));
        }

        if (compared is not null)
            Screen.Say(console, $"The other pump: {compared.ControllerName}.");
    }

    private static void Lane(IAnsiConsole console, TextLane lane, Color color) =>
        Line(console, lane.Label, lane.Cells, new Style(color));

    private static void Line(IAnsiConsole console, string label, string cells, Style style)
    {
        string name = label.Length >= LabelWidth ? label[..(LabelWidth - 2)] + "…" : label;
        console.Write(new Text(name.PadRight(LabelWidth)));
        console.Write(new Text(cells + "\n", style));
    }
}
