namespace ZoneControl.Logic.Tests;

[Trait("Rule", "PUMP-FLOW")]
public class PumpFlowTests
{
    private static House Sensed(int retries = 1) =>
        House.OfZones(1).Fit(Contact.Flow | Contact.Reset).With(s => (s.FlowRetries, s.PumpMinOffMs) = (retries, 2000));

    /// <summary>The pump has just gone on and no water moves.</summary>
    private static Rig Dry(House house)
    {
        Rig rig = Rig.InSeason(house).Call(0);
        rig.RunUntil(o => o.Pump, 5000);
        return rig;
    }

    [Fact]
    public void No_flow_within_its_time_of_a_start_trips_the_pump_and_not_one_scan_before()
    {
        Rig rig = Dry(Sensed());

        rig.Always(o => o is { Pump: true, Heat: false, Alarms: 0 }, House.FlowProof - House.Scan);
        rig.Step();
        Assert.False(rig.Out.Pump);
        Assert.Equal(Alarm.FlowTrip, rig.Out.Alarms);
        Assert.Equal(HoldReason.Rest, rig.Out.Hold);
    }

    [Fact]
    public void Even_after_the_shortest_lawful_rest_a_trip_says_truly_why_the_pump_is_off()
    {
        House house = Sensed().With(s => s.PumpMinOffMs = House.Scan);
        Rig rig = Dry(house).RunFor(House.FlowProof - House.Scan);

        Assert.Equal((false, HoldReason.Rest), (rig.Step().Out.Pump, rig.Out.Hold));
        Assert.Equal((true, HoldReason.None), (rig.Step().Out.Pump, rig.Out.Hold));
    }

    [Fact]
    public void Flow_that_comes_in_the_scan_in_which_its_time_is_up_trips_nothing()
    {
        Rig rig = Dry(Sensed()).RunFor(House.FlowProof - House.Scan).On(Contact.Flow);

        rig.Always(o => o is { Pump: true, Heat: true, Alarms: 0 }, 5000);
    }

    [Fact]
    public void Flow_that_is_lost_while_running_has_its_own_time()
    {
        Rig rig = Dry(Sensed()).On(Contact.Flow).RunFor(60_000).Off(Contact.Flow).Step();

        rig.Always(o => o is { Pump: true, Heat: false, Alarms: 0 }, House.FlowLoss - House.Scan);
        Assert.False(rig.Step().Out.Pump);
        Assert.Equal(Alarm.FlowTrip, rig.Out.Alarms);
    }

    [Fact]
    public void Each_loss_of_flow_is_counted_anew()
    {
        Rig rig = Dry(Sensed()).On(Contact.Flow).RunFor(1000);
        for (int i = 0; i < 10; i++)
        {
            rig.Off(Contact.Flow).Always(o => o.Pump, House.FlowLoss);
            rig.On(Contact.Flow).Always(o => o is { Pump: true, Heat: true }, House.Scan);
        }
    }

