using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Files;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Houses;

public class HouseModelTests
{
    private const string AllContacts = """
        season = true
        flow = true
        limit = true
        freeze = true
        priority = true
        reset = true
        supply = true
        service = true
        """;

    [Fact]
    public void Times_that_the_file_does_not_give_follow_from_the_actuators()
    {
        ControllerSettings settings = HouseText.House(HouseText.Sound).ToSettings();
        Assert.Null(SettingsCheck.FirstMistake(settings));

        // 4 min and 3 min with a quarter more, rounded up to 5 s: 300 s and 225 s.
        Assert.Equal([300_000, 225_000], settings.OpeningMs);

        // Wax closes in one and a half opening times, 360 s and 270 s; a quarter more is 450 s and 337.5 s.
        Assert.Equal([450_000, 340_000], settings.ClosingMs);
        Assert.Equal([60_000, 45_000], settings.SwitchMinMs);
        Assert.Equal([450_000, 337_500], settings.SwitchLimitMs);
        Assert.Equal(180_000, settings.PumpStartDelayMs);
        Assert.Equal(120_000, settings.PumpOverrunMs);
        Assert.Equal(10_000, settings.PumpRundownMs);
        Assert.Equal(5_000, settings.HeatLeadMs);
        Assert.Equal(1_000, settings.CallDebounceMs);
        Assert.Equal(200, settings.SwitchDebounceMs);
        Assert.Equal(2_000, settings.SeasonDebounceMs);
        Assert.Equal(100, settings.ScanPeriodMs);
        Assert.Equal(2, settings.ValveRetries);
        Assert.Equal([0, 1], settings.CompanionOrder);
        Assert.Equal([2, 1], settings.Capacity);
        Assert.Equal(0b10, settings.SwitchedZones);
        Assert.Equal(2, settings.MinimumOpen);
        Assert.Equal(0, settings.StandingCapacity);
    }

    [Fact]
    public void What_the_file_does_not_say_of_pump_flow_exercise_and_clock_is_common_practice()
    {
        ControllerSettings settings = HouseText.House(
            HouseText.Sound.Replace("season = true", AllContacts, StringComparison.Ordinal)).ToSettings();
        Assert.Null(SettingsCheck.FirstMistake(settings));
        Assert.Equal((180_000, 600_000), (settings.PumpMinOffMs, settings.PumpStartIntervalMs));
        Assert.Equal((20_000, 5_000, 2), (settings.FlowProofMs, settings.FlowLossMs, settings.FlowRetries));
        Assert.Equal((14 * 86_400, 3_600, 120_000), (settings.ExerciseIntervalS, settings.ExerciseRetryS, settings.ExerciseRunMs));

        // Slowest valve: the kitchen's 300 s, the bath's limit of 337.5 s; then delay 180 s, rest 180 s and 600 s, the run of
        // 120 s, and 60 s in hand.
        Assert.Equal(1_477_500, settings.ExerciseLimitMs);
        Assert.Equal((4 * 3_600_000, 3_600_000, 1_800_000), (settings.FreezeHeatMaxMs, settings.PriorityMaxMs, settings.ServiceLimitMs));
        Assert.Equal((10, 1_000, 0), (settings.StallScans, settings.StallLimitMs, settings.TransformerDeciVa));

        // Season, flow, limit, freeze, priority, reset, supply, hand switch of the pump.
        Assert.Equal([2_000, 1_000, 200, 5_000, 2_000, 100, 200, 1_000], settings.ContactDebounceMs);
        Assert.Equal((1 << Contact.Count) - 1, settings.FittedContacts);
        Assert.Equal(Contact.Limit | Contact.Freeze, settings.InvertedContacts);
    }

    [Fact]
    public void Contacts_are_turned_round_where_the_file_says_so()
    {
        ControllerSettings settings = HouseText.House(HouseText.Sound
            .Replace("season = true", """
                season = { closed_means = "heating" }
                flow = { closed_means = "no flow", debounce = "0 ms" }
                supply = { closed_means = "off" }
                priority = { closed_means = "off" }
                reset = { closed_means = "released" }
                limit = { closed_means = "fine" }
                """, StringComparison.Ordinal)
            .Replace("actuator = \"slow\"", "actuator = \"slow\"\ncall_contact = \"breaks\"", StringComparison.Ordinal)
            .Replace("kind = \"four-wire\"", "kind = \"four-wire\"\nswitch_contact = \"breaks\"", StringComparison.Ordinal)).ToSettings();
        Assert.Null(SettingsCheck.FirstMistake(settings));
        Assert.Equal(0, settings.FittedContacts & (Contact.Freeze | Contact.ServicePump));
        Assert.Equal(settings.FittedContacts, settings.InvertedContacts & settings.FittedContacts);
        Assert.Equal((0b01, 0b10), (settings.InvertedCalls, settings.InvertedSwitches));
        Assert.Equal(0, settings.ContactDebounceMs[Contact.Place(Contact.Flow)]);
    }

