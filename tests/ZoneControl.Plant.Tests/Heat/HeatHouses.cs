using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

/// <summary>Warm houses for tests, all invented.</summary>
internal static class HeatHouses
{
    public static RoomDescription Room { get; } = new()
    {
        Floor = new FloorDescription { AreaM2 = 12 },
        CapacityJPerK = 1e6,
        LossWPerK = 15,
        GainsW = 40,
        Thermostat = new ThermostatDescription { SetC = 20 },
    };

    public static SourceDescription Source { get; } = new()
    {
        PowerW = 4000,
        Set = ResetCurve.Fixed(36),
        WaterM3 = 0.03,
    };

    /// <summary>The warm side of <see cref="Houses.Small"/>.</summary>
    public static HeatDescription Small { get; } = new() { Rooms = [Room, Room with { GainsW = 0 }], Source = Source };

    public static Weather Cold(int days, double celsius = -5) => new("even cold", [.. Enumerable.Repeat(celsius, 24 * days)]);

    /// <summary>
    /// Runs a house with its thermostats wired straight to valves, pump and source, and tells each change of mind; returns the house.
    /// </summary>
    public static HeatedHouse Run(HeatedHouse house, long untilMs, Action<long, int>? changed = null, long cutMs = long.MaxValue)
    {
        Drive(house);
        for (long cut = cutMs; house.NowMs < untilMs;)
        {
            long next = Math.Min(Math.Min(house.NextEventMs, untilMs), cut);
            if (next == cut)
            {
                cut += cutMs;
            }

            if (house.AdvanceTo(next))
            {
                changed?.Invoke(house.NowMs, house.Heat.Calls);
                Drive(house);
            }
        }

        return house;
    }

    private static void Drive(HeatedHouse house)
    {
        int calls = house.Heat.Calls;
        house.Water.Drive(calls, calls != 0, calls != 0);
        house.Follow();
    }
}
