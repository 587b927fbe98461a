using System.Globalization;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Web.View;

/// <summary>Builds the view of a report from an audited capture.</summary>
public static class AuditViewBuilder
{
    /// <summary>The report on a capture.</summary>
    public static ReportView From(AuditResult audit)
    {
        ArgumentNullException.ThrowIfNull(audit);
        House house = audit.House;
        RunView run = ViewBuilder.Run(
            "captured outputs",
            audit.Picture,
            [.. house.Zones.Select(ReportBuilder.Zone)],
            [.. audit.Rules, audit.Wires],
            RuleBook.Rules,
            [],
            audit.Holds,
            audit.Estimate,
            [],
            audit.Passed);
        run = run with
        {
            Happenings = [.. run.Happenings.Concat(Told(audit)).OrderBy(happening => happening.Ms)],
        };
        return new ReportView(
            house.Name,
            ReportBuilder.Summary(house),
            audit.Map.Title.Length > 0 ? audit.Map.Title : $"Capture {Path.GetFileName(audit.Capture)}",
            ReportBuilder.Flowing(audit.Map.Text),
            audit.Map.Conditions.ClockStart,
            house.Units == DisplayUnits.Us ? UnitSystem.UsCustomary : UnitSystem.Metric,
            run,
            null)
        {
            Capture = View(audit),
        };
    }

    private static CaptureView View(AuditResult audit) => new(
        !audit.AnythingJudged && audit.Wires.Judgement != Judgement.Broken ? "NOT JUDGED" : audit.Passed ? "PASS" : "FAIL",
        Leading(audit),
        Grounds(audit),
        Facts(audit),
        [.. audit.Rules.Append(audit.Wires)
            .Where(rule => rule.Judgement == Judgement.NotJudged)
            .GroupBy(rule => rule.Why)
            .Select(same => (same.Key, string.Join(", ", same.Select(rule => rule.Rule))))],
        Estimate(audit));

    private static string Leading(AuditResult audit)
    {
        if (!audit.AnythingJudged)
            return "Nothing in this capture could be judged.";
        string[] broken = [.. audit.Rules.Append(audit.Wires).Where(rule => rule.Judgement == Judgement.Broken).Select(rule => rule.Rule)];
        if (broken.Length > 0)
            return $"Broken: {string.Join(", ", broken)}.";
        return audit.Rules.Any(rule => rule.Judgement == Judgement.NotJudged)
            ? "What could be judged was kept; the rest is not judged."
            : "Every rule that was called upon was kept.";
    }

    private static string Grounds(AuditResult audit)
    {
        string[] counts =
        [
            .. ((Judgement[])[Judgement.Broken, Judgement.Kept, Judgement.NotCalledUpon, Judgement.NotJudged])
                .Select(judgement => (judgement, Count: audit.Rules.Count(rule => rule.Judgement == judgement)))
                .Where(pair => pair.Count > 0)
                .Select(pair => $"{pair.Count} {Sayings.Word(pair.judgement)}"),
        ];
        return $"Rules: {string.Join(", ", counts)}; {WiredWords(audit.Wires)}; estimated deadhead "
            + Quantity.Duration(audit.Estimate.DeadheadS);
    }

    private static string WiredWords(RuleVerdict wires) => $"{wires.Rule}: {Sayings.Word(wires.Judgement)}";

    private static List<(string Name, string Value)> Facts(AuditResult audit)
    {
        string format = audit.Format switch
        {
            CaptureFormat.Vcd => "value change dump",
            CaptureFormat.Csv => "table",
            _ => "board's log",
        };
        var facts = new List<(string Name, string Value)>
        {
            ("Capture", $"{audit.Capture} ({format}), {Counted(audit.Bytes, "byte")}, {Counted(audit.Edges, audit.Format == CaptureFormat.Log ? "line" : "change")}"),
            ("Lasts", $"{Durations.InWords(audit.EndMs)}; times count from its first moment, {Number(audit.BeganMs)} ms in its own time"),
            ("Begins", audit.BeginsWithPowerUp
                ? "with a power-up"
                : "in the middle: what came before has the benefit of the doubt, and some rules are judged only later"),
            ("Channels", string.Join(", ", audit.Channels.Take(40).Select(pair => pair.Channel == pair.Signal ? pair.Channel : $"{pair.Channel} ({pair.Signal})"))
                + (audit.Channels.Count > 40 ? $" and {audit.Channels.Count - 40} more" : "")),
        };
        if (audit.Unused.Count > 0)
            facts.Add(("Not used", string.Join(", ", audit.Unused.Take(12)) + (audit.Unused.Count > 12 ? $" and {audit.Unused.Count - 12} more" : "")));
        if (audit.Glitches > 0)
            facts.Add(("Glitches", $"{Number(audit.Glitches)} left out"));
        if (audit.GapCount > 0)
            facts.Add(("Not judged", Gaps(audit)));
        if (audit.Stopped)
            facts.Add(("Stopped", "by hand: judged as far as it was read"));
        if (audit.PictureIsCut)
            facts.Add(("Picture", $"only the first {Durations.InWords(audit.Picture.EndMs)} are drawn: later there is too much; the verdict is on all of it"));
        return facts;
    }

    private static string Gaps(AuditResult audit)
    {
        var clock = new Clock(audit.Map.Conditions.ClockStart);
        IEnumerable<string> first = audit.Gaps.Take(3).Select(gap => $"{clock.Seconds(gap.FromMs)} to {clock.Seconds(gap.ToMs)} ({gap.Why})");
        return $"{Quantity.Count(audit.GapCount, "gap")}: {string.Join("; ", first)}" + (audit.GapCount > 3 ? "; ..." : "");
    }

    private static string Estimate(AuditResult audit)
    {
        string said = "Estimated from the captured outputs and the house file: sound actuators, a sound pump, water at "
            + $"{Quantity.Temperature(audit.Map.Conditions.WaterC, audit.House.Units == DisplayUnits.Us ? UnitSystem.UsCustomary : UnitSystem.Metric)}. "
            + "No measurement, and no part of the verdict.";
        return audit.EstimateGaveUpMs is { } ms
            ? $"{said} Ended after {Durations.InWords(ms)}: the outputs change too often."
            : said;
    }

    private static IEnumerable<Happening> Told(AuditResult audit)
    {
        foreach (CaptureNote note in audit.Notes)
            yield return new Happening(note.Ms, note.Text, note.IsAlarm);
        foreach (CaptureGap gap in audit.Gaps)
            yield return new Happening(gap.FromMs, $"not judged until {Durations.InWords(gap.ToMs)}: {gap.Why}", IsAlarm: false);
    }

    private static string Counted(long count, string what) => $"{Number(count)} {what}{(count == 1 ? "" : "s")}";

    private static string Number(long count) => count.ToString("#,0", CultureInfo.InvariantCulture);
}
