using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Web.View;

/// <summary>Builds the view of a report from judged runs.</summary>
public static class ReportBuilder
{
    /// <summary>The report on one run, set beside another when there is one.</summary>
    /// <param name="judged">The run whose verdict counts.</param>
    /// <param name="compared">The same house and script with another controller; null without one.</param>
    /// <param name="rules">The rules' sentences.</param>
    public static ReportView From(Run judged, Run? compared, IReadOnlyList<Rule> rules)
    {
        ArgumentNullException.ThrowIfNull(judged);
        return new ReportView(
            judged.House.Name,
            Summary(judged.House),
            judged.Script.Title,
            Flowing(judged.Script.Text),
            judged.Script.Conditions.ClockStart,
            judged.House.Units == DisplayUnits.Us ? UnitSystem.UsCustomary : UnitSystem.Metric,
            View(judged, rules),
            compared is null ? null : View(compared, rules));
    }

    /// <summary>What a house is made of, in a line.</summary>
    public static string Summary(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        int loops = house.Zones.Sum(zone => zone.Loops.Count) + house.StandingLoops.Count;
        return $"{Quantity.Count(house.Zones.Count, "zone")}, {Quantity.Count(loops, "loop")}, " +
            Quantity.Count(house.Manifolds.Count, "manifold");
    }

    /// <summary>The zones of a house as they are named in pictures.</summary>
    public static IReadOnlyList<ZoneView> Zones(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return [.. house.Zones.Select(Zone)];
    }

    private static RunView View(Run run, IReadOnlyList<Rule> rules) => ViewBuilder.Run(
        run.ControllerName,
        run.Trace,
        Zones(run.House),
        run.Rules,
        rules,
        run.Expectations,
        run.Holds,
        run.Totals,
        [.. run.Script.Events.Select(e => (e.AtMs, Words(e, run.House)))],
        run.Passed);

    internal static ZoneView Zone(HouseZone zone) => new(
        zone.Label,
        $"{(zone.Gated ? "gated, " : "")}{(zone.Actuator.HasSwitch ? "end switch" : "timed")}, {Quantity.Count(zone.Loops.Count, "loop")}");

    /// <summary>Text from a file without the file's line ends, so that it wraps where it is shown.</summary>
    internal static string Flowing(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Words(ScriptEvent happened, House house)
    {
        string words = happened.Action.InWords(house);
        return happened.Note.Length == 0 ? words : $"{words} ({happened.Note})";
    }
}
