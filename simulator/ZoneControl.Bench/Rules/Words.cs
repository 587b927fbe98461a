using System.Numerics;

namespace ZoneControl.Bench.Rules;

/// <summary>Words for reasons: zones by name, times in seconds.</summary>
internal sealed class Words(Func<int, string> nameOf)
{
    /// <summary>One zone's name.</summary>
    public string Zone(int zone) => nameOf(zone);

    /// <summary>The zones of a mask: "Shop", "Shop and Loft", "Shop, Loft and Hall"; "no zone" for none.</summary>
    public string Zones(int mask)
    {
        var names = new List<string>();
        for (int rest = mask; rest != 0; rest &= rest - 1)
            names.Add(nameOf(BitOperations.TrailingZeroCount(rest)));
        return names.Count switch
        {
            0 => "no zone",
            1 => names[0],
            _ => string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1],
        };
    }

    /// <summary>A time in seconds: "12.5 s".</summary>
    public static string Seconds(long ms) => FormattableString.Invariant($"{ms / 1000.0:0.###} s");
}