    [Fact]
    public void A_tripped_pump_is_tried_again_after_its_rest_and_its_valves_stay_open()
    {
        Rig rig = Dry(Sensed());
        rig.RunUntil(o => !o.Pump, 2000);

        rig.Always(o => o is { Pump: false, Valves: 1, Hold: HoldReason.Rest }, 2000 - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void When_the_retries_are_used_up_it_is_latched_and_started_no_more()
    {
        Rig rig = Dry(Sensed(retries: 2));
        for (int trip = 1; trip <= 3; trip++)
        {
            rig.RunUntil(o => o.Pump, 3000);
            Assert.Equal(0, rig.Out.Alarms & Alarm.FlowLatched);
            rig.RunUntil(o => !o.Pump, 2000);
        }

        Assert.Equal(Alarm.FlowTrip | Alarm.FlowLatched, rig.Out.Alarms);
        rig.Always(o => o is { Pump: false, Hold: HoldReason.FlowLatched }, 60_000);
    }

    [Fact]
    public void Without_retries_the_first_trip_latches()
    {
        Rig rig = Dry(Sensed(retries: 0));
        rig.RunUntil(o => !o.Pump, 2000);

        Assert.Equal(Alarm.FlowLatched, rig.Out.Alarms);
    }

    [Fact]
    public void An_orderly_stop_clears_the_count_and_the_alarm()
    {
        Rig rig = Dry(Sensed());
        rig.RunUntil(o => !o.Pump, 2000);
        rig.RunUntil(o => o.Pump, 3000);
        rig.FlowFollows = true;
        rig.RunFor(1000).EndCall(0);
        Assert.Equal(Alarm.FlowTrip, rig.Out.Alarms);

        rig.RunUntil(o => !o.Pump, 5000);
        Assert.Equal(0, rig.Out.Alarms);
    }

    [Fact]
    public void A_trip_for_want_of_proof_does_not_clear_the_count()
    {
        House house = Sensed().Switched(0);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(1000).Make(0);
        rig.RunUntil(o => o.Pump, 5000);
        rig.RunUntil(o => !o.Pump, 2000);
        rig.RunUntil(o => o.Pump, 3000);
        rig.Break(0).Step();

        Assert.False(rig.Out.Pump);
        Assert.Equal(Alarm.FlowTrip, rig.Out.Alarms);
    }

    [Fact]
    public void Reset_clears_the_count_and_the_latch()
    {
        Rig rig = Dry(Sensed(retries: 0)).RunFor(5000);
        Assert.Equal(HoldReason.FlowLatched, rig.Out.Hold);

        rig.Reset();
        Assert.Equal(0, rig.Out.Alarms);
        Assert.Equal(HoldReason.StartDelay, rig.Out.Hold);
        Assert.Equal(House.StartDelay, rig.RunUntil(o => o.Pump, 3000));
    }

    [Fact]
    public void Flow_lost_in_the_overrun_ends_it()
    {
        Rig rig = Dry(Sensed()).On(Contact.Flow).RunFor(1000).EndCall(0).Off(Contact.Flow).Step();

        rig.Always(o => o.Pump, House.FlowLoss - House.Scan);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_house_without_a_flow_switch_is_not_tripped_for_want_of_flow()
    {
        Rig rig = Dry(House.OfZones(1));

        rig.Always(o => o is { Pump: true, Heat: true }, 10_000);
    }
}

[Trait("Rule", "PUMP-STUCK")]
public class PumpStuckTests
{
    private static House Sensed() => House.OfZones(3).Minimum(2).Fit(Contact.Flow | Contact.ServicePump).With(s => s.PumpRundownMs = 3000);

    [Fact]
    public void Flow_while_the_pump_has_been_off_for_its_rundown_is_alarmed_and_not_one_scan_before()
    {
        Rig rig = Rig.Running(Sensed(), 0, 1).RunFor(1000);
        rig.FlowFollows = false;
        rig.EndCall(0, 1);
        rig.RunUntil(o => !o.Pump, 5000);

        rig.Always(o => o is { Alarms: 0, Valves: 3 }, 3000 - House.Scan);
        Assert.Equal(Alarm.PumpStuck, rig.Step().Out.Alarms);
    }

    [Fact]
    public void Flow_in_a_house_at_rest_is_alarmed_at_once_and_zones_are_opened_to_minimum_open_though_nobody_asks()
    {
        Rig rig = Rig.InSeason(Sensed()).RunFor(10_000).On(Contact.Flow).Step();

        Assert.Equal(Alarm.PumpStuck, rig.Out.Alarms);
        rig.Always(o => o is { Pump: false, Heat: false, Hold: HoldReason.None, Valves: 3 }, 10_000);
    }

    [Fact]
    public void Zones_are_opened_in_lockout_too()
    {
        Rig rig = Rig.InSeason(Sensed()).Lockout().Call(2).RunFor(10_000).On(Contact.Flow).Step();

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Lockout, Valves: 3 }, 5000);
    }

    [Fact]
    public void Starts_and_heat_are_withheld_until_there_has_been_no_flow_for_a_rundown()
    {
        Rig rig = Rig.InSeason(Sensed()).RunFor(4000).On(Contact.Flow).Step().Call(0).RunFor(10_000);
        Assert.Equal(HoldReason.PumpStuck, rig.Out.Hold);

        rig.Off(Contact.Flow).Step();
        rig.Always(o => o is { Pump: false, Hold: HoldReason.PumpStuck }, 3000 - House.Scan);
        rig.Step();
        Assert.Equal(0, rig.Out.Alarms);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void Flow_that_comes_back_begins_the_quiet_time_anew()
    {
        Rig rig = Rig.InSeason(Sensed()).RunFor(4000).On(Contact.Flow).Step().Off(Contact.Flow).RunFor(3000).On(Contact.Flow).Step();

        rig.Off(Contact.Flow).Step().Always(o => o.Alarms == Alarm.PumpStuck, 3000 - House.Scan);
        Assert.Equal(0, rig.Step().Out.Alarms);
        Assert.Equal(0, rig.Out.Valves);
    }

    [Fact]
    public void A_hand_closes_what_it_does_not_open_once_water_stands_and_starts_nothing()
    {
        Rig rig = Rig.InSeason(Sensed()).RunFor(4000).On(Contact.Flow).RunFor(1000).Hand(2).On(Contact.ServicePump).Step();
        rig.Always(o => o is { Pump: false, Hold: HoldReason.PumpStuck, Valves: 7 }, 1000);

        Assert.Equal(Bits.Of(2), rig.Off(Contact.Flow).Step().Out.Valves);
    }

    [Fact]
    [Trait("Rule", "PUMP-ORDER")]
    public void Flow_that_ceases_within_the_rundown_is_no_alarm_and_valves_go_at_its_end()
    {
        Rig rig = Rig.Running(Sensed(), 0, 1).RunFor(1000);
        rig.FlowFollows = false;
        rig.EndCall(0, 1);
        rig.RunUntil(o => !o.Pump, 5000);
        rig.RunFor(3000 - 2 * House.Scan).Off(Contact.Flow).Step();

        Assert.Equal((3, 0), (rig.Out.Valves, rig.Out.Alarms));
        Assert.Equal((0, 0), (rig.Step().Out.Valves, rig.Out.Alarms));
    }

    [Fact]
    [Trait("Rule", "PUMP-ORDER")]
    public void Valves_stay_open_after_the_rundown_until_flow_is_seen_to_cease()
    {
        Rig rig = Rig.Running(Sensed().With(s => s.PumpRundownMs = 800), 0, 1).RunFor(1000);
        rig.FlowFollows = false;
        rig.EndCall(0, 1);
        rig.RunUntil(o => !o.Pump, 5000);

        rig.Always(o => o.Valves == 3, 5000);
        Assert.Equal(Alarm.PumpStuck, rig.Out.Alarms);
        rig.Off(Contact.Flow).Step().Always(o => o.Valves == 3, 800 - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }
}
