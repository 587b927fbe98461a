namespace ZoneControl.Logic.Tests;

[Trait("Rule", "GATE")]
public class GateTests
{
    private static House AllGated() => House.OfZones(2).Gated(0, 1);

    [Fact]
    public void A_sensed_valve_calls_and_proves_when_it_has_been_sensed_for_its_opening_time()
    {
        Rig rig = Rig.InSeason(AllGated()).Sense(0).Step();

        rig.Always(o => o is { Valves: 0, Pump: false, ProvenValves: 0, Hold: HoldReason.Proof }, House.Opening - House.Scan);
        rig.Step();
        Assert.Equal(1, rig.Out.ProvenValves);
        Assert.True(rig.Out.Pump);
        Assert.True(rig.Out.Heat);
    }

    [Fact]
    public void Its_opening_time_begins_with_the_sense_however_long_nothing_happened_before()
    {
        Rig rig = Rig.InSeason(AllGated()).RunFor(60_000).Sense(0).Step();
        Assert.Equal(0, rig.Out.ProvenValves);

        rig.Always(o => o.ProvenValves == 0, House.Opening - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void A_switched_one_proves_with_its_end_switch_while_it_is_sensed()
    {
        Rig rig = Rig.InSeason(AllGated().Switched(0)).Sense(0).RunFor(House.StartDelay).Make(0).Step();
        Assert.True(rig.Out.Pump);

        rig.EndSense(0).Step();
        Assert.False(rig.Out.Pump);
        Assert.Equal(0, rig.Out.ProvenValves);
    }

    [Fact]
    public void A_switch_already_made_when_the_sense_comes_is_doubted()
    {
        Rig rig = Rig.InSeason(AllGated().Switched(0)).Make(0).Sense(0).Step();
        Assert.Equal(1, rig.Out.EarlySwitches);

        rig.Always(o => o.ProvenValves == 0, House.Opening - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void A_lost_sense_is_a_trip_in_that_scan_without_overrun_or_rundown_of_valves()
    {
        Rig rig = Rig.InSeason(AllGated()).Sense(0);
        rig.RunUntil(o => o.Pump, 5000);
        rig.EndSense(0).Step();

        Assert.Equal(new Published(), Published.Of(rig.Out));
        Assert.Equal(1, rig.Counters.Trips);
    }

    [Fact]
    public void A_sense_that_is_lost_for_less_than_its_debounce_trips_nothing()
    {
        Rig rig = Rig.InSeason(AllGated().With(s => s.SwitchDebounceMs = 300)).Sense(0);
        rig.RunUntil(o => o.Pump, 5000);

        rig.EndSense(0).RunFor(300).Sense(0).Always(o => o.Pump, 5000);
    }

    [Fact]
    public void The_pump_goes_on_no_sooner_than_the_delay_after_the_first_sense()
    {
        Rig rig = Rig.InSeason(AllGated().With(s => s.PumpStartDelayMs = 5000)).Sense(0).Step();

        Assert.Equal(5000, rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void Lockout_priority_and_a_hand_withhold_its_call()
    {
        House house = AllGated().Fit(Contact.Priority | Contact.ServicePump);
        Rig rig = Rig.InSeason(house).Sense(0).RunFor(5000).Lockout().RunFor(5000);
        Assert.Equal((false, HoldReason.Lockout), (rig.Out.Pump, rig.Out.Hold));

        rig.Season().On(Contact.Priority).Step();
        Assert.Equal((false, HoldReason.Priority), (rig.Out.Pump, rig.Out.Hold));
        rig.Off(Contact.Priority).On(Contact.ServicePump).Step();
        Assert.Equal((true, false), (rig.Out.Pump, rig.Out.Heat));
    }

    [Fact]
    public void Thermostats_and_hands_of_gated_zones_are_ignored()
    {
        Rig rig = Rig.InSeason(AllGated()).Call(0, 1).Hand(0, 1);

        rig.Always(o => o is { AcceptedCalls: 0, AcceptedHands: 0, Valves: 0, Hold: HoldReason.None }, 1000);
    }

    [Fact]
    public void Driven_and_gated_zones_add_up_and_companions_make_up_the_rest()
    {
        House house = House.OfZones(3).Gated(1).Minimum(2);
        Rig rig = Rig.InSeason(house).Sense(1).Step();
        Assert.Equal(Bits.Of(0), rig.Out.Valves);

        rig.RunFor(House.Opening);
        Assert.Equal(Bits.Of(0, 1), rig.Out.ProvenValves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void When_a_gated_zone_of_several_goes_the_others_carry_on_or_trip_by_what_they_prove()
    {
        Rig rig = Rig.InSeason(AllGated()).Sense(0, 1).RunFor(5000).EndSense(0);
        rig.Always(o => o is { Pump: true, ProvenValves: 2 }, 5000);

        rig = Rig.InSeason(AllGated().With(s => (s.MinimumOpen, s.StandingCapacity) = (2, 1)).Capacity(1, 1)).Sense(0, 1).RunFor(5000);
        Assert.True(rig.Out.Pump);
        Assert.True(rig.EndSense(0).Step().Out.Pump);
        Assert.False(rig.EndSense(1).Step().Out.Pump);
    }

    [Fact]
    [Trait("Rule", "VALVE-LATE")]
    public void A_late_one_is_alarmed_and_not_counted_on_but_neither_retried_nor_latched()
    {
        House house = House.OfZones(2).Gated(1).Switched(1).Retries(0);
        Rig rig = Rig.InSeason(house).RunFor(30_000).Sense(1).Step();
        rig.Always(o => o is { LateValves: 0, Valves: 0 }, House.SwitchLimit - House.Scan);

        rig.Step();
        Assert.Equal((Bits.Of(1), 0, Bits.Of(0)), (rig.Out.LateValves, rig.Out.LatchedValves, rig.Out.Valves));
        rig.Always(o => o is { LateValves: 2, LatchedValves: 0 }, 20_000);
        Assert.True(rig.Out.Pump);
        Assert.Equal(0, rig.Make(1).Step().Out.LateValves);
    }

    [Fact]
    [Trait("Rule", "OPEN-HANDOVER")]
    public void A_driven_zone_that_a_gated_one_replaces_is_released_when_that_has_proven()
    {
        House house = House.OfZones(2).Gated(1);
        Rig rig = Rig.Running(house, 0).Sense(1).EndCall(0).Step();

        rig.Always(o => o is { Pump: true, Valves: 1 }, House.Opening - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
        Assert.True(rig.Out.Pump);
    }
}
