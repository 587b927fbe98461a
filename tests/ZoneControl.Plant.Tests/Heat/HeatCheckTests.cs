using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class HeatCheckTests
{
    [Fact]
    public void A_sound_house_has_no_mistake() => Assert.Empty(HeatCheck.Mistakes(HeatHouses.Small, 2));

    [Fact]
    public void Every_mistake_is_named_at_once()
    {
        HeatDescription bad = HeatHouses.Small with
        {
            BelowC = double.NaN,
            Rooms =
            [
                HeatHouses.Room with
                {
                    CapacityJPerK = 0,
                    LossWPerK = -1,
                    GainsW = double.PositiveInfinity,
                    Floor = HeatHouses.Room.Floor with { AreaM2 = 0, ScreedM = -0.065, InsulationResistance = 0, Use = (FloorUse)9 },
                    Thermostat = new ThermostatDescription { SetC = 50, DifferentialK = 0, AnticipationS = 0 },
                },
            ],
            Source = HeatHouses.Source with { PowerW = 0, WaterM3 = 0, Set = new ResetCurve(20, 60, 10, 14), LossWPerK = 0 },
        };
        string all = string.Join('\n', HeatCheck.Mistakes(bad, 2));
        string[] places =
        [
            "Rooms has 1 entries", "BelowC is NaN", "Rooms[0].CapacityJPerK is 0", "Rooms[0].LossWPerK is -1", "Rooms[0].GainsW",
            "Rooms[0].Floor.AreaM2 is 0", "Rooms[0].Floor.ScreedM is -0.065", "Rooms[0].Floor.InsulationResistance is 0",
            "Rooms[0].Floor.Use is 9", "Rooms[0].Thermostat.SetC is 50", "Rooms[0].Thermostat.DifferentialK is 0",
            "Rooms[0].Thermostat.AnticipationS is 0", "Source.PowerW is 0", "Source.WaterM3 is 0", "Source.LossWPerK is 0",
            "Source.Set.MildWaterC is 14", "Source.Set.MildOutdoorC is 10", "Source.HighLimitC is 55",
        ];
        Assert.All(places, place => Assert.Contains(place, all, StringComparison.Ordinal));
        Assert.Equal(places.Length, all.Split('\n').Length);
        Assert.Throws<ArgumentException>(() => new HeatedHouse(Houses.Small, bad, HeatHouses.Cold(1)));
    }
}
