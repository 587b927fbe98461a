using System.Numerics;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>
/// The pump's operating point with every set of zones that can be open: which of them passes least, and what minimum open
/// has to be so that none is too little.
/// </summary>
/// <remarks>Capacities count loops or whatever the file says; water decides. So every set is solved, up to 2¹⁶ of them.</remarks>
public sealed class OpenSets
{
    private readonly House _house;
    private readonly double[] _flow;
    private readonly int[] _capacity;

    /// <summary>Solves every set of zones.</summary>
    public OpenSets(House house, HouseFlows flows)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(flows);
        _house = house;
        int sets = 1 << house.Zones.Count;
        _flow = new double[sets];
        _capacity = new int[sets];
        for (int i = 0; i < sets; i++)
        {
            int zones = i ^ (i >> 1); // Gray's order: one zone changes a step, so each search starts near its end
            _flow[zones] = flows.With(zones).PumpFlowM3s;
            _capacity[zones] = CapacityOf(house, zones);
        }
    }

    /// <summary>Capacity of a set of zones, what always stands open included.</summary>
    public static int CapacityOf(House house, int zones)
    {
        int sum = house.StandingCapacity;
        for (int zone = 0; zone < house.Zones.Count; zone++)
            sum += ((zones >> zone) & 1) * house.Zones[zone].Capacity.Value;
        return sum;
    }

    /// <summary>The set that passes least of all that reach a capacity; null when none reaches it.</summary>
    public int? WorstReaching(int capacity)
    {
        int? worst = null;
        for (int zones = 0; zones < _flow.Length; zones++)
        {
            // Of sets that pass the same, the one with fewer zones is the one to name.
            if (_capacity[zones] >= capacity && (worst is not { } so || IsWorse(zones, so)))
                worst = zones;
        }

        return worst;
    }

    /// <summary>
    /// The least minimum open with which every set that reaches it passes a flow, m³/s; null when not even all zones do.
    /// </summary>
    public int? LeastMinimumOpen(double flowM3s)
    {
        int most = 0;
        for (int zones = 0; zones < _flow.Length; zones++)
        {
            if (_flow[zones] < flowM3s)
                most = Math.Max(most, _capacity[zones]);
        }

        return most >= _capacity[^1] ? null : most + 1;
    }

    /// <summary>
    /// The zones that the controller opens when one calls alone: that zone, and companions in their order until minimum open
    /// is reached (OPEN-COMPANION).
    /// </summary>
    public int OpenedFor(int zone)
    {
        int open = 1 << zone;
        foreach (int companion in _house.Controller.Companions.Value)
        {
            if (_capacity[open] >= _house.Controller.MinimumOpen)
                break;
            open |= 1 << companion;
        }

        return open;
    }

    /// <summary>Flow through the pump with a set of zones open, m³/s.</summary>
    public double Flow(int zones) => _flow[zones];

    private bool IsWorse(int zones, int than) => _flow[zones] != _flow[than]
        ? _flow[zones] < _flow[than]
        : BitOperations.PopCount((uint)zones) < BitOperations.PopCount((uint)than);
}
