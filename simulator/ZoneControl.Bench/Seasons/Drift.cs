using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>One measurement of a zone's valves opening.</summary>
/// <param name="Date">The day, yyyy-MM-dd.</param>
/// <param name="Seconds">From energised to the end switch, or to fully open by a watch, s.</param>
/// <param name="BySwitch">Whether the end switch told it.</param>
public sealed record OpeningTime(string Date, double Seconds, bool BySwitch)
{
    /// <summary>False for a time that cannot be: nothing is reckoned from it.</summary>
    public bool Counts { get; init; } = true;
}

/// <summary>How a zone's opening time went over the years.</summary>
/// <param name="Zone">Zone number, from 0.</param>
/// <param name="Times">Measurements, oldest first, all of one kind; possibly none.</param>
/// <param name="WorstS">Worst opening time by the house file, s.</param>
/// <param name="Judged">The last one held against the house file; null without one.</param>
public sealed record ZoneDrift(int Zone, IReadOnlyList<OpeningTime> Times, double WorstS, Finding? Judged)
{
    /// <summary>A valve that takes this many times as long as at first is getting slow (common practice).</summary>
    public const double SlowTimes = 1.15;

    /// <summary>The first time that counts; null without one.</summary>
    public OpeningTime? First => Times.FirstOrDefault(time => time.Counts);

    /// <summary>The last time over the first that counts; null with fewer than two measurements or a last one that does not count.</summary>
    public double? Ratio => First is { Seconds: > 0 } first && Times[^1].Counts && first != Times[^1] ? Times[^1].Seconds / first.Seconds : null;

    /// <summary>The last time cannot be.</summary>
    public bool IsImpossible => Times.Count > 0 && !Times[^1].Counts;

    /// <summary>It takes so long, or its time is so impossible, that it is a fault.</summary>
    public bool IsFault => Judged?.Kind == FindingKind.Fault;

    /// <summary>It takes longer than the house file says.</summary>
    public bool IsTooSlow => Judged is { Kind: not FindingKind.Fine };

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
    /// Each zone's times, in the house file's order, from the records that are <see cref="Telling"/>: by its end switch and by a
    /// person's watch apart, for they are not the same moment. A zone that was never measured has one line without times.
    /// </summary>
    public static IReadOnlyList<ZoneDrift> Of(House house, IReadOnlyList<HistoryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(entries);
        IReadOnlyList<HistoryEntry> telling = Telling(entries);
        return [.. house.Zones.SelectMany((zone, i) => Lines(zone, i, telling))];
    }

    private static IEnumerable<ZoneDrift> Lines(HouseZone zone, int i, IReadOnlyList<HistoryEntry> entries)
    {
        (string Date, ZoneRecord Zone)[] records =
            [.. entries.SelectMany(entry => entry.Record.Zones.Where(z => z.Zone == zone.Name).Select(z => (entry.Record.Date, z)))];
        OpeningTime[] bySwitch = [.. records.Where(r => r.Zone.SwitchMadeS is not null && zone.Actuator.HasSwitch)
            .Select(r => new OpeningTime(r.Date, r.Zone.SwitchMadeS!.Value, true) { Counts = TimeJudge.Counts(zone.Actuator, r.Zone, true) })];
        OpeningTime[] byWatch = [.. records.Where(r => r.Zone.OpenedS is not null)
            .Select(r => new OpeningTime(r.Date, r.Zone.OpenedS!.Value, false) { Counts = TimeJudge.Counts(zone.Actuator, r.Zone, false) })];
        OpeningTime[][] kinds = [.. new[] { bySwitch, byWatch }.Where(times => times.Length > 0)];
        return (kinds.Length > 0 ? kinds : [[]]).Select(times => new ZoneDrift(
            i, times, zone.Actuator.OpeningTime.TotalSeconds,
            times.Length > 0 ? TimeJudge.Opening(zone, LastOf(times[0].BySwitch), times[0].BySwitch) : null));
        ZoneRecord LastOf(bool bySwitch) => records.Last(r => (bySwitch ? r.Zone.SwitchMadeS : r.Zone.OpenedS) is not null).Zone;
    }
}
