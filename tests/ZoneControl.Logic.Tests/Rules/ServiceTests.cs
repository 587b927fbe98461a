namespace ZoneControl.Logic.Tests;

[Trait("Rule", "SERVICE")]
public class ServiceTests
{
    private static House Served(int zones = 3) => House.OfZones(zones).Fit(Contact.ServicePump | Contact.Freeze | Contact.Priority);

    [Fact]
    public void A_hand_opens_what_it_opens_and_nothing_else_in_lockout_too()
    {
        Rig rig = Rig.InSeason(Served().Minimum(3)).Lockout().Hand(1).Step();

        rig.Always(o => o is { Valves: 2, Pump: false, Heat: false, Hold: HoldReason.None }, 10_000);
    }

    [Fact]
    public void It_starts_the_pump_without_the_delay_but_not_without_proof()
    {
        Rig rig = Rig.InSeason(Served().With(s => s.PumpStartDelayMs = 60_000)).Hand(1).On(Contact.ServicePump).Step();

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Proof }, House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Pump);
        rig.Always(o => o is { Pump: true, Heat: false }, 5000);
    }

    [Fact]
    public void A_late_valve_is_tried_again_while_the_pump_runs_by_hand()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Switched(0).Fit(Contact.ServicePump)).Hand(0, 1).On(Contact.ServicePump);
        rig.RunUntil(o => o.Pump, House.Opening + 3 * House.Scan);
        rig.RunUntil(o => o.LateValves == 1, House.SwitchLimit);
        Assert.Equal((2, true), (rig.Out.Valves, rig.Out.Pump));

        rig.Always(o => o is { Valves: 2, Pump: true }, House.Closing - House.Scan);
        Assert.Equal(3, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_pump_that_a_hand_stops_stops_at_once_when_there_was_no_heat_and_its_valves_stay_for_the_rundown()
    {
        Rig rig = Rig.InSeason(Served()).Hand(1).On(Contact.ServicePump).RunFor(4000).Off(Contact.ServicePump).EndHand(1).Hand(2).Step();
        Assert.False(rig.Out.Pump);

        rig.Always(o => o.Valves == Bits.Of(1, 2), House.Rundown - House.Scan);
        Assert.Equal(Bits.Of(2), rig.Step().Out.Valves);
    }

    [Fact]
    public void Taking_over_a_house_that_heats_ends_heat_first_and_has_no_overrun()
    {
        Rig rig = Rig.Running(Served(), 0).RunFor(1000).Hand(0).Step();
        Assert.False(rig.Out.Heat);

        rig.Always(o => o is { Pump: true, Hold: HoldReason.None }, House.HeatLead - House.Scan);
        rig.Step();
        Assert.False(rig.Out.Pump);
        Assert.Equal(HoldReason.Service, rig.Out.Hold);
    }

    [Fact]
    public void It_wins_over_freeze_and_priority()
    {
        Rig rig = Rig.InSeason(Served()).On(Contact.Freeze | Contact.Priority).RunFor(500).Hand(1).Step();

        rig.Always(o => o.Valves == Bits.Of(1), 5000);
    }

    [Fact]
    public void While_the_pump_runs_no_valve_goes_that_minimum_open_needs()
    {
        Rig rig = Rig.InSeason(Served()).Hand(0).On(Contact.ServicePump).RunFor(4000).EndHand(0).Hand(1).Step();

        rig.Always(o => o is { Pump: true, Valves: 3 }, House.Opening - House.Scan);
        Assert.Equal(Bits.Of(1), rig.Step().Out.Valves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void A_proven_valve_that_a_hand_lets_go_is_no_proof_for_the_reason_published()
    {
        House house = Served().With(s => s.PumpMinOffMs = 20_000);
        Rig rig = Rig.InSeason(house).Hand(0).RunFor(4000).EndHand(0).Hand(1).On(Contact.ServicePump).Step();

        Assert.Equal(Bits.Of(1), rig.Out.Valves);
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);
    }

    [Fact]
    public void It_ends_by_itself_after_its_limit_and_is_ignored_until_all_is_let_go()
    {
        Rig rig = Rig.InSeason(Served()).Hand(1).On(Contact.ServicePump).Step();
        rig.Always(o => o is { Valves: 2, Alarms: 0 }, House.ServiceLimit - House.Scan);

        rig.Step();
        Assert.Equal(Alarm.ServiceEnded, rig.Out.Alarms);
        rig.RunUntil(o => o is { Pump: false, Valves: 0 }, 5000);
        rig.Hand(2).Off(Contact.ServicePump).Always(o => o is { Valves: 0, Alarms: Alarm.ServiceEnded }, 10_000);

        Assert.Equal(0, rig.EndHand(1, 2).Step().Out.Alarms);
        Assert.Equal(Bits.Of(2), rig.Hand(2).Step().Out.Valves);
    }

    [Fact]
    public void The_limit_counts_from_the_first_hand_though_others_follow_without_a_gap()
    {
        Rig rig = Rig.InSeason(Served()).Hand(1).RunFor(House.ServiceLimit / 2).EndHand(1).Hand(2).RunFor(House.ServiceLimit / 2);
        Assert.Equal(0, rig.Out.Alarms);

        Assert.Equal(Alarm.ServiceEnded, rig.Step().Out.Alarms);
    }

    [Fact]
    public void Calls_take_over_when_it_ends()
    {
        Rig rig = Rig.InSeason(Served()).Call(0).Hand(1).On(Contact.ServicePump).RunFor(4000);
        Assert.True(rig.Out.Pump);

        rig.EndHand(1).Off(Contact.ServicePump).Step();
        Assert.True(rig.Out.Pump);
        Assert.True(rig.Out.Heat);
        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);
        rig.RunFor(House.Opening);
        Assert.Equal(Bits.Of(0), rig.Out.Valves);
    }

    [Fact]
    public void A_hand_counts_when_it_has_stood_for_the_debounce_of_calls()
    {
        Rig rig = Rig.InSeason(Served().With(s => s.CallDebounceMs = 500)).Hand(0).Step();

        rig.Always(o => o.Valves == 0, 400);
        Assert.Equal(1, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_hand_does_not_open_a_latched_valve()
    {
        House house = Served().Switched(0).Retries(0);
        Rig rig = Rig.InSeason(house).Hand(0).RunFor(House.SwitchLimit + House.Scan);
        Assert.Equal(Bits.Of(0), rig.Out.LatchedValves);

        rig.EndHand(0).Step().Hand(0, 1).Always(o => o.Valves == Bits.Of(1), 5000);
    }

    [Fact]
    public void A_late_valve_is_not_given_up_in_the_scan_in_which_a_hand_stops_the_pump()
    {
        House house = Served(2).Switched(1).Retries(5);
        Rig rig = Rig.InSeason(house).Hand(0).On(Contact.ServicePump).RunFor(4000).Hand(1).Step()
            .RunFor(House.SwitchLimit - House.Scan).Off(Contact.ServicePump).Step();
        Assert.False(rig.Out.Pump);
        Assert.Equal(Bits.Of(1), rig.Out.LateValves);

        rig.Always(o => o.Valves == 3, House.Rundown);
        Assert.Equal(Bits.Of(0), rig.Step().Out.Valves);
    }
}
