using ZoneControl.Bench.Boards;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>Units in which a house's owner reads results.</summary>
public enum DisplayUnits
{
    /// <summary>Metres, litres a minute, degrees Celsius.</summary>
    Si,

    /// <summary>Feet, US gallons a minute, degrees Fahrenheit.</summary>
    Us,
}

/// <summary>
/// A house as its file describes it, every default filled in. Made by <see cref="HouseFile"/>, which refuses what cannot be.
/// </summary>
public sealed record House
{
    /// <summary>Name of the file it came from, without folders; "" when made in code.</summary>
    public string FileName { get; init; } = "";

    /// <summary>Name for people.</summary>
    public required string Name { get; init; }

    /// <summary>A few sentences about it; possibly "".</summary>
    public string Text { get; init; } = "";

    /// <summary>Units for results.</summary>
    public DisplayUnits Units { get; init; }

    /// <summary>What circulates.</summary>
    public HouseFluid Fluid { get; init; }

    /// <summary>Share of the fluid's mass that is propylene glycol, 0 to 0.6; 0 for water.</summary>
    public double GlycolShare { get; init; }

    /// <summary>The circulator.</summary>
    public required HousePump Pump { get; init; }

    /// <summary>Piping from the pump to the manifolds and back.</summary>
    public required PipeDescription Mains { get; init; }

    /// <summary>Kv of a heat exchanger in the mains, m³/h at 1 bar; null without one.</summary>
    public double? ExchangerKv { get; init; }

    /// <summary>Manifolds in the file's order; at least one.</summary>
    public required IReadOnlyList<HouseManifold> Manifolds { get; init; }

    /// <summary>Spring bypass; null without one.</summary>
    public HouseBypass? Bypass { get; init; }

    /// <summary>Bypass that always stands open; null without one.</summary>
    public HouseFixedBypass? FixedBypass { get; init; }

    /// <summary>Zones in the file's order, which is the order of bits in every mask; 1 to 16.</summary>
    public required IReadOnlyList<HouseZone> Zones { get; init; }

    /// <summary>Loops without an actuator, always open.</summary>
    public IReadOnlyList<HouseLoop> StandingLoops { get; init; } = [];

    /// <summary>The actuators' transformer; null when the file says nothing of it, and loads are not watched.</summary>
    public HouseTransformer? Transformer { get; init; }

    /// <summary>What the controller is told.</summary>
    public required HouseController Controller { get; init; }

    /// <summary>Contacts fitted beside thermostats and end switches.</summary>
    public required HouseContacts Contacts { get; init; }

    /// <summary>
    /// Rooms, heat source and weather; null for a house made in code, which <see cref="HeatFromHouse"/> takes to be of common
    /// practice.
    /// </summary>
    public HouseHeat? Heat { get; init; }

    /// <summary>Capacity that is always open: one a standing loop, and what the file lets the bypasses count as.</summary>
    public int StandingCapacity => StandingLoops.Count + (Bypass?.CountsAs ?? 0) + (FixedBypass?.CountsAs ?? 0);

    /// <summary>The board that the controller runs on.</summary>
    public HouseBoard Board { get; init; } = new();

    /// <summary>Zones whose valves an existing panel drives, one bit each.</summary>
    public int GatedZones => Zones.Select((zone, i) => zone.Gated ? 1 << i : 0).Sum();

    /// <summary>Zone number of a name, from 0; -1 for an unknown name.</summary>
    public int ZoneIndex(string name)
    {
        for (int zone = 0; zone < Zones.Count; zone++)
        {
            if (Zones[zone].Name == name)
                return zone;
        }

        return -1;
    }

    /// <summary>The zones in a mask as people call them, in the file's order: "Bath", "Shop and Bath"; "none" for no zone.</summary>
    public string ZoneLabels(int mask)
    {
        string[] labels = [.. Zones.Where((_, zone) => (mask & (1 << zone)) != 0).Select(zone => zone.Label)];
        return labels.Length switch
        {
            0 => "none",
            1 => labels[0],
            _ => $"{string.Join(", ", labels[..^1])} and {labels[^1]}",
        };
    }
}

/// <summary>What circulates.</summary>
public enum HouseFluid
{
    /// <summary>Water.</summary>
    Water,

    /// <summary>Water with propylene glycol.</summary>
    Glycol,
}
