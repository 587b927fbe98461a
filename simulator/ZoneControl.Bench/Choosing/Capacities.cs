using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>Capacities by what zones pass, for houses whose loops differ too much to be counted.</summary>
internal static class Capacities
{
    /// <summary>Units in the pump's minimum flow: fine enough to tell loops apart, coarse enough to read.</summary>
    private const int UnitsInMinimumFlow = 10;

    public static CapacityAdvice ByFlow(House house, HouseFlows flows)
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
        return new CapacityAdvice(unit, lines, new OpenSets(recounted, flows).LeastMinimumOpen(house.Pump.MinimumFlowM3s.Value));
    }
}