    [Fact]
    public void Loads_are_those_of_all_actuators_of_a_zone_and_what_may_be_drawn_a_share_of_the_rating()
    {
        ControllerSettings settings = HouseText.House(HouseText.Sound
            .Replace("kind = \"two-wire\"", "kind = \"two-wire\"\nhold = \"1.55 VA\"\ninrush = \"4 VA\"\ninrush_time = \"30 s\"", StringComparison.Ordinal)
            .Replace("actuator = \"told\"", "actuator = \"told\"\nactuators = 3", StringComparison.Ordinal)
            .Replace("[controller]", "[transformer]\nrating = \"100 VA\"\nshare = \"90 %\"\n[controller]", StringComparison.Ordinal)).ToSettings();
        Assert.Null(SettingsCheck.FirstMistake(settings));
        Assert.Equal(900, settings.TransformerDeciVa);
        Assert.Equal([31, 90], settings.HoldDeciVa);
        Assert.Equal([80, 270], settings.InrushDeciVa);
        Assert.Equal([30_000, 45_000], settings.InrushMs);
    }

    [Fact]
    public void A_gated_house_never_exercises_what_is_not_its_own()
    {
        string gated = HouseText.Sound
            .Replace("actuator = \"slow\"", "actuator = \"slow\"\ngated = true", StringComparison.Ordinal)
            .Replace("minimum_open = 2", "minimum_open = 1\nheat_demand_through = true", StringComparison.Ordinal);
        ControllerSettings half = HouseText.House(gated).ToSettings();
        Assert.Equal((0b01, 14 * 86_400), (half.GatedZones, half.ExerciseIntervalS));
        Assert.Equal([1], half.CompanionOrder);
        ControllerSettings all = HouseText.House(
            gated.Replace("actuator = \"told\"", "actuator = \"told\"\ngated = true\nsense_contact = \"breaks\"", StringComparison.Ordinal)).ToSettings();
        Assert.Null(SettingsCheck.FirstMistake(all));
        Assert.Equal((0b11, 0b10, 0), (all.GatedZones, all.InvertedSenses, all.ExerciseIntervalS));
    }

    [Fact]
    public void Times_that_the_file_gives_are_taken_as_they_are()
    {
        ControllerSettings settings = HouseText.House(HouseText.Sound
            .Replace("actuator = \"told\"", "actuator = \"told\"\nproof_time = \"4 min\"\nswitch_min_time = \"30 s\"\nswitch_limit = \"7 min\"\ncapacity = 5", StringComparison.Ordinal)
            .Replace("minimum_open = 2", """
                minimum_open = 3
                companions = ["bath", "kitchen"]
                pump_start_delay = "4 min"
                pump_overrun = "30 s"
                pump_rundown = "2 s"
                heat_lead = "20 s"
                call_debounce = "2 s"
                switch_debounce = "0 ms"
                scan_period = "50 ms"
                valve_retries = 0
                pump_min_off = "1 min"
                pump_max_starts = 7
                flow_proof_time = "10 s"
                flow_loss_time = "2 s"
                flow_retries = 5
                exercise_interval = "7 d"
                exercise_run = "30 s"
                exercise_retry = "2 h"
                freeze_heat_max = "1 h"
                priority_max = "20 min"
                service_limit = "10 min"
                stall_scans = 5
                stall_limit = "2 s"
                """, StringComparison.Ordinal)
            .Replace("season = true", AllContacts.Replace("season = true", "season = { debounce = \"5 s\" }", StringComparison.Ordinal), StringComparison.Ordinal)).ToSettings();
        Assert.Null(SettingsCheck.FirstMistake(settings));
        Assert.Equal(240_000, settings.OpeningMs[1]);
        Assert.Equal(30_000, settings.SwitchMinMs[1]);
        Assert.Equal(420_000, settings.SwitchLimitMs[1]);
        Assert.Equal([2, 5], settings.Capacity);
        Assert.Equal(3, settings.MinimumOpen);
        Assert.Equal([1, 0], settings.CompanionOrder);
        Assert.Equal(240_000, settings.PumpStartDelayMs);
        Assert.Equal(30_000, settings.PumpOverrunMs);
        Assert.Equal(2_000, settings.PumpRundownMs);
        Assert.Equal(20_000, settings.HeatLeadMs);
        Assert.Equal(2_000, settings.CallDebounceMs);
        Assert.Equal(0, settings.SwitchDebounceMs);
        Assert.Equal(5_000, settings.SeasonDebounceMs);
        Assert.Equal(50, settings.ScanPeriodMs);
        Assert.Equal(0, settings.ValveRetries);

        // An hour over seven starts, to the next ms.
        Assert.Equal((60_000, 514_286), (settings.PumpMinOffMs, settings.PumpStartIntervalMs));
        Assert.Equal((10_000, 2_000, 5), (settings.FlowProofMs, settings.FlowLossMs, settings.FlowRetries));
        Assert.Equal((7 * 86_400, 7_200, 30_000), (settings.ExerciseIntervalS, settings.ExerciseRetryS, settings.ExerciseRunMs));
        Assert.Equal((3_600_000, 1_200_000, 600_000), (settings.FreezeHeatMaxMs, settings.PriorityMaxMs, settings.ServiceLimitMs));
        Assert.Equal((5, 2_000), (settings.StallScans, settings.StallLimitMs));
    }

