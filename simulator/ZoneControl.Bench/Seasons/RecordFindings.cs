using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Seasons;

/// <summary>A measured time offered back as a setting.</summary>
/// <param name="Actuator">Name of the actuator in the house file.</param>
/// <param name="Key">Key in its table.</param>
/// <param name="Value">Value as the file writes it.</param>
/// <param name="Now">Value in force.</param>
public sealed record MeasuredSetting(string Actuator, string Key, string Value, string Now);

/// <summary>A record held against the house file.</summary>
public static class RecordFindings
{
    private static readonly TimeSpan _step = TimeSpan.FromSeconds(5);

    /// <summary>What the record says of the house file.</summary>
    public static IReadOnlyList<Finding> Of(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        var findings = new List<Finding>();
        foreach (ZoneRecord measured in record.Zones)
        {
            int zone = house.ZoneIndex(measured.Zone);
            if (zone < 0)
            {
                findings.Add(new Finding("record", FindingKind.Advice, $"the record knows a zone \"{measured.Zone}\" that the house file lacks",
                    "record and house file must mean the same house", "see whether the record is this house's"));
                continue;
            }

            findings.AddRange(Zone(house.Zones[zone], measured));
        }

        foreach (HouseZone missing in house.Zones.Where(zone => record.Zones.All(measured => measured.Zone != zone.Name)))
        {
            findings.Add(new Finding("record", FindingKind.Advice, $"{missing.Label} is not in the record",
                "every zone is stroked at the start of a season", "stroke it and write it down"));
        }

        findings.AddRange(Pressure(house, record));
        // A slow valve that the run has named is judged above already.
        IEnumerable<FaultRecord> others = record.Faults.Where(fault => findings.TrueForAll(finding => finding.Says != fault.Says));
        findings.AddRange(others.ToArray().Select(fault => new Finding("commissioning", FindingKind.Fault, fault.Says.TrimEnd('.'),
            $"commissioning run of {record.Date}, {record.Source}", fault.Change.TrimEnd('.'))));
        return findings;
    }

    /// <summary>How many faults a record holds, those that its times show among them.</summary>
    public static int Faults(House house, SeasonRecord record) => Of(house, record).Count(finding => finding.Kind == FindingKind.Fault);

    /// <summary>Every measured time of the house's zones, held against the house file.</summary>
    public static IReadOnlyList<Finding> Judged(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        return
        [
            .. record.Zones.Where(measured => house.ZoneIndex(measured.Zone) >= 0)
                .SelectMany(measured => TimeJudge.Of(house.Zones[house.ZoneIndex(measured.Zone)], measured)),
        ];
    }

    /// <summary>Whether nothing tells when a zone's valves were open.</summary>
    public static bool IsUnmeasured(ZoneRecord measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        return measured.OpenedS is null && measured.SwitchMadeS is null;
    }

    /// <summary>What a record by hand lacks, one sentence each: a season's start wants every zone's time, both ends of it the pressure.</summary>
    public static IReadOnlyList<string> Missing(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        if (record.Source != SeasonRecord.ByHand)
            return [];
        var missing = new List<string>();
        int unmeasured = house.Zones
            .Select((zone, i) => !zone.Gated && record.Zones.Where(m => m.Zone == zone.Name).All(IsUnmeasured) ? 1 << i : 0)
            .Sum();
        if (record.Season == "start" && unmeasured != 0)
            missing.Add($"Not measured: how long the valves of {house.ZoneLabels(unmeasured)} take to open.");
        if (record.PressureBar is null)
            missing.Add("Not written down: the pressure of the cold circuit.");
        return missing;
    }

