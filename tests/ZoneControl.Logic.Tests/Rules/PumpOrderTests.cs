namespace ZoneControl.Logic.Tests;

[Trait("Rule", "PUMP-ORDER")]
public class PumpOrderTests
{
    [Fact]
    public void After_the_pump_has_stopped_valves_are_released_at_the_end_of_the_rundown_and_not_one_scan_before()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0);
        rig.RunUntil(o => !o.Pump, 5000);

        rig.Always(o => o.Valves == 1, House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_trip_has_its_rundown_too()
    {
        Rig rig = Rig.Running(House.OfZones(1).Switched(0), 0).Break(0).EndCall(0).Step();
        Assert.False(rig.Out.Pump);

        rig.Always(o => o.Valves == 1, House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_call_that_ends_while_the_pump_runs_keeps_its_zone_until_others_prove_minimum_open()
    {
        Rig rig = Rig.Running(House.OfZones(2), 0).Call(1).Step().EndCall(0).Step();

        rig.Always(o => o is { Pump: true, Valves: 3 }, House.Opening - 2 * House.Scan);
        Assert.Equal(Bits.Of(1), rig.Step().Out.Valves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void Of_two_zones_whose_calls_end_together_only_what_the_rest_can_spare_is_released()
    {
        House house = House.OfZones(3).Capacity(1, 2, 1).Minimum(2).Companions(2, 0, 1);
        Rig rig = Rig.Running(house, 0, 1, 2).EndCall(0, 1).Step();

        // Zone 2 makes 1 and zone 0 is its companion: zone 1 can go.
        Assert.Equal(Bits.Of(0, 2), rig.Out.Valves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void Zones_are_released_one_by_one_down_to_minimum_open_in_one_scan()
    {
        House house = House.OfZones(4).Minimum(1).Companions(3);
        Rig rig = Rig.Running(house, 0, 1, 2, 3).EndCall(0, 1, 2).Step();

        Assert.Equal(Bits.Of(3), rig.Out.Valves);
    }

    [Fact]
    public void An_unproven_zone_whose_call_ends_is_released_while_the_pump_runs_on_others()
    {
        Rig rig = Rig.Running(House.OfZones(2), 0).Call(1).RunFor(500).EndCall(1).Step();

        Assert.Equal(Bits.Of(0), rig.Out.Valves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void A_second_trip_begins_a_fresh_rundown()
    {
        House house = House.OfZones(1).Switched(0);
        Rig rig = Rig.Running(house, 0).Break(0).RunFor(House.Rundown - House.Scan).Make(0).Step();
        Assert.True(rig.Out.Pump);

        rig.Break(0).Step().EndCall(0).Always(o => o.Valves == 1, House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_valve_that_becomes_late_in_the_very_scan_of_a_trip_stays_through_the_rundown()
    {
        House house = House.OfZones(2).Switched(0, 1).Retries(5);
        Rig rig = Rig.Running(house, 1).Call(0).Step().RunFor(House.SwitchLimit - House.Scan).Break(1).Step();
        Assert.False(rig.Out.Pump);
        Assert.Equal(Bits.Of(0), rig.Out.LateValves);

        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);
        rig.Always(o => o.Valves == 3, House.Rundown);
        Assert.Equal(Bits.Of(1), rig.Step().Out.Valves);
    }

    [Fact]
    public void New_demand_in_a_rundown_releases_no_zone_that_nothing_replaces()
    {
        Rig rig = Rig.Running(House.OfZones(2), 0).EndCall(0);
        rig.RunUntil(o => !o.Pump, 5000);
        rig.Call(1).Step();

        rig.Always(o => o.Valves == 3, House.Opening - House.Scan);
        Assert.Equal(Bits.Of(1), rig.Step().Out.Valves);
    }

    [Fact]
    public void A_rundown_shorter_than_a_scan_is_refused_so_no_valve_goes_with_the_pump()
    {
        House house = House.OfZones(1).With(s => s.PumpRundownMs = House.Scan);
        Rig rig = Rig.Running(house, 0).EndCall(0);
        rig.RunUntil(o => !o.Pump, 5000);

        Assert.Equal(1, rig.Out.Valves);
        Assert.Equal(0, rig.Step().Out.Valves);
        Assert.Equal("PumpRundownMs", SettingsCheck.FirstMistake(house.With(s => s.PumpRundownMs--).Settings()));
    }
}
