using System.Numerics;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>Capacities by what zones pass, for houses whose loops differ too much to be counted.</summary>
internal static class Capacities
{
    /// <summary>Units in the pump's minimum flow: fine enough to tell loops apart, coarse enough to read.</summary>
    private const int UnitsInMinimumFlow = 10;

    public static CapacityAdvice ByFlow(House house, HouseFlows flows, OpenSets sets)
    {
        double needed = house.Pump.MinimumFlowM3s.Value;
        double unit = needed / UnitsInMinimumFlow;
        flows.With(flows.AllZones);
        double[] loops = flows.LoopFlows();
        List<CapacityLine> lines = [];
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            double flow = loops.Where((_, i) => flows.Plant.Loops[i].Zone == zone).Sum();
            lines.Add(new CapacityLine(zone, flow, house.Zones[zone].Capacity.Value, Math.Max(1, (int)(flow / unit))));
        }

        House recounted = house with
        {
            Zones = [.. house.Zones.Select((zone, i) => zone with { Capacity = Setting.Given(lines[i].ByFlow) })],
        };
        int? least = new OpenSets(recounted, flows).LeastMinimumOpen(needed);
        return new CapacityAdvice(unit, lines, least)
        {
            LeastNow = sets.LeastMinimumOpen(needed),
            HelpersNow = sets.LeastMinimumOpen(needed) is { } now ? Helpers(WithOpen(house, now), flows) : null,
            HelpersThen = least is { } open ? Helpers(WithOpen(recounted, open), flows) : null,
        };
    }

    /// <summary>Companions that calls open, each zone calling alone, all zones together.</summary>
    private static int Helpers(House house, HouseFlows flows)
    {
        var sets = new OpenSets(house, flows);
        return Enumerable.Range(0, house.Zones.Count).Sum(zone => BitOperations.PopCount((uint)sets.OpenedFor(zone)) - 1);
    }

    private static House WithOpen(House house, int open) => house with { Controller = house.Controller with { MinimumOpen = open } };
}