    [Fact]
    public void The_house_tells_for_each_setting_whether_it_was_given_and_else_from_what_it_follows()
    {
        House house = HouseText.House(HouseText.Sound.Replace(
            "minimum_open = 2", "minimum_open = 2\npump_overrun = \"90 s\"", StringComparison.Ordinal));
        IReadOnlyList<SettingLine> lines = SettingsList.Of(house);
        Assert.Contains(new SettingLine("controller.pump_overrun", "1 min 30 s", null, 31), lines);
        Assert.Contains(new SettingLine("controller.pump_start_delay", "3 min", "opening time of told, the quickest actuator", 0), lines);
        Assert.Contains(new SettingLine("zone.kitchen.proof_time", "5 min", "opening time of slow and a quarter more", 0), lines);
        Assert.Contains(new SettingLine("zone.kitchen.capacity", "2", "number of loops", 0), lines);
        Assert.Contains(new SettingLine("pump.minimum_flow", "5 L/min", null, 5), lines);
        Assert.DoesNotContain(lines, line => line.Key == "zone.kitchen.switch_limit");
        Assert.Equal(lines.Count, lines.DistinctBy(line => line.Key).Count());
    }

    [Fact]
    public void Standing_loops_count_and_a_bypass_only_when_the_file_says_so()
    {
        string standing = "[[standing_loop]]\nlength = \"50 m\"\n[[standing_loop]]\nlength = \"50 m\"\n";
        string bypass = "[bypass]\nopens_at = \"0.2 bar\"\nkvs = 2\n";
        string counted = bypass + "counts_as = 3\n";
        int Capacity(string more) =>
            HouseText.House(HouseText.Sound.Replace("[controller]", more + "[controller]", StringComparison.Ordinal)).StandingCapacity;
        Assert.Equal(2, Capacity(standing));
        Assert.Equal(0, Capacity(bypass));
        Assert.Equal(5, Capacity(standing + counted));
    }

    [Fact]
    public void Standing_capacity_helps_to_reach_minimum_open()
    {
        string text = HouseText.Sound.Replace("minimum_open = 2", "minimum_open = 4", StringComparison.Ordinal)
            .Replace("[controller]", "[[standing_loop]]\nlength = \"50 m\"\n[controller]", StringComparison.Ordinal);
        Assert.Empty(HouseText.Read(text).Mistakes);
        Assert.Equal("house.toml:32: controller.minimum_open: found 5, expected at most 4, what all zones and the standing 1 can pass together",
            HouseText.Refusal(HouseText.Read(text.Replace("minimum_open = 4", "minimum_open = 5", StringComparison.Ordinal))));
    }

