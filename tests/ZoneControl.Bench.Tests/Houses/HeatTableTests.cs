using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Tests.Houses;

/// <summary>What a house file says of warmth and of the finer points of its water, and what comes of it in the plant.</summary>
public class HeatTableTests
{
    private const string Kitchen = "name = \"kitchen\"";

    [Fact]
    public void Without_a_word_a_house_is_of_common_practice_and_each_setting_says_so()
    {
        House house = HouseText.House(HouseText.Sound);
        HeatDescription heat = house.ToHeat();
        Assert.Empty(HeatCheck.Mistakes(heat, 2));
        Assert.Equal(150 * 0.15, heat.Rooms[0].Floor.AreaM2, 1e-9); // two loops of 80 and 70 m, 15 cm apart
        Assert.Equal(9, heat.Rooms[1].Floor.AreaM2, 1e-9);
        Assert.Equal(20, heat.Rooms[0].Thermostat.SetC);
        Assert.All(HeatSettings.Of(house), line => Assert.True(line.DerivedFrom is { Length: > 0 } && line.Line == 0, line.Key));
    }

    [Fact]
    public void Everything_that_a_house_file_says_arrives_in_the_plant()
    {
        House house = HouseText.House(HouseText.Sound
            .Replace(Kitchen, $"""
                {Kitchen}
                room = {"{"} area = "30 m2", loss = "44 W/K", gains = "120 W", capacity = "2 MJ/K", use = "edge" {"}"}
                floor = {"{"} spacing = "20 cm", screed = "5 cm", covering = "0.1 m2K/W", insulation = "3 m2K/W" {"}"}
                thermostat = {"{"} set = "68 °F", differential = "1.8 °F", anticipation = "0.4 K", anticipation_time = "20 min", minimum_on = "5 min", minimum_off = "4 min" {"}"}
                """, StringComparison.Ordinal)
            .Replace("[controller]", """
                [every_room]
                loss = "9 W/K"
                use = "bath"
                [every_floor]
                covering = "0.02 m2K/W"
                [every_thermostat]
                minimum_on = "7 min"
                [heat_source]
                power = "8 kW"
                reset = { cold = "-15 °C", cold_water = "42 °C", mild = "15 °C", mild_water = "28 °C" }
                differential = "5 K"
                minimum_run = "4 min"
                minimum_rest = "1 min"
                high_limit = "50 °C"
                water = "12 L"
                loss = "1.5 W/K"
                [tank]
                volume = "200 L"
                loss = "2.5 W/K"
                [weather]
                first_day = "11-15"
                mean = "7 °C"
                season_swing = "11 K"
                day_swing = "4 K"
                noise = "2 K"
                noise_time = "2 d"
                cold_snap = "10 K"
                cold_snap_time = "4 d"
                below = "8 °C"
                plant_room = "15 °C"
                [controller]
                """, StringComparison.Ordinal));
        HeatDescription heat = house.ToHeat();
        RoomDescription kitchen = heat.Rooms[0];
        RoomDescription bath = heat.Rooms[1];
        Assert.Equal((30, 44, 120, 2e6), (kitchen.Floor.AreaM2, kitchen.LossWPerK, kitchen.GainsW, kitchen.CapacityJPerK));
        Assert.Equal((FloorUse.Edge, 0.2, 0.05, 0.1, 3), (kitchen.Floor.Use, kitchen.Floor.SpacingM, kitchen.Floor.ScreedM, kitchen.Floor.CoveringResistance, kitchen.Floor.InsulationResistance));
        Assert.Equal((20, 1, 0.4), (Math.Round(kitchen.Thermostat.SetC, 9), Math.Round(kitchen.Thermostat.DifferentialK, 9), kitchen.Thermostat.AnticipationK));
        Assert.Equal((1200, 300, 240), (kitchen.Thermostat.AnticipationS, kitchen.Thermostat.MinimumOnS, kitchen.Thermostat.MinimumOffS));
        Assert.Equal((9, FloorUse.Bath, 0.02, 24, 420), (bath.LossWPerK, bath.Floor.Use, bath.Floor.CoveringResistance, bath.Thermostat.SetC, bath.Thermostat.MinimumOnS));
        Assert.Equal((8000, new ResetCurve(-15, 42, 15, 28), 5, 240, 60, 50), (heat.Source.PowerW, heat.Source.Set, heat.Source.DifferentialK, heat.Source.MinimumRunS, heat.Source.MinimumRestS, heat.Source.HighLimitC));
        Assert.Equal((0.012 + house.Mains.VolumeM3, 0.2, 4, 15), (heat.Source.WaterM3, heat.Source.TankM3, heat.Source.LossWPerK, heat.Source.StartC));
        Assert.Equal(8, heat.BelowC);
        Assert.Equal(
            new SyntheticWinter { FirstDay = 320, MeanC = 7, SeasonSwingK = 11, DaySwingK = 4, NoiseK = 2, NoiseDays = 2, SnapK = 10, SnapDays = 4 },
            house.ToWinter());
        Assert.Contains(new SettingLine("zone.kitchen.room.loss", "44 W/K", null, 23), SettingsList.Of(house));
    }

