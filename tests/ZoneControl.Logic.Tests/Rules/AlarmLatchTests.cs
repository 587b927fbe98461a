namespace ZoneControl.Logic.Tests;

[Trait("Rule", "ALARM-LATCH")]
public class AlarmLatchTests
{
    private static House Latching() => House.OfZones(2).Switched(0).Retries(0).Companions(1).Fit(Contact.Reset | Contact.Limit);

    /// <summary>Zone 0 calls and is latched.</summary>
    private static Rig Latched(House house)
    {
        Rig rig = Rig.InSeason(house).Call(0).RunFor(House.SwitchLimit + House.Scan);
        Assert.Equal(Bits.Of(0), rig.Out.LatchedValves);
        return rig;
    }

    [Fact]
    public void Reset_lets_a_latched_valve_be_driven_again_but_nothing_goes_on_in_that_scan()
    {
        Rig rig = Latched(Latching()).Reset();
        Assert.Equal(0, rig.Out.LatchedValves | rig.Out.LateValves | rig.Out.Valves);

        Assert.Equal(Bits.Of(0), rig.Step().Out.Valves);
    }

    [Fact]
    public void A_button_that_is_held_resets_once()
    {
        Rig rig = Latched(Latching()).On(Contact.Reset).RunFor(2000 + House.SwitchLimit);
        Assert.Equal(Bits.Of(0), rig.Out.LatchedValves);

        rig.Always(o => o.LatchedValves == 1, 20_000);
    }

    [Fact]
    public void A_jumpered_button_does_nothing()
    {
        Rig rig = Rig.BeforePowerUp(Latching()).On(Contact.Reset).Step().Step().Call(0).RunFor(House.SwitchLimit + House.Scan);

        rig.Always(o => o.LatchedValves == 1, 20_000);
    }

    [Fact]
    public void The_pump_does_not_start_in_the_scan_of_a_reset_and_demand_goes_through_its_delay_again()
    {
        House house = House.OfZones(1).Fit(Contact.Reset).With(s => s.PumpStartDelayMs = 5000);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(5000 - House.Scan).Reset();
        Assert.False(rig.Out.Pump);
        Assert.Equal(HoldReason.StartDelay, rig.Out.Hold);

        Assert.Equal(5000, rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void Without_a_delay_only_the_reset_holds_the_pump_in_that_scan()
    {
        House house = House.OfZones(1).Fit(Contact.Reset).With(s => s.PumpStartDelayMs = 0);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(House.Opening - House.Scan).Reset();
        Assert.Equal(HoldReason.Reset, rig.Out.Hold);
        Assert.False(rig.Out.Pump);

        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_pump_that_runs_when_the_button_goes_down_runs_on_with_heat()
    {
        Rig rig = Rig.Running(Latching(), 1).RunFor(1000).On(Contact.Reset);

        rig.Always(o => o is { Pump: true, Heat: true, Valves: 2 }, 5000);
    }

    [Fact]
    public void Heat_does_not_come_on_in_the_scan_of_a_reset()
    {
        House house = House.OfZones(1).Fit(Contact.Reset | Contact.Flow);
        Rig rig = Rig.InSeason(house).Call(0);
        rig.RunUntil(o => o.Pump, 5000);
        rig.On(Contact.Flow).Reset();

        Assert.False(rig.Out.Heat);
        Assert.True(rig.Step().Out.Heat);
    }

    [Fact]
    public void No_waiting_valve_is_opened_in_the_scan_of_a_reset()
    {
        Rig rig = Rig.InSeason(Latching()).Call(1).Reset();
        Assert.Equal(0, rig.Out.Valves);

        Assert.Equal(Bits.Of(1), rig.Step().Out.Valves);
    }

    [Fact]
    public void A_late_valve_that_is_not_latched_stays_alarmed_but_its_tries_begin_anew()
    {
        House house = Latching().Retries(1);
        Rig rig = Rig.InSeason(house).Call(0).RunFor(House.SwitchLimit + House.Scan);
        Assert.Equal(Bits.Of(0), rig.Out.LateValves);
        Assert.Equal(0, rig.Out.LatchedValves);

        rig.Reset();
        Assert.Equal(Bits.Of(0), rig.Out.LateValves);
        rig.RunFor(House.Closing + House.SwitchLimit);
        Assert.Equal(0, rig.Out.LatchedValves);
        rig.RunFor(House.Closing + House.SwitchLimit + House.Scan);
        Assert.Equal(Bits.Of(0), rig.Out.LatchedValves);
    }

    [Fact]
    public void A_reset_in_a_rundown_releases_no_valve_before_its_end()
    {
        House house = House.OfZones(2).Switched(1).Fit(Contact.Reset).With(s => s.PumpRundownMs = 3000);
        Rig rig = Rig.Running(house, 0, 1).RunFor(3000).Make(1).RunFor(1000).EndCall(0, 1);
        rig.RunUntil(o => !o.Pump, 5000);
        rig.Break(1).Step().Reset();

        Assert.Equal(3, rig.Out.Valves);
        rig.Always(o => o.Valves == 3, 3000 - 3 * House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void Power_up_counts_as_a_reset()
    {
        Rig rig = Latched(Latching()).On(Contact.Limit).Step();
        Assert.Equal(Alarm.LimitLatched, rig.Out.Alarms);

        rig.Off(Contact.Limit).PowerCut().Step().Step();
        Assert.Equal(0, rig.Out.Alarms | rig.Out.LatchedValves | rig.Out.LateValves);
        Assert.Equal(Bits.Of(0), rig.Out.Valves);
    }
}
