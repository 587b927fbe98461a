using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>What a commissioning run will do when every valve shows itself open.</summary>
public static class CommissioningPlan
{
    /// <summary>Sets of zones for the pump to run with, one bit a zone.</summary>
    public static IReadOnlyList<int> Sets(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return TrialSets.Of(house,
        [
            .. house.Zones.Select((zone, i) => zone.Gated
                ? new Stroke { Zone = i, NotTried = "gated" }
                : new Stroke { Zone = i, SwitchMadeMs = 1, Seen = StrokeSighting.None with { Moved = 1 << i } }),
        ]);
    }
}