    [Fact]
    public void The_plant_gets_the_same_house_in_SI_units()
    {
        House house = HouseText.House(HouseText.Sound
            .Replace("name = \"main\"", "name = \"main\"\nbranch = { length = \"10 ft\", tube = \"3/4 in\", fittings_k = 5 }", StringComparison.Ordinal)
            .Replace("[controller]", "[bypass]\nopens_at = \"0.2 bar\"\nband = \"0.1 bar\"\ncv = 2\n[[standing_loop]]\nlength = \"50 m\"\n[controller]", StringComparison.Ordinal)
            .Replace("{ length = \"60 m\" }", "{ length = \"200 ft\", tube = \"1/2 in\", bends_k = 7, valve_cv = 1, roughness = \"0.007 mm\" }", StringComparison.Ordinal)
            .Replace("opening_time = \"3 min\"", "opening_time = \"3 min\"\ndead_time = \"1 min\"\nclosing_time = \"5 min\"\nclosing_dead_time = \"2 min\"\nswitch_at = \"90 %\"", StringComparison.Ordinal));
        PlantDescription plant = house.ToPlant(new ScriptConditions(35, 15));
        Assert.Equal(35, plant.WaterC);
        Assert.Equal(15, plant.PlantRoomC);
        Assert.Equal(5e-3 / 60, plant.Pump.MinimumFlowM3s, 1e-12);
        Assert.Equal(new PumpPoint(0, 5), plant.Pump.Curve[0]);
        Assert.Equal(60, plant.Pump.PowerW);
        Assert.Equal(3.048, plant.Manifolds[0].Branch!.LengthM, 1e-9);
        Assert.Equal(0.681 * 0.0254, plant.Manifolds[0].Branch!.InsideDiameterM, 1e-9);
        Assert.Equal(20_000, plant.Bypass!.OpeningPa, 1e-6);
        Assert.Equal(1.73, plant.Bypass.Kvs, 1e-9);

        Assert.Equal([0, 0, 1, -1], plant.Loops.Select(loop => loop.Zone));
        LoopDescription bath = plant.Loops[2];
        Assert.Equal(60.96, bath.Tube.LengthM, 1e-9);
        Assert.Equal(0.485 * 0.0254, bath.Tube.InsideDiameterM, 1e-9);
        Assert.Equal(7, bath.Tube.FittingsK);
        Assert.Equal(7e-6, bath.Tube.RoughnessM, 1e-12);
        Assert.Equal(0.865, bath.ValveKvs, 1e-9);
        Assert.Equal(0.012, plant.Loops[0].Tube.InsideDiameterM, 1e-12);
        Assert.Equal((25, 1.2), (plant.Loops[0].Tube.FittingsK, plant.Loops[0].ValveKvs));

        ActuatorDescription told = plant.Actuators[1];
        Assert.Equal((60, 120, 120, 180), (told.OpenDeadTimeS, told.OpenStrokeS, told.CloseDeadTimeS, told.CloseStrokeS));
        Assert.Equal(0.9, told.SwitchMakesAt!.Value, 1e-12);
        Assert.Null(plant.Actuators[0].SwitchMakesAt);
        Assert.Equal((60, 180), (plant.Actuators[0].OpenDeadTimeS, plant.Actuators[0].OpenStrokeS));
    }

    [Fact]
    public void A_motorised_actuator_has_a_switch_only_when_the_file_says_where_it_makes()
    {
        string text = HouseText.Sound.Replace("kind = \"four-wire\"", "kind = \"motorised\"", StringComparison.Ordinal);
        Assert.False(HouseText.House(text).Zones[1].Actuator.HasSwitch);
        Assert.True(HouseText.House(text.Replace(
            "kind = \"motorised\"", "kind = \"motorised\"\nswitch_at = \"95 %\"", StringComparison.Ordinal)).Zones[1].Actuator.HasSwitch);
    }

    // ASTM F876/F877 outside diameters and least walls by a secondary dimension chart; inside = outside less two walls.
    [Theory]
    [InlineData("3/8 in", 9.14)]
    [InlineData("1/2 in", 12.32)]
    [InlineData("5/8 in", 14.83)]
    [InlineData("3/4 in", 17.30)]
    [InlineData("1 in", 22.22)]
    [InlineData("17x2 mm", 13.00)]
    public void Tube_sizes_stand_for_inside_diameters(string word, double mm) =>
        Assert.Equal(mm, TubeSizes.All.Single(size => size.Word == word).InsideM * 1000, 0.01);

    [Theory]
    [InlineData(0, "none")]
    [InlineData(0b100000, "Bath")]
    [InlineData(0b110001, "Throwing room, Bedroom and Bath")]
    public void Zones_are_told_by_their_labels(int zones, string words)
    {
        string file = Path.Combine(ExampleTests.Folder(), "pottery.house.toml");
        Assert.Equal(words, HouseFile.Read(file).House!.ZoneLabels(zones));
    }
}
