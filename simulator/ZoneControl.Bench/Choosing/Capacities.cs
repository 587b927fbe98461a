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
        double unit = house.Pump.MinimumFlowM3s.Value / UnitsInMinimumFlow;
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
        int? least = new OpenSets(recounted, flows).LeastMinimumOpen(house.Pump.MinimumFlowM3s.Value);
        House then = least is { } open ? recounted with { Controller = recounted.Controller with { MinimumOpen = open } } : recounted;
        return new CapacityAdvice(unit, lines, least)
        {
            HelpersNow = Helpers(house, sets),
            HelpersThen = least is null ? null : Helpers(then, new OpenSets(then, flows)),
        };
    }

    /// <summary>Companions that calls open, each zone calling alone, all zones together.</summary>
    private static int Helpers(House house, OpenSets sets) =>
        Enumerable.Range(0, house.Zones.Count).Sum(zone => BitOperations.PopCount((uint)sets.OpenedFor(zone)) - 1);
}
