using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>One measurement of a zone's valves opening.</summary>
/// <param name="Date">The day, yyyy-MM-dd.</param>
/// <param name="Seconds">From energised to the end switch, or to fully open by a watch, s.</param>
/// <param name="BySwitch">Whether the end switch told it.</param>
public sealed record OpeningTime(string Date, double Seconds, bool BySwitch);

/// <summary>How a zone's opening time went over the years.</summary>
/// <param name="Zone">Zone number, from 0.</param>
/// <param name="Times">Measurements, oldest first, all of one kind.</param>
/// <param name="WorstS">Worst opening time by the house file, s.</param>
public sealed record ZoneDrift(int Zone, IReadOnlyList<OpeningTime> Times, double WorstS)
{
    /// <summary>A valve that takes this many times as long as at first is getting slow (common practice).</summary>
    public const double SlowTimes = 1.15;

    /// <summary>A watch and a scan tell no finer, s.</summary>
    public const double FineS = 3;

    /// <summary>The last time over the first; null with fewer than two measurements.</summary>
    public double? Ratio => Times.Count >= 2 && Times[0].Seconds > 0 ? Times[^1].Seconds / Times[0].Seconds : null;

    /// <summary>It takes longer than the house file allows.</summary>
    public bool IsTooSlow => Times.Count > 0 && Times[^1].Seconds > WorstS + FineS;

    /// <summary>It is getting slow.</summary>
    public bool IsSlowing => Ratio is >= SlowTimes;
}

/// <summary>Drift of opening times over a history.</summary>
public static class Drift
{
    /// <summary>
    /// The records that tell of the house itself; those of virtual pins, which tell of its model, only where there are no others.
    /// </summary>
    public static IReadOnlyList<HistoryEntry> Telling(IReadOnlyList<HistoryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        HistoryEntry[] real = [.. entries.Where(entry => entry.Record.Source != SeasonRecord.Virtual)];
        return real.Length > 0 ? real : entries;
    }

    /// <summary>
    /// Each zone's times, from the records that are <see cref="Telling"/>: those of end switches where there are any, else those of a person's watch (two-wire valves report
    /// nothing themselves).
    /// </summary>
    public static IReadOnlyList<ZoneDrift> Of(House house, IReadOnlyList<HistoryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(entries);
        return
        [
            .. house.Zones.Select((zone, i) =>
            {
                (string Date, ZoneRecord Zone)[] records =
                [
                    .. Telling(entries).SelectMany(entry => entry.Record.Zones.Where(z => z.Zone == zone.Name).Select(z => (entry.Record.Date, z))),
                ];
                OpeningTime[] bySwitch = [.. records.Where(r => r.Zone.SwitchMadeS is not null)
                    .Select(r => new OpeningTime(r.Date, r.Zone.SwitchMadeS!.Value, true))];
                OpeningTime[] byWatch = [.. records.Where(r => r.Zone.OpenedS is not null)
                    .Select(r => new OpeningTime(r.Date, r.Zone.OpenedS!.Value, false))];
                return new ZoneDrift(i, bySwitch.Length > 0 ? bySwitch : byWatch, zone.Actuator.OpeningTime.TotalSeconds);
            }),
        ];
    }
}