    [Fact]
    public void The_finer_points_of_the_water_arrive_in_the_plant()
    {
        House house = HouseText.House(HouseText.Sound
            .Replace("name = \"Sound\"", "name = \"Sound\"\nfluid = \"glycol\"\nglycol_share = \"30 %\"", StringComparison.Ordinal)
            .Replace("power = \"60 W\"", """
                power = "60 W"
                speed = "90 %"
                heat_to_water = "70 %"
                power_curve = [["0 L/min", "30 W"], ["40 L/min", "55 W"]]
                regulation = { keeps = "proportional", head = "3 m", head_at_no_flow = "2 m", lowest_speed = "40 %" }
                """, StringComparison.Ordinal)
            .Replace("inside = \"26 mm\"", "inside = \"26 mm\"\nexchanger_kv = 6", StringComparison.Ordinal)
            .Replace("name = \"main\"", "name = \"main\"\nbalancing_kv = 4", StringComparison.Ordinal)
            .Replace("{ length = \"60 m\" }", "{ length = \"60 m\", balancing_cv = 1 }", StringComparison.Ordinal)
            .Replace("[controller]", "[fixed_bypass]\nkv = 0.8\ncounts_as = 1\n[controller]", StringComparison.Ordinal));
        PlantDescription plant = house.ToPlant(new ScriptConditions(30, 20));
        Assert.Empty(PlantCheck.Mistakes(plant));
        Assert.Equal((0.3, 0.9, 0.7, 6, 0.8), (plant.GlycolShare, plant.Pump.Speed, plant.Pump.HeatToWaterShare, plant.HeatExchangerKv, plant.FixedBypassKv));
        Assert.Equal(new RegulationDescription(3) { HeadAtNoFlowM = 2, LowestSpeed = 0.4 }, plant.Pump.Regulation);
        Assert.Equal([30, 55], plant.Pump.PowerByFlow!.Select(point => point.PowerW));
        Assert.Equal(4, plant.Manifolds[0].Balancing!.Kv);
        Assert.Null(plant.Loops[0].Balancing);
        Assert.Equal(0.8650, plant.Loops[2].Balancing!.Kv, 1e-9);
        Assert.Equal(1, house.StandingCapacity);
    }

