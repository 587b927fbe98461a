using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Seasons;
using ZoneControl.Bench.Tests.Choosing;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Seasons;

public class CommissioningTests
{
    private const string Library = "library";
    private const string Firmware = "firmware";

    private static readonly (string Name, Installation Planted, Fault Person, Fault? Nobody)[] _pottery =
    [
        ("a stuck switched valve", Own(0, new ActuatorFault { Stuck = true }), Fault.StuckValve, Fault.DoesNotShowOpen),
        ("a stuck two-wire valve", Own(2, new ActuatorFault { Stuck = true }), Fault.StuckValve, null),
        ("a dead switched actuator", Own(5, new ActuatorFault { Dead = true }), Fault.DeadActuator, Fault.DoesNotShowOpen),
        ("a dead two-wire actuator", Own(4, new ActuatorFault { Dead = true }), Fault.DeadActuator, null),
        ("a dead switch", Own(3, new ActuatorFault { Switch = SwitchFault.NeverMakes }), Fault.DeadSwitch, Fault.DoesNotShowOpen),
        ("a switch always made", Own(3, new ActuatorFault { Switch = SwitchFault.AlwaysMade }), Fault.SwitchMadeAtRest, Fault.SwitchMadeAtRest),
        ("exchanged actuators", new Installation { SwappedActuators = (0, 5) }, Fault.SwappedActuators, Fault.SwappedActuatorsOrSwitches),
        ("exchanged switches", new Installation { SwappedSwitches = (0, 5) }, Fault.SwappedSwitches, Fault.SwappedActuatorsOrSwitches),
        ("exchanged two-wire actuators", new Installation { SwappedActuators = (2, 4) }, Fault.SwappedActuators, null),
        ("a two-wire and a four-wire actuator exchanged", new Installation { SwappedActuators = (2, 5) }, Fault.SwappedActuators, Fault.SwappedActuators),
        ("actuators and switches exchanged", new Installation { SwappedActuators = (0, 5), SwappedSwitches = (0, 5) }, Fault.SwappedZones, null),
        ("a pump on no output", new Installation { Pump = PumpWiring.Unconnected }, Fault.PumpDoesNotRun, null),
        ("a pump on the heat output", new Installation { Pump = PumpWiring.OnHeat }, Fault.PumpDoesNotRun, null),
        ("a pump on the wrong contact", new Installation { Pump = PumpWiring.Inverted }, Fault.PumpInverted, null),
        ("a pump on the live wire", new Installation { Pump = PumpWiring.Always }, Fault.PumpRunsUnasked, null),
        ("a pump on the bath's valve", new Installation { Pump = PumpWiring.OnValve, PumpZone = 5 }, Fault.PumpOnValveOutput, null),
    ];

    // With a flow switch, contacts tell of the pump.
    private static readonly (string Name, Installation Planted, Fault Person, Fault? Nobody)[] _toolworks =
    [
        ("a pump on no output", new Installation { Pump = PumpWiring.Unconnected }, Fault.PumpDoesNotRun, Fault.PumpDoesNotRun),
        ("a pump on the live wire", new Installation { Pump = PumpWiring.Always }, Fault.PumpRunsUnasked, Fault.PumpRunsUnasked),
        ("a pump on the store's valve", new Installation { Pump = PumpWiring.OnValve, PumpZone = 2 }, Fault.PumpOnValveOutput, Fault.PumpOnValveOutput),
        ("a pump on the hall's valve", new Installation { Pump = PumpWiring.OnValve, PumpZone = 0 }, Fault.PumpOnValveOutput, Fault.PumpRunsUnasked),
        ("exchanged actuators", new Installation { SwappedActuators = (0, 3) }, Fault.SwappedActuators, Fault.SwappedActuatorsOrSwitches),
    ];

    private static Installation Own(int zone, ActuatorFault fault) => new() { Actuators = new Dictionary<int, ActuatorFault> { [zone] = fault } };

    public static TheoryData<string, string, int> Everything
    {
        get
        {
            var data = new TheoryData<string, string, int>();
            foreach (string controller in (string[])[Library, Firmware])
            {
                for (int i = 0; i < _pottery.Length; i++)
                    data.Add(controller, "pottery", i);
                for (int i = 0; i < _toolworks.Length; i++)
                    data.Add(controller, "toolworks", i);
            }

            return data;
        }
    }

