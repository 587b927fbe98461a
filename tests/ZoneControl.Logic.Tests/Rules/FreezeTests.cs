namespace ZoneControl.Logic.Tests;

[Trait("Rule", "FREEZE")]
public class FreezeTests
{
    private static House Frosty(int zones = 2) => House.OfZones(zones).Fit(Contact.Freeze | Contact.Priority);

    private static Rig InLockout(House house) => Rig.BeforePowerUp(house).Lockout().Step().RunFor(2000);

    [Fact]
    public void It_opens_every_zone_and_runs_the_pump_with_heat_in_lockout()
    {
        Rig rig = InLockout(Frosty()).On(Contact.Freeze).Step();
        Assert.Equal(3, rig.Out.Valves);
        Assert.Equal(Alarm.FrostInLockout, rig.Out.Alarms);

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Proof }, House.Opening - House.Scan);
        rig.Step();
        Assert.True(rig.Out.Pump);
        Assert.True(rig.Out.Heat);
    }

    [Fact]
    public void A_broken_wire_reads_as_frost_whatever_polarity_the_settings_say()
    {
        Rig rig = InLockout(Frosty().With(s => s.InvertedContacts = 0));
        Assert.Equal(0, rig.Out.Valves);

        rig.Contacts.Contacts &= Contact.Lockout;
        Assert.Equal(3, rig.Step().Out.Valves);
    }

    [Fact]
    public void In_lockout_heat_is_asked_for_no_longer_than_its_limit_and_the_pump_runs_on()
    {
        Rig rig = InLockout(Frosty()).On(Contact.Freeze);
        rig.RunUntil(o => o.Heat, 5000);

        rig.Always(o => o is { Pump: true, Heat: true }, House.FreezeHeatMax - House.Scan);
        rig.Always(o => o is { Pump: true, Heat: false, Valves: 3 }, 60_000);
    }

    [Fact]
    public void In_season_again_frost_gets_heat_whatever_it_used_up_in_lockout()
    {
        Rig rig = InLockout(Frosty()).On(Contact.Freeze);
        rig.RunUntil(o => o.Heat, 5000);
        rig.RunUntil(o => !o.Heat, House.FreezeHeatMax);

        rig.Season().RunFor(2 * House.Scan);
        rig.Always(o => o.Heat, 2 * House.FreezeHeatMax);
    }

    [Fact]
    public void The_limit_holds_for_all_heat_of_one_freeze_together()
    {
        House house = Frosty().Fit(Contact.Flow).With(s => s.FlowLossMs = 5000);
        Rig rig = InLockout(house).On(Contact.Freeze);
        rig.FlowFollows = true;
        rig.RunUntil(o => o.Heat, 5000);
        rig.RunFor(2000);
        rig.FlowFollows = false;
        rig.Off(Contact.Flow).RunFor(3000);
        Assert.False(rig.Out.Heat);

        rig.On(Contact.Flow).Step();
        rig.Always(o => o.Heat, House.FreezeHeatMax - 2000 - 2 * House.Scan);
        Assert.False(rig.Step().Out.Heat);
    }

    [Fact]
    public void A_new_freeze_has_its_heat_anew()
    {
        Rig rig = InLockout(Frosty()).On(Contact.Freeze).RunFor(House.Opening + House.FreezeHeatMax + 1000);
        Assert.False(rig.Out.Heat);

        Assert.True(rig.Off(Contact.Freeze).Step().On(Contact.Freeze).Step().Out.Heat);
    }

    [Fact]
    public void Heat_that_frost_asked_for_in_season_does_not_count_against_the_limit_in_lockout()
    {
        Rig rig = Rig.InSeason(Frosty()).On(Contact.Freeze).RunFor(60_000);
        Assert.True(rig.Out.Heat);
        Assert.Equal(0, rig.Out.Alarms);

        rig.Lockout().Step();
        rig.Always(o => o.Heat, House.FreezeHeatMax - House.Scan);
        Assert.False(rig.Step().Out.Heat);
    }

    [Fact]
    public void In_season_heat_has_no_limit()
    {
        Rig rig = Rig.InSeason(Frosty()).On(Contact.Freeze);
        rig.RunUntil(o => o.Heat, 5000);

        rig.Always(o => o is { Heat: true, Alarms: 0 }, 60_000);
    }

    [Fact]
    public void A_limit_of_nothing_asks_for_no_heat_in_lockout()
    {
        Rig rig = InLockout(Frosty().With(s => s.FreezeHeatMaxMs = 0)).On(Contact.Freeze);

        rig.Always(o => !o.Heat, 20_000);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void It_overrides_priority()
    {
        Rig rig = Rig.InSeason(Frosty()).On(Contact.Priority).RunFor(2000).On(Contact.Freeze);
        rig.RunUntil(o => o.Pump, 5000);

        rig.Always(o => o is { Pump: true, Heat: true, Valves: 3 }, 10_000);
    }

    [Fact]
    public void When_it_is_over_the_pump_stops_in_order()
    {
        Rig rig = InLockout(Frosty()).On(Contact.Freeze).RunFor(4000).Off(Contact.Freeze).Step();
        Assert.False(rig.Out.Heat);

        rig.Always(o => o is { Pump: true, Valves: 3 }, House.Overrun - House.Scan);
        rig.Always(o => o is { Pump: false, Valves: 3 }, House.Rundown);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_call_in_lockout_changes_nothing_about_it_or_its_limit()
    {
        Rig rig = InLockout(Frosty()).Call(0).On(Contact.Freeze);
        rig.RunUntil(o => o.Heat, 5000);

        rig.Always(o => o.Heat, House.FreezeHeatMax - House.Scan);
        Assert.False(rig.Step().Out.Heat);
    }

    [Fact]
    public void It_does_not_open_a_latched_valve()
    {
        House house = Frosty().Switched(1).Retries(0).Companions(0);
        Rig rig = Rig.InSeason(house).Call(1).RunFor(House.SwitchLimit + House.Scan);
        Assert.Equal(Bits.Of(1), rig.Out.LatchedValves);

        rig.On(Contact.Freeze).Step().Always(o => o.Valves == Bits.Of(0), 5000);
    }
}

[Trait("Rule", "PRIORITY")]
public class PriorityTests
{
    private static House First() => House.OfZones(2).Fit(Contact.Priority);

    [Fact]
    public void It_takes_heat_off_then_the_pump_without_an_overrun_then_releases_the_valves()
    {
        Rig rig = Rig.Running(First(), 0).RunFor(1000).On(Contact.Priority).Step();
        Assert.True(rig.Out.Pump);
        Assert.False(rig.Out.Heat);

        rig.Always(o => o is { Pump: true, Heat: false, Valves: 1, Hold: HoldReason.None }, House.HeatLead - House.Scan);
        rig.Always(o => o is { Pump: false, Valves: 1, Hold: HoldReason.Priority }, House.Rundown);
        rig.Always(o => o is { Pump: false, Valves: 0, Hold: HoldReason.Priority }, 5000);
    }

    [Fact]
    public void While_it_lasts_no_call_opens_a_valve()
    {
        Rig rig = Rig.InSeason(First()).On(Contact.Priority).RunFor(1000).Call(0, 1);

        rig.Always(o => o is { Valves: 0, Pump: false, Hold: HoldReason.Priority, Alarms: 0 }, 10_000);
    }

    [Fact]
    public void When_it_releases_standing_calls_start_through_every_delay()
    {
        Rig rig = Rig.Running(First(), 0).On(Contact.Priority).RunFor(10_000).Off(Contact.Priority).Step();

        rig.Always(o => o is { Pump: false, Valves: 1 }, House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void Longer_than_its_limit_it_is_alarmed_and_ignored_until_it_releases()
    {
        Rig rig = Rig.InSeason(First()).Call(0).On(Contact.Priority).Step();
        rig.Always(o => o is { Valves: 0, Alarms: 0 }, House.PriorityMax - House.Scan);

        rig.Step();
        Assert.Equal(Alarm.PriorityLong, rig.Out.Alarms);
        Assert.Equal(1, rig.Out.Valves);
        rig.RunFor(60_000);
        Assert.True(rig.Out.Pump);

        Assert.Equal(0, rig.Off(Contact.Priority).Step().Out.Alarms);
        Assert.False(rig.On(Contact.Priority).Step().Out.Heat);
    }

    [Fact]
    public void It_cuts_an_overrun_short()
    {
        Rig rig = Rig.Running(First(), 0).RunFor(1000).EndCall(0).Step().RunFor(500).On(Contact.Priority).Step();

        Assert.False(rig.Out.Pump);
        rig.Always(o => o.Valves == 1, House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    [Trait("Rule", "VALVE-LATE")]
    public void A_valve_that_becomes_late_in_the_very_scan_that_it_ends_demand_and_stops_the_pump_is_not_latched()
    {
        House house = First().Switched(1).Companions(0).Retries(0).Fit(Contact.Flow).With(s => s.FlowLossMs = 10_000);
        Rig rig = Rig.Running(house, 0).RunFor(1000).Call(1).Step().RunFor(House.SwitchLimit - 1000);
        rig.FlowFollows = false; // heat goes off with flow, so that nothing is left to wait for
        rig.Off(Contact.Flow).RunFor(1000 - House.Scan).On(Contact.Priority).Step();
        Assert.Equal((false, Bits.Of(1), 0), (rig.Out.Pump, rig.Out.LateValves, rig.Out.LatchedValves));

        rig.Always(o => o is { Valves: 1, LatchedValves: 0 }, House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void Released_within_the_lead_it_lets_the_pump_run_on()
    {
        Rig rig = Rig.Running(First(), 0).RunFor(1000).On(Contact.Priority).Step().Off(Contact.Priority);

        rig.Always(o => o is { Pump: true, Heat: true }, 5000);
    }
}