    /// <summary>
    /// Opening times as measured, the slowest zone of each actuator that is no fault, rounded up to 5 s. An end switch makes
    /// before the end of the stroke; the rest is reckoned from the travel at which it makes.
    /// </summary>
    public static IReadOnlyList<MeasuredSetting> Settings(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        var settings = new List<MeasuredSetting>();
        foreach (IGrouping<string, HouseZone> kind in house.Zones.GroupBy(zone => zone.Actuator.Name))
        {
            HouseActuator actuator = kind.First().Actuator;
            (TimeSpan Opened, bool Fault)[] times = [.. kind.SelectMany(zone => Opened(zone, record))];
            TimeSpan opened = times.Where(time => !time.Fault).Select(time => time.Opened).DefaultIfEmpty(TimeSpan.Zero).Max();
            // Beside a sick one the others are no reason to wait less.
            bool sick = times.Any(time => time.Fault);
            if (opened <= TimeSpan.Zero || (sick && opened <= actuator.OpeningTime))
                continue;
            if (TimeJudge.Within(opened, actuator.OpeningTime) && TimeJudge.Within(actuator.OpeningTime, opened))
                continue;
            if (Rounded(opened) != actuator.OpeningTime)
            {
                settings.Add(new MeasuredSetting(
                    actuator.Name, "opening_time", Durations.InWords(Rounded(opened)), Durations.InWords(actuator.OpeningTime)));
            }
        }

        return settings;
    }

    /// <summary>Zones too slow for the house file, a sentence each: what taking over their times would do to the others.</summary>
    public static IReadOnlyList<string> SecondChoices(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        return
        [
            .. house.Zones.SelectMany(zone => Opened(zone, record).Where(time => time.Fault).Select(time =>
            {
                HouseActuator slow = zone.Actuator with { OpeningTime = Rounded(time.Opened) };
                int others = house.Zones.Select((other, i) => other != zone && other.Actuator.Name == slow.Name ? 1 << i : 0).Sum();
                return $"{zone.Label}: renew its actuator. Only if that cannot be: opening_time = \"{Durations.InWords(slow.OpeningTime)}\" for "
                    + $"actuator \"{slow.Name}\"" + (others == 0 ? "."
                        : $"; then {house.ZoneLabels(others)} would wait {Durations.InWords(Derivations.ProofTime(slow).Value)} for proof as well. "
                            + "An [[actuator]] of its own for this zone spares them that.");
            })),
        ];
    }

    /// <summary>The pressure on the record held against what is common, as the history does.</summary>
    public static IReadOnlyList<Finding> Pressure(House house, SeasonRecord record) => [.. PressureDrift.Of(house, [new HistoryEntry("", record)])];

    /// <summary>When a zone's valves were fully open, where a time that can be tells it, and whether it is a fault.</summary>
    private static IEnumerable<(TimeSpan Opened, bool Fault)> Opened(HouseZone zone, SeasonRecord record)
    {
        foreach (ZoneRecord measured in record.Zones.Where(measured => measured.Zone == zone.Name))
        {
            if (TimeJudge.FullyOpen(zone.Actuator, measured) is { } opened)
                yield return (opened, opened > zone.ProofTime.Value);
        }
    }

    private static TimeSpan Rounded(TimeSpan time) => _step * Math.Ceiling(Math.Round(time / _step, 6));

    private static IEnumerable<Finding> Zone(HouseZone zone, ZoneRecord measured)
    {
        if (measured.Actuator.Length > 0 && measured.Actuator != zone.Actuator.Name)
        {
            yield return new Finding("record", FindingKind.Advice,
                $"{zone.Label} was measured with actuator \"{measured.Actuator}\"; the house file says \"{zone.Actuator.Name}\"",
                "times belong to the actuator they were measured on", "measure again, or mend the house file");
        }

        if (!zone.Gated && measured.NotTried.Length == 0 && IsUnmeasured(measured))
        {
            yield return new Finding("record", FindingKind.Advice, $"{zone.Label} has no opening time in the record",
                "every zone is stroked at the start of a season", "stroke it and write its time down");
        }

        foreach (Finding judged in TimeJudge.Of(zone, measured))
            yield return judged;
    }
}
