using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>What the pressures on record say of the circuit.</summary>
public static class PressureDrift
{
    /// <summary>Least pressure of a cold circuit that is common, bar (common practice; the heat source's maker has the last word).</summary>
    public const double LeastBar = 1.0;

    /// <summary>Most pressure of a cold circuit that is common, bar (common practice).</summary>
    public const double MostBar = 1.5;

    /// <summary>A fall from one record to the next that wants a look, bar (common practice).</summary>
    public const double FallBar = 0.3;

    /// <summary>The last pressure held against the one before it and against what is common; nothing without one.</summary>
    public static IEnumerable<Finding> Of(House house, IReadOnlyList<HistoryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(entries);
        SeasonRecord[] read = [.. entries.Select(entry => entry.Record).Where(record => record.PressureBar is not null)];
        if (read.Length == 0)
            yield break;
        double last = read[^1].PressureBar!.Value;
        string Words(double bar) => Measured.Pressure(bar * 1e5, house.Units);
        if (read.Length > 1 && read[^2].PressureBar is { } before && before - last >= FallBar - 1e-9)
        {
            yield return new Finding("pressure", FindingKind.Advice,
                $"it fell from {Words(before)} on {read[^2].Date} to {Words(last)} on {read[^1].Date}, by {Words(before - last)}",
                $"a fall of {Words(FallBar)} or more from one record to the next (common practice)",
                "look for a leak, for air that was let out and not made up, and at the pre-charge of the expansion vessel")
            {
                Value = last,
                Unit = "bar",
            };
        }

        if (last < LeastBar || last > 2 * MostBar)
        {
            yield return new Finding("pressure", FindingKind.Advice, $"{Words(last)} on {read[^1].Date}",
                $"commonly {Words(LeastBar)} to {Words(MostBar)}, cold and still (common practice); the heat source's maker has the last word",
                last < LeastBar ? "top up, and see whether it holds" : "let water out, and look at the expansion vessel")
            {
                Value = last,
                Unit = "bar",
            };
        }
    }
}