    private static (CommissioningRun Run, Diagnosis Found) Commission(House house, Installation planted, string controller, Onlooker onlooker)
    {
        CommissioningRun run = Commissioner.Run(
            house, planted, handed => controller == Firmware ? new FirmwareController(handed) : new LibraryController(handed.ToSettings()), onlooker,
            cancel: TestContext.Current.CancellationToken);
        return (run, Diagnosis.Of(house, run));
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void A_planted_fault_is_named_with_a_person_there_and_as_far_as_contacts_can_tell_without(string controller, string houseName, int i)
    {
        House house = Examples.House(houseName);
        var (name, planted, person, nobody) = houseName == "pottery" ? _pottery[i] : _toolworks[i];
        Diagnosis seen = Commission(house, planted, controller, Onlooker.Person).Found;
        Diagnosed only = Assert.Single(seen.Faults);
        Assert.True(person == only.Fault, $"{name}: {only.Says}");
        if (planted.SwappedActuators is { } pair)
            Assert.Equal((pair.A, pair.B), (Math.Min(only.Zone, only.Other), Math.Max(only.Zone, only.Other)));
        if (planted.Actuators.Count > 0)
            Assert.Equal(planted.Actuators.Keys.Single(), only.Zone);

        Diagnosis unseen = Commission(house, planted, controller, Onlooker.Nobody).Found;
        if (nobody is { } contacts)
            Assert.Equal(contacts, Assert.Single(unseen.Faults).Fault);
        else
            Assert.Empty(unseen.Faults);
        Assert.NotEmpty(unseen.Unknown); // there are two-wire zones, so contacts alone never tell everything
    }

    [Theory]
    [InlineData(Library, "pottery")]
    [InlineData(Firmware, "pottery")]
    [InlineData(Library, "toolworks")]
    [InlineData(Firmware, "toolworks")]
    [InlineData(Library, "two-rooms")]
    public void A_sound_house_is_clean_and_water_was_sent_through_every_zone(string controller, string houseName)
    {
        House house = Examples.House(houseName);
        (CommissioningRun run, Diagnosis found) = Commission(house, Installation.Sound, controller, Onlooker.Person);
        Assert.Empty(found.Faults);
        Assert.Empty(found.Unknown);
        int all = (1 << house.Zones.Count) - 1;
        Assert.Equal(all, run.Trials.Aggregate(0, (mask, trial) => mask | trial.Zones));
        Assert.All(run.Trials, trial => Assert.Equal("", trial.NotRun));
        Assert.All(run.Trials, trial =>
            Assert.True(ZoneControl.Bench.Choosing.OpenSets.CapacityOf(house, trial.Zones) >= house.Controller.MinimumOpen));
        Assert.All(run.Strokes, stroke => Assert.Equal(1 << stroke.Zone, stroke.Seen.Moved));
    }

    [Fact]
    public void End_switches_are_timed_where_the_actuator_makes_them()
    {
        House house = Examples.House("pottery");
        (CommissioningRun run, _) = Commission(house, Installation.Sound, Library, Onlooker.Person);
        // 1 min of dead time and 85 % of the other two: 162 s, and the switch's debounce of 0.2 s.
        Assert.Equal(162_000, run.Strokes[0].SwitchMadeMs!.Value, 500.0);
        // Full after 3 min; it looks once a second.
        Assert.Equal(180_000, run.Strokes[0].Seen.OpenedAfterMs!.Value, 1100.0);
        Assert.Null(run.Strokes[1].SwitchMadeMs);
    }

    [Fact]
    public void A_slow_valve_is_named_with_its_time()
    {
        House house = Examples.House("pottery");
        Diagnosed slow = Assert.Single(Commission(house, Own(0, new ActuatorFault { Slowness = 1.3 }), Library, Onlooker.Nobody).Found.Faults);
        Assert.Equal((Fault.SlowValve, 0), (slow.Fault, slow.Zone));
    }

    [Fact]
    public void Gated_zones_are_left_to_their_panel()
    {
        House house = Examples.House("retrofit");
        (CommissioningRun run, Diagnosis found) = Commission(house, Installation.Sound, Library, Onlooker.Person);
        Assert.Empty(found.Faults);
        for (int zone = 0; zone < house.Zones.Count; zone++)
            Assert.Equal(house.Zones[zone].Gated, run.Strokes[zone].NotTried.Contains("panel", StringComparison.Ordinal));
        Assert.NotEmpty(found.Unknown);
    }

    [Fact]
    public void Strokes_never_run_the_pump_and_two_valves_are_never_told_to_open_at_once()
    {
        House house = Examples.House("toolworks");
        (CommissioningRun run, _) = Commission(house, Installation.Sound, Library, Onlooker.Person);
        Assert.All(run.Strokes, stroke => Assert.False(stroke.FlowWithPumpOff || stroke.Seen.PumpHeard == true));
        Assert.All(run.Strokes, stroke => Assert.Equal(1 << stroke.Zone, stroke.Seen.Warmed));
    }

    [Theory]
    [InlineData(PumpWiring.Always)]
    [InlineData(PumpWiring.Inverted)]
    public void A_pump_that_runs_before_it_is_told_to_breaks_the_run_off(PumpWiring wiring)
    {
        House house = Examples.House("pottery");
        (CommissioningRun run, Diagnosis found) = Commission(house, new Installation { Pump = wiring }, Library, Onlooker.Person);
        Assert.All(run.Strokes, stroke => Assert.NotEqual("", stroke.NotTried));
        // Only with every valve open is it told to run, so that its water has somewhere to go.
        Assert.Equal((1 << house.Zones.Count) - 1, Assert.Single(run.Trials).Zones);
        Assert.Contains("broken off", found.Unknown[0], StringComparison.Ordinal);
        Assert.Contains("shut valves", Assert.Single(found.Faults).Says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pump_that_runs_with_a_valves_output_is_not_told_to_run_as_well()
    {
        House house = Examples.House("pottery");
        (CommissioningRun run, _) = Commission(house, new Installation { Pump = PumpWiring.OnValve, PumpZone = 1 }, Library, Onlooker.Person);
        Assert.True(run.Strokes[1].BrokenOff);
        Assert.True(run.Strokes[1].WatchedMs < 5000);
        Assert.Empty(run.Trials);
    }

    [Fact]
    public void Findings_say_how_long_was_waited()
    {
        House house = Examples.House("pottery");
        string stuck = Assert.Single(Commission(house, Own(0, new ActuatorFault { Stuck = true }), Library, Onlooker.Person).Found.Faults).Says;
        Assert.Contains("within 5 min 37 s", stuck, StringComparison.Ordinal); // late after 337.5 s
        string crossed = Assert.Single(Commission(house, new Installation { SwappedActuators = (0, 5) }, Library, Onlooker.Person).Found.Faults).Says;
        Assert.Contains("said open after 2 min 42 s", crossed, StringComparison.Ordinal);
    }
}
