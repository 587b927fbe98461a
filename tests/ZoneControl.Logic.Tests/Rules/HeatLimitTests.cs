namespace ZoneControl.Logic.Tests;

[Trait("Rule", "HEAT-LIMIT")]
public class HeatLimitTests
{
    private static House Limited() => House.OfZones(1).Fit(Contact.Limit | Contact.Reset);

    [Fact]
    public void An_open_limit_has_pump_and_heat_off_in_the_scan_that_accepts_it()
    {
        Rig rig = Rig.Running(Limited(), 0).On(Contact.Limit).Step();

        Assert.False(rig.Out.Pump);
        Assert.False(rig.Out.Heat);
        Assert.Equal(Alarm.LimitLatched, rig.Out.Alarms);
        Assert.Equal(HoldReason.Limit, rig.Out.Hold);
    }

    [Fact]
    public void With_debounce_that_is_when_it_has_stood_open_for_so_long()
    {
        House house = Limited().With(s => (s.ContactDebounceMs[2], s.PumpMinOffMs) = (500, 600));
        Rig rig = Rig.Running(house, 0).On(Contact.Limit).Step();

        rig.Always(o => o is { Pump: true, Heat: true, Alarms: 0 }, 400);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_broken_wire_is_a_trip_whatever_polarity_the_settings_say()
    {
        Rig rig = Rig.Running(Limited().With(s => s.InvertedContacts = 0), 0);
        Assert.NotEqual(0, rig.Contacts.Contacts & Contact.Limit);

        rig.Contacts.Contacts = 0;
        Assert.Equal(HoldReason.Limit, rig.Step().Out.Hold);
    }

    [Fact]
    public void It_stays_latched_when_the_limit_closes_again()
    {
        Rig rig = Rig.Running(Limited(), 0).On(Contact.Limit).Step().Off(Contact.Limit);

        rig.Always(o => o is { Pump: false, Heat: false, Alarms: Alarm.LimitLatched, Hold: HoldReason.Limit }, 60_000);
    }

    [Fact]
    public void Reset_while_the_limit_is_open_clears_nothing()
    {
        Rig rig = Rig.Running(Limited(), 0).On(Contact.Limit).RunFor(5000).Reset();
        Assert.Equal(Alarm.LimitLatched, rig.Out.Alarms);

        rig.Off(Contact.Limit).Always(o => !o.Pump, 5000);
        Assert.Equal(0, rig.Reset().Out.Alarms);
        Assert.Equal(House.StartDelay, rig.RunUntil(o => o.Pump, 5000));
    }

    [Fact]
    public void Valves_stay_open_for_the_rundown_and_as_long_as_somebody_calls()
    {
        Rig rig = Rig.Running(Limited(), 0).On(Contact.Limit);
        rig.Always(o => o.Valves == 1, 5000);

        Assert.Equal(0, rig.EndCall(0).Step().Out.Valves);
    }

    [Fact]
    public void A_limit_that_is_open_at_power_up_is_seen_before_the_pump_can_start()
    {
        House house = Limited().Standing(1).With(s => (s.PumpStartDelayMs, s.ContactDebounceMs[2], s.PumpMinOffMs) = (0, 500, 600));
        Rig rig = Rig.BeforePowerUp(house).Call(0).On(Contact.Limit).Step();

        rig.Always(o => !o.Pump, 60_000);
        Assert.Equal(HoldReason.Limit, rig.Out.Hold);
    }

    [Fact]
    public void A_valve_that_becomes_late_in_the_scan_of_the_limit_stays_through_the_rundown()
    {
        House house = Limited().With(_ => { });
        house = House.OfZones(2).Switched(1).Companions(0).Fit(Contact.Limit);
        Rig rig = Rig.Running(house, 0).Call(1).Step().RunFor(House.SwitchLimit - House.Scan).On(Contact.Limit).Step();
        Assert.Equal(Bits.Of(1), rig.Out.LateValves);
        Assert.False(rig.Out.Pump);

        rig.Always(o => o.Valves == 3, House.Rundown);
        Assert.Equal(Bits.Of(0), rig.Step().Out.Valves);
    }

    [Fact]
    public void A_hand_does_not_run_the_pump_against_it()
    {
        Rig rig = Rig.Running(Limited().Fit(Contact.ServicePump), 0).Hand(0).On(Contact.ServicePump).RunFor(1000).On(Contact.Limit).Step();

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Limit }, 5000);
    }
}

[Trait("Rule", "HEAT-FLOW")]
public class HeatWithFlowTests
{
    [Fact]
    public void Heat_waits_for_flow_where_a_flow_switch_is_fitted()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).Fit(Contact.Flow)).Call(0);
        rig.RunUntil(o => o.Pump, 5000);

        rig.Always(o => o is { Pump: true, Heat: false }, House.FlowProof - 2 * House.Scan);
        Assert.True(rig.On(Contact.Flow).Step().Out.Heat);
    }

    [Fact]
    public void Heat_goes_off_with_flow_and_comes_back_with_it()
    {
        Rig rig = Rig.Running(House.OfZones(1).Fit(Contact.Flow), 0).RunFor(500);
        Assert.True(rig.Out.Heat);

        rig.FlowFollows = false;
        Assert.False(rig.Off(Contact.Flow).Step().Out.Heat);
        Assert.True(rig.On(Contact.Flow).Step().Out.Heat);
    }

    [Fact]
    public void A_pump_that_a_hand_runs_asks_for_no_heat_though_somebody_calls()
    {
        House house = House.OfZones(1).Fit(Contact.ServicePump);
        Rig rig = Rig.Running(house, 0).On(Contact.ServicePump).Hand(0).Step();

        rig.Always(o => o is { Pump: true, Heat: false }, 5000);
    }
}
