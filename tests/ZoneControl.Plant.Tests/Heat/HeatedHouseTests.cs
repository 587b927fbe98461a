using CsCheck;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class HeatedHouseTests
{
    private const long DayMs = 86_400_000;

    // Each of the balance's figures is an integral of its own; 0.1 % is what is asked of it.
    [Fact]
    public void The_energy_balance_closes_over_a_simulated_month()
    {
        Weather weather = new SyntheticWinter { FirstDay = 1 }.Make(4, 30);
        HeatedHouse house = HeatHouses.Run(new HeatedHouse(Houses.Small, HeatHouses.Small, weather), 30 * DayMs);
        HeatSums sums = house.Heat.Sums();
        Assert.True(sums.SourceJ > 1e9 && sums.OutdoorsJ > 1e9 && sums.PumpJ > 1e6 && sums.GainsJ > 1e6 && sums.BelowJ > 1e7);
        Near.Absolute(0, sums.BalanceError, 1e-3, "balance");
        Near.Absolute(0, sums.BalanceError, 1e-9, "balance, as it really is");

        // And the pump's own books: what the water got is at most what it took from the mains.
        Assert.InRange(sums.PumpJ, 0, house.Water.PumpEnergyWh * 3600 * (1 + 1e-9));
    }

    // Degree-days by hand: rooms held at 20 °C on average lose 2 · 15 W/K · 25 K outdoors.
    [Fact]
    public void In_even_cold_the_losses_are_the_rooms_conductances_times_the_differences()
    {
        HeatedHouse house = HeatHouses.Run(new HeatedHouse(Houses.Small, HeatHouses.Small, HeatHouses.Cold(20)), 20 * DayMs);
        HeatSums sums = house.Heat.Sums();
        Near.Relative(2 * 15 * 25 * 20 * 86_400.0, sums.OutdoorsJ, 0.03);
        Near.Relative(house.Heat.Rooms.Sum(room => room.FloorJ), sums.OutdoorsJ - sums.GainsJ, 0.01, "what floors gave to rooms");
        Assert.All(house.Heat.Rooms, room => Assert.InRange(room.ColdestC, 19, 20));
        Assert.All(house.Heat.Rooms, room => Assert.InRange(room.WarmestC, 20, 21.5));
    }

    [Fact]
    public void Results_do_not_depend_on_how_time_is_cut()
    {
        Weather weather = new SyntheticWinter().Make(9, 3);
        (List<(long, int)> whole, double[] ends) = Changes(long.MaxValue);
        Assert.True(whole.Count > 4);
        Gen.Long[200, 5_000_000].Sample(cut =>
        {
            (List<(long, int)> parts, double[] same) = Changes(cut);
            Assert.Equal(whole, parts);
            Assert.Equal(ends, same);
        }, iter: 20);

        (List<(long, int)>, double[]) Changes(long cut)
        {
            var changes = new List<(long, int)>();
            HeatedHouse house = HeatHouses.Run(
                new HeatedHouse(Houses.Small, HeatHouses.Small, weather), 3 * DayMs, (ms, calls) => changes.Add((ms, calls)), cut);
            return (changes, [house.Heat.RoomC(0), house.Heat.RoomC(1), house.Heat.SupplyC, house.Water.PumpEnergyWh]);
        }
    }

    [Fact]
    public void Looking_every_second_changes_nothing()
    {
        Weather weather = new SyntheticWinter().Make(2, 4);
        HeatDescription heat = HeatHouses.Small with
        {
            Rooms =
            [
                HeatHouses.Room with { Thermostat = new ThermostatDescription { SetC = 20, AnticipationK = 0.4, MinimumOnS = 250.7 } },
                HeatHouses.Room with { Thermostat = new ThermostatDescription { SetC = 21, DifferentialK = 0.2, MinimumOffS = 999 } },
            ],
            Source = HeatHouses.Source with { MinimumRunS = 100, MinimumRestS = 77.7, HighLimitC = 42 },
        };
        Assert.Equal(Changes(false), Changes(true));

        List<(long, int, int)> Changes(bool everySecond)
        {
            var changes = new List<(long, int, int)>();
            var house = new HeatedHouse(Houses.Small, heat, weather, everySecond);
            HeatHouses.Run(house, 4 * DayMs, (ms, calls) => changes.Add((ms, calls, house.Heat.SourceStarts)));
            Assert.True(changes.Count > 6 && house.Heat.SourceStarts > 20);
            return changes;
        }
    }

    // Common practice: what a floor gives falls when its flow is throttled, and a floor too hot for its room shows.
    [Fact]
    public void Hotter_water_makes_floors_warmer_than_EN_1264_2_allows_for_and_that_is_counted()
    {
        HeatDescription hot = HeatHouses.Small with
        {
            Rooms = [.. HeatHouses.Small.Rooms.Select(room => room with { LossWPerK = 80 })],
            Source = HeatHouses.Source with { Set = ResetCurve.Fixed(70), HighLimitC = 80, PowerW = 20_000 },
        };
        HeatedHouse house = HeatHouses.Run(new HeatedHouse(Houses.Small, hot, HeatHouses.Cold(5, -15)), 5 * DayMs);
        Assert.All(house.Heat.Rooms, room => Assert.True(room.WarmestFloorC > 29 && room.FloorTooWarmH > 1));
        HeatedHouse mild = HeatHouses.Run(new HeatedHouse(Houses.Small, HeatHouses.Small, HeatHouses.Cold(5)), 5 * DayMs);
        Assert.All(mild.Heat.Rooms, room => Assert.True(room.WarmestFloorC < 29 && room.FloorTooWarmH == 0));
    }

    [Fact]
    public void A_source_that_is_too_small_leaves_rooms_cold_and_that_is_counted()
    {
        HeatDescription weak = HeatHouses.Small with { Source = HeatHouses.Source with { PowerW = 300 } };
        HeatedHouse house = HeatHouses.Run(new HeatedHouse(Houses.Small, weak, HeatHouses.Cold(10, -15)), 10 * DayMs);
        Assert.All(house.Heat.Rooms, room => Assert.True(room.UnderKh > 100 && room.ColdestC < 17));
        Assert.Equal(1, house.Heat.SourceStarts);
    }

    [Fact]
    public void A_tank_lets_the_source_start_less_often()
    {
        int Starts(double tankM3) => HeatHouses.Run(
            new HeatedHouse(Houses.Small, HeatHouses.Small with { Source = HeatHouses.Source with { TankM3 = tankM3, PowerW = 15_000 } },
                HeatHouses.Cold(3)), 3 * DayMs).Heat.SourceStarts;
        Assert.InRange(Starts(0.3), 3, Starts(0) / 2);
    }

    [Fact]
    public void An_hour_allocates_nothing_once_its_patterns_are_known()
    {
        var house = new HeatedHouse(Houses.Small, HeatHouses.Small, HeatHouses.Cold(40));
        HeatHouses.Run(house, 30 * DayMs);
        long before = GC.GetAllocatedBytesForCurrentThread();
        HeatHouses.Run(house, 31 * DayMs);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(allocated <= 24 * 16, $"{allocated} bytes in 24 hours");
    }
}
