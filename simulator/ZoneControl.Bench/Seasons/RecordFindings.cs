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
    private static readonly TimeSpan _fine = TimeSpan.FromSeconds(ZoneDrift.FineS);

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

        findings.AddRange(record.Faults.Select(fault => new Finding("commissioning", FindingKind.Fault, fault.Says.TrimEnd('.'),
            $"commissioning run of {record.Date}, {record.Source}", fault.Change.TrimEnd('.'))));
        return findings;
    }

    /// <summary>
    /// Opening times as measured, the slowest zone of each actuator, rounded up to 5 s. An end switch makes before the end of
    /// the stroke; the rest is reckoned from the travel at which it makes.
    /// </summary>
    public static IReadOnlyList<MeasuredSetting> Settings(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        var settings = new List<MeasuredSetting>();
        foreach (IGrouping<string, HouseZone> kind in house.Zones.GroupBy(zone => zone.Actuator.Name))
        {
            HouseActuator actuator = kind.First().Actuator;
            TimeSpan? worst = kind
                .Select(zone => record.Zones.FirstOrDefault(measured => measured.Zone == zone.Name))
                .Select(measured => measured is null ? null : FullyOpen(actuator, measured))
                .Max();
            if (worst is not { } opened || opened <= TimeSpan.Zero)
                continue;
            if ((opened - actuator.OpeningTime).Duration() <= _fine)
                continue;
            TimeSpan rounded = _step * Math.Ceiling(Math.Round(opened / _step, 6));
            if (rounded != actuator.OpeningTime)
            {
                settings.Add(new MeasuredSetting(
                    actuator.Name, "opening_time", Durations.InWords(rounded), Durations.InWords(actuator.OpeningTime)));
            }
        }

        return settings;
    }

    private static TimeSpan? FullyOpen(HouseActuator actuator, ZoneRecord measured)
    {
        if (measured.OpenedS is { } opened)
            return TimeSpan.FromSeconds(opened);
        if (measured.SwitchMadeS is not { } made || actuator.SwitchAt is not { } at)
            return null;
        double dead = Math.Min(actuator.DeadTime.Value.TotalSeconds, made);
        return TimeSpan.FromSeconds(dead + ((made - dead) / at.Value));
    }

    private static IEnumerable<Finding> Zone(HouseZone zone, ZoneRecord measured)
    {
        if (measured.Actuator.Length > 0 && measured.Actuator != zone.Actuator.Name)
        {
            yield return new Finding("record", FindingKind.Advice,
                $"{zone.Label} was measured with actuator \"{measured.Actuator}\"; the house file says \"{zone.Actuator.Name}\"",
                "times belong to the actuator they were measured on", "measure again, or mend the house file");
        }

        if (measured.SwitchMadeS is { } made && zone.Actuator.HasSwitch)
            yield return Switch(zone, TimeSpan.FromSeconds(made));
        if (measured.OpenedS is { } opened)
            yield return Opened(zone, TimeSpan.FromSeconds(opened));
        if (measured.ClosedS is { } closed && TimeSpan.FromSeconds(closed) > zone.ClosingTime.Value)
        {
            yield return new Finding("closing time", FindingKind.Advice,
                $"{zone.Label} took {Durations.InWords(TimeSpan.FromSeconds(closed))} to shut; it counts as shut after {Durations.InWords(zone.ClosingTime.Value)}",
                "VALVE-STUCK", $"closing_time = \"{Durations.InWords(TimeSpan.FromSeconds(closed))}\" for {zone.Actuator.Name}")
            {
                Value = closed,
                Unit = "s",
            };
        }
    }

    private static Finding Switch(HouseZone zone, TimeSpan made)
    {
        (FindingKind kind, string change) = made switch
        {
            _ when made < zone.SwitchMinTime.Value => (FindingKind.Fault,
                $"it would never be believed: make switch_min_time less than {Durations.InWords(made)}, or look why it makes so soon"),
            _ when made > zone.SwitchLimit.Value => (FindingKind.Fault, "it would always be late: renew the actuator, or give it a longer opening_time"),
            _ when made > zone.Actuator.OpeningTime + _fine => (FindingKind.Advice, "it is slower than its worst time: renew it, or give it a longer opening_time"),
            _ => (FindingKind.Fine, ""),
        };
        return new Finding("end switch", kind,
            $"{zone.Label}: made after {Durations.InWords(made)}; believed from {Durations.InWords(zone.SwitchMinTime.Value)} on, late after "
                + Durations.InWords(zone.SwitchLimit.Value),
            "VALVE-EARLY, VALVE-LATE", change)
        {
            Value = made.TotalSeconds,
            Unit = "s",
        };
    }

    private static Finding Opened(HouseZone zone, TimeSpan opened)
    {
        (FindingKind kind, string change) = opened switch
        {
            _ when opened > zone.ProofTime.Value => (FindingKind.Fault,
                "it counts as open before it is: the pump may start against it. Give its actuator the longer opening_time"),
            _ when opened > zone.Actuator.OpeningTime + _fine => (FindingKind.Advice, "give its actuator the longer opening_time"),
            _ => (FindingKind.Fine, ""),
        };
        return new Finding("opening time", kind,
            $"{zone.Label}: fully open after {Durations.InWords(opened)}; by time alone it counts as open after {Durations.InWords(zone.ProofTime.Value)}",
            "PUMP-PROOF", change)
        {
            Value = opened.TotalSeconds,
            Unit = "s",
        };
    }
}
