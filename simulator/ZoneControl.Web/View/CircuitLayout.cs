using ZoneControl.Bench.Houses;

namespace ZoneControl.Web.View;

/// <summary>A column of the water circuit: one zone's loops, or the standing loops of a manifold.</summary>
/// <param name="Zone">The zone from 0; -1 for loops without an actuator.</param>
/// <param name="Name">Its name.</param>
/// <param name="Loops">How many loops it stands for.</param>
/// <param name="X">Its middle, drawing units.</param>
public sealed record CircuitColumn(int Zone, string Name, int Loops, int X);

/// <summary>A manifold above and below its columns.</summary>
/// <param name="Label">Its name.</param>
/// <param name="Left">Left end of its bars.</param>
/// <param name="Right">Right end of its bars.</param>
public sealed record CircuitManifold(string Label, int Left, int Right);

/// <summary>Where everything stands in the drawing of the water circuit, in drawing units.</summary>
/// <param name="Width">Width of the drawing.</param>
/// <param name="Columns">Columns from left to right.</param>
/// <param name="Manifolds">Manifolds from left to right.</param>
public sealed record CircuitLayout(int Width, IReadOnlyList<CircuitColumn> Columns, IReadOnlyList<CircuitManifold> Manifolds)
{
    /// <summary>Height of the supply main.</summary>
    public const int SupplyY = 92;

    /// <summary>Height of the return main.</summary>
    public const int ReturnY = 330;

    /// <summary>Height of the drawing.</summary>
    public const int Height = 412;

    private const int ColumnWidth = 112;
    private const int FirstX = 262;
    private const int Gap = 26;

    /// <summary>The layout for a house. A zone with loops on several manifolds stands with its first one.</summary>
    public static CircuitLayout For(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        var columns = new List<CircuitColumn>();
        var manifolds = new List<CircuitManifold>();
        int left = FirstX;
        for (int m = 0; m < house.Manifolds.Count; m++)
        {
            int start = left;
            void Add(int zone, string name, int loops)
            {
                columns.Add(new CircuitColumn(zone, name, loops, left + ColumnWidth / 2));
                left += ColumnWidth;
            }

            for (int zone = 0; zone < house.Zones.Count; zone++)
            {
                if (house.Zones[zone].Loops[0].Manifold == m)
                    Add(zone, house.Zones[zone].Label, house.Zones[zone].Loops.Count);
            }

            int standing = house.StandingLoops.Count(loop => loop.Manifold == m);
            if (standing > 0)
                Add(-1, "always open", standing);
            if (left == start)
                left += ColumnWidth / 2;
            manifolds.Add(new CircuitManifold(house.Manifolds[m].Label, start + 6, left - 6));
            left += Gap;
        }

        return new CircuitLayout(left - Gap + 12, columns, manifolds);
    }
}
