using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>The sets of open zones worth showing: what each call alone opens, the worst that may be, and all.</summary>
internal static class SetTable
{
    public static IReadOnlyList<SetLine> Of(House house, HouseFlows flows, OpenSets sets)
    {
        var lines = new List<SetLine>();
        void Add(string name, int zones) => lines.Add(new SetLine(name, flows.With(zones), OpenSets.CapacityOf(house, zones)));
        if (house.StandingLoops.Count > 0 || house.Bypass is not null || house.FixedBypass is not null)
            Add(StandingName(house), 0);
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            int opened = sets.OpenedFor(zone);
            int companions = opened & ~(1 << zone);
            string with = companions == 0 ? "" : $" with {house.ZoneLabels(companions)}";
            Add($"{house.Zones[zone].Label} calls{with}", opened);
        }

        if (sets.WorstReaching(house.Controller.MinimumOpen) is { } worst)
            Add("least flow: " + (worst == 0 ? StandingName(house) : house.ZoneLabels(worst)), worst);
        if (house.Zones.Count > 1)
            Add("every second zone", Usual(house));
        Add("all zones", flows.AllZones);
        return lines;
    }

    /// <summary>What passes water with every zone shut.</summary>
    private static string StandingName(House house)
    {
        string loops = house.StandingLoops.Count switch { 0 => "", 1 => "standing loop", _ => "standing loops" };
        string bypass = house.Bypass is not null || house.FixedBypass is not null ? "bypass" : "";
        return (loops.Length > 0 && bypass.Length > 0 ? $"{loops} and {bypass}" : loops + bypass) + " alone";
    }

    /// <summary>Every second zone, as when half the house asks, and whoever has to help.</summary>
    private static int Usual(House house)
    {
        int usual = 0;
        for (int zone = 0; zone < house.Zones.Count; zone += 2)
            usual |= 1 << zone;
        foreach (int companion in house.Controller.Companions.Value)
        {
            if (OpenSets.CapacityOf(house, usual) < house.Controller.MinimumOpen)
                usual |= 1 << companion;
        }

        return usual;
    }
}