    public static TheoryData<string, string, string> Mistakes => new()
    {
        { Kitchen, Kitchen + "\nroom = { area = \"0 m2\" }", "house.toml:23: zone.kitchen.room.area: found \"0 m2\", expected an area from \"0.5 m2\" to \"10000 m2\"" },
        { Kitchen, Kitchen + "\nroom = { area = 30 }", "house.toml:23: zone.kitchen.room.area: found the number 30 without a unit, expected an area such as \"20 m2\" or \"215 ft2\"" },
        { Kitchen, Kitchen + "\nroom = { use = \"bats\" }", "house.toml:23: zone.kitchen.room.use: found \"bats\", expected \"living\", \"edge\" or \"bath\" (did you mean \"bath\"?)" },
        { Kitchen, Kitchen + "\nthermostat = { set = \"20 K\" }", "house.toml:23: zone.kitchen.thermostat.set: found \"20 K\", a temperature difference, expected a temperature such as \"20 °C\" or \"68 °F\"" },
        { Kitchen, Kitchen + "\nthermostat = { diferential = \"1 K\" }", "house.toml:23: zone.kitchen.thermostat.diferential: found an unknown key (did you mean \"differential\"?)" },
        { "[controller]", "[every_floor]\nscreed = \"2 m\"\n[controller]", "house.toml:30: every_floor.screed: found \"2 m\", expected a length from \"1 cm\" to \"50 cm\"" },
        { "[controller]", "[every_room]\nareas = 2\n[controller]", "house.toml:30: every_room.areas: found an unknown key (did you mean \"area\"?)" },
        { "[controller]", "[heat_source]\nset = \"40 °C\"\nhigh_limit = \"41 °C\"\n[controller]", "house.toml:31: heat_source.high_limit: found 41 °C, expected at least 43 °C, the highest set point and half the differential" },
        { "[controller]", "[heat_source]\nset = \"70 °C\"\n[controller]", "house.toml:29: heat_source.high_limit: found 55 °C, expected at least 73 °C, the highest set point and half the differential" },
        { "[controller]", "[heat_source]\nreset = { cold = \"5 °C\", cold_water = \"40 °C\", mild = \"5 °C\", mild_water = \"26 °C\" }\n[controller]", "house.toml:30: heat_source.reset.mild: found 5 °C, expected more than 5 °C, the cold end" },
        { "[controller]", "[tank]\nloss = \"1 W/K\"\n[controller]", "house.toml:29: tank.volume: found nothing, expected a volume such as \"0.35 L\" or \"0.1 gal\"" },
        { "[controller]", "[weather]\nfirst_day = \"10-32\"\n[controller]", "house.toml:30: weather.first_day: found \"10-32\", expected a month and a day such as \"10-01\"" },
        { "name = \"Sound\"", "name = \"Sound\"\nfluid = \"glycol\"", "house.toml:1: glycol_share: found nothing, expected a share of the fluid's mass such as \"30 %\"" },
        { "name = \"Sound\"", "name = \"Sound\"\nglycol_share = \"30 %\"", "house.toml:2: glycol_share: found a share of glycol in water, expected fluid = \"glycol\", or no share" },
        { "power = \"60 W\"", "power = \"60 W\"\nregulation = { keeps = \"constant\", head = \"5 m\" }", "house.toml:5: pump.regulation.head: found 5 m, expected less than 5 m, what the pump gives at no flow" },
        { "power = \"60 W\"", "power = \"60 W\"\nregulation = { keeps = \"proportional\", head = \"3 m\" }", "house.toml:5: pump.regulation.head_at_no_flow: found nothing, expected the head at no flow, from which it rises" },
        { "power = \"60 W\"", "power = \"60 W\"\nregulation = { keeps = \"constant\", head = \"3 m\", head_at_no_flow = \"1 m\" }", "house.toml:5: pump.regulation.head_at_no_flow: found a head at no flow for a constant head, expected keeps = \"proportional\", or no such head" },
        { "power = \"60 W\"", "power = \"60 W\"\npower_curve = [[\"0 L/min\", \"3 W\"], [\"20 L/min\", \"4 W\"]]", "house.toml:1: found a house that the model cannot take (Pump.PowerByFlow[1].PowerW is 4; expected at least the 13.1 W that the water gets at that flow.)" },
        { "[controller]", "[fixed_bypass]\ncounts_as = 1\n[controller]", "house.toml:29: fixed_bypass.kv: found nothing, expected a number: Kv in m³/h at 1 bar, or \"cv\" in gpm at 1 psi" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void What_cannot_be_is_refused_with_its_place(string piece, string replacement, string message) =>
        Assert.Equal(message, HouseText.Refusal(HouseText.With(piece, replacement)));

    [Fact]
    public void A_spring_bypass_beside_a_proportional_pump_is_refused()
    {
        string text = HouseText.Sound
            .Replace("power = \"60 W\"", "power = \"60 W\"\nregulation = { keeps = \"proportional\", head = \"3 m\", head_at_no_flow = \"2 m\" }", StringComparison.Ordinal)
            .Replace("[controller]", "[bypass]\nopens_at = \"0.2 bar\"\nkvs = 2\n[controller]", StringComparison.Ordinal);
        Assert.Equal(
            "house.toml:31: bypass.opens_at: found a spring bypass beside a pump whose head rises with flow, expected a pump at fixed speed or constant head, or a [fixed_bypass] (together they may balance at more than one flow)",
            HouseText.Refusal(HouseText.Read(text)));
    }

    [Fact]
    public void A_common_table_is_read_even_where_every_zone_says_otherwise()
    {
        string text = HouseText.Sound
            .Replace(Kitchen, Kitchen + "\nfloor = { screed = \"5 cm\" }", StringComparison.Ordinal)
            .Replace("name = \"bath\"", "name = \"bath\"\nfloor = { screed = \"6 cm\" }", StringComparison.Ordinal)
            .Replace("[controller]", "[every_floor]\nscreed = \"5\"\n[controller]", StringComparison.Ordinal);
        Assert.Contains("every_floor.screed: found \"5\" without a unit", HouseText.Refusal(HouseText.Read(text)), StringComparison.Ordinal);
    }
}
