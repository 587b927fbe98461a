using System.Numerics;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>
/// Sets of zones for the pump to run with: each reaches minimum open, and between them they cover every zone that can be
/// opened. Minimum open is reached with zones that have shown themselves to open wherever there are enough of them, so that a
/// valve that only time vouches for never carries the pump alone.
/// </summary>
internal static class TrialSets
{
    public static IReadOnlyList<int> Of(House house, IReadOnlyList<Stroke> strokes)
    {
        ArgumentNullException.ThrowIfNull(house);
        int sound = Mask(strokes, Sound);
        int usable = Mask(strokes, stroke => stroke.NotTried.Length == 0 && !stroke.BrokenOff && !Failed(house, stroke));
        int left = usable;
        var sets = new List<int>();
        while (left != 0)
        {
            int zone = BitOperations.TrailingZeroCount(left);
            int set = Filled(house, 1 << zone, sound, usable, left);
            left &= ~(set | (1 << zone));
            if (set != 0)
                sets.Add(set);
        }

        return sets;
    }

    /// <summary>A set with that zone; 0 when minimum open cannot be reached with it.</summary>
    private static int Filled(House house, int zone, int sound, int usable, int left)
    {
        int set = zone;
        // Zones not covered yet come first, then the others, those that are known to open before those that are not.
        foreach (int candidates in (int[])[sound & left, sound, usable])
        {
            for (int i = 0; i < house.Zones.Count; i++)
            {
                int known = candidates == usable ? set : set & sound;
                if (Capacity(house, known) >= house.Controller.MinimumOpen)
                    return set;
                if ((candidates & (1 << i)) != 0)
                    set |= 1 << i;
            }
        }

        return Capacity(house, set) >= house.Controller.MinimumOpen ? set : 0;
    }

    /// <summary>A switch or a person has shown that it opens.</summary>
    private static bool Sound(Stroke stroke) => stroke.NotTried.Length == 0 && !stroke.BrokenOff
        && (stroke.SwitchMadeMs is not null || stroke.Seen.Moved is { } moved && (moved & (1 << stroke.Zone)) != 0);

    /// <summary>A switch or a person has shown that it does not.</summary>
    private static bool Failed(House house, Stroke stroke) => !Sound(stroke)
        && (house.Zones[stroke.Zone].Actuator.HasSwitch || stroke.Seen.Moved is not null);

    private static int Capacity(House house, int zones) => Choosing.OpenSets.CapacityOf(house, zones);

    private static int Mask(IReadOnlyList<Stroke> strokes, Func<Stroke, bool> holds) =>
        strokes.Sum(stroke => holds(stroke) ? 1 << stroke.Zone : 0);
}
