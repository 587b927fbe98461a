namespace ZoneControl.Logic.Tests;

[Trait("Rule", "ANSWER-ON")]
public class AnswerOnTests
{
    [Theory]
    [InlineData(500)]
    [InlineData(4000)]
    public void Demand_has_the_pump_on_within_opening_time_or_start_delay_whichever_is_longer(int startDelay)
    {
        Rig rig = Rig.InSeason(House.OfZones(4).Minimum(3).With(s => s.PumpStartDelayMs = startDelay)).Call(2).Step();

        Assert.Equal(Math.Max(House.Opening, startDelay), rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void A_call_in_mid_closing_is_answered_within_full_opening_time()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0);
        rig.RunUntil(o => o.Valves == 0, 5000);

        rig.RunFor(300).Call(0).Step();
        Assert.Equal(House.Opening, rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void Calls_that_wander_from_zone_to_zone_without_a_gap_are_answered_as_one_demand()
    {
        Rig rig = Rig.InSeason(House.OfZones(4)).Call(0).Step();
        int took = 0;
        for (int zone = 0; !rig.Out.Pump; zone = (zone + 1) % 4)
        {
            rig.EndCall(zone).Call((zone + 1) % 4).RunFor(300);
            took += 300;
        }

        Assert.InRange(took, House.Opening, House.Opening + 300);
    }
}

[Trait("Rule", "ANSWER-OFF")]
public class AnswerOffTests
{
    [Fact]
    public void Without_demand_everything_is_off_within_overrun_and_rundown()
    {
        Rig rig = Rig.Running(House.OfZones(3).Minimum(2).Switched(1), 0, 1, 2).EndCall(0, 1, 2).Step();

        Assert.Equal(House.Overrun + House.Rundown, rig.RunUntil(o => !o.Pump && !o.Heat && o.Valves == 0, 5000));
        Assert.Equal(ZoneController.Never, rig.RunFor(House.Closing + 200).Out.NextDeadlineMs);
    }

    [Fact]
    public void A_trip_in_the_overrun_shortens_it()
    {
        Rig rig = Rig.Running(House.OfZones(1).Switched(0), 0).EndCall(0).Step().Break(0).Step();

        Assert.Equal(House.Rundown, rig.RunUntil(o => o.Valves == 0, 5000));
    }

    [Fact]
    public void A_switch_that_chatters_through_the_stop_does_not_lengthen_it()
    {
        Rig rig = Rig.Running(House.OfZones(2).Switched(0), 0, 1).EndCall(0, 1).Step();
        int took = 0;
        while (rig.Out.Valves != 0)
        {
            rig.Break(0).Step().Make(0).Step();
            took += 2 * House.Scan;
        }

        Assert.InRange(took, 0, House.Overrun + House.Rundown + 2 * House.Scan);
    }

    [Fact]
    public void A_late_valve_does_not_lengthen_the_stop()
    {
        Rig rig = Rig.Running(House.OfZones(2).Switched(0).Companions(1), 1).Call(0).RunFor(House.SwitchLimit + 2000).EndCall(0, 1).Step();

        Assert.InRange(rig.RunUntil(o => o.Valves == 0, 5000), 0, House.Overrun + House.Rundown);
    }
}

[Trait("Rule", "ANSWER-WHY")]
public class AnswerWhyTests
{
    [Fact]
    public void Nobody_asks_and_nothing_is_held()
    {
        Rig.InSeason(House.OfZones(1)).Always(o => o.Hold == HoldReason.None, 1000);
    }

    [Fact]
    public void The_reasons_come_in_their_order_as_one_condition_after_another_is_met()
    {
        House house = House.OfZones(2).Minimum(2).Switched(1).Retries(5).With(s => s.PumpStartDelayMs = 20_000);
        Rig rig = Rig.InSeason(house).Lockout().Step().Call(0).Step();
        Assert.Equal(HoldReason.Lockout, rig.Out.Hold);

        rig.Season().Step();
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);
        rig.RunFor(House.SwitchLimit);
        Assert.Equal(HoldReason.TooFewValves, rig.Out.Hold);
        rig.RunFor(House.Closing + House.SwitchMin).Make(1).Step();
        Assert.Equal(HoldReason.StartDelay, rig.Out.Hold);
        rig.RunUntil(o => o.Pump, 20_000);
        Assert.Equal(HoldReason.None, rig.Out.Hold);
    }

    [Fact]
    public void Reasons_for_withheld_calls_come_in_their_order()
    {
        House house = House.OfZones(1).Switched(0).Retries(0).Fit(Contact.Priority);
        Rig rig = Rig.InSeason(house).Call(0).RunFor(House.SwitchLimit + House.Scan);
        Assert.Equal(HoldReason.ValveLatched, rig.Out.Hold);

        Assert.Equal(HoldReason.Lockout, rig.Lockout().Step().Out.Hold);
        Assert.Equal(HoldReason.Priority, rig.On(Contact.Priority).Step().Out.Hold);
        Assert.Equal(HoldReason.Service, rig.Hand(0).Step().Out.Hold);
    }

    [Fact]
    public void Reasons_for_a_pump_that_is_wanted_come_in_their_order()
    {
        House house = House.OfZones(2).Minimum(2).Switched(1).Retries(0).Fit(Contact.Limit | Contact.Flow | Contact.Supply | Contact.Reset)
            .With(s => (s.FlowRetries, s.PumpMinOffMs, s.PumpStartDelayMs, s.PumpRundownMs) = (0, 30_000, 3000, 1000));
        Rig rig = Rig.InSeason(house).RunFor(30_000).Call(0, 1).RunFor(1000).Make(1);
        rig.RunUntil(o => o.Pump, 5000);
        rig.RunUntil(o => !o.Pump, 2000); // without flow
        rig.RunFor(1000).On(Contact.Flow).RunFor(500).On(Contact.Limit).Off(Contact.Supply).Break(1).Step();

        // Everything is unmet. One after the other is met.
        Assert.Equal(HoldReason.Limit, rig.Out.Hold);
        rig.Off(Contact.Limit).Step();
        Assert.Equal(HoldReason.Limit, rig.Out.Hold);
        rig.Reset();
        Assert.Equal(HoldReason.PumpStuck, rig.Out.Hold);
        rig.Off(Contact.Flow).RunFor(1000 + House.Scan);
        Assert.Equal(HoldReason.Supply, rig.Out.Hold);
        rig.On(Contact.Supply).Step();
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);
        rig.RunFor(House.SwitchLimit);
        Assert.Equal(HoldReason.TooFewValves, rig.Out.Hold);
        rig.Reset().Step();
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);
        rig.RunFor(1000).Make(1).Step();
        Assert.Equal(HoldReason.StartDelay, rig.Out.Hold);
        rig.RunFor(3000);
        Assert.Equal(HoldReason.Rest, rig.Out.Hold);
        rig.RunUntil(o => o.Pump, 60_000);
        Assert.Equal(HoldReason.None, rig.Out.Hold);
    }

    [Fact]
    public void The_limit_comes_before_want_of_flow_and_that_before_stray_flow()
    {
        House house = House.OfZones(1).Fit(Contact.Limit | Contact.Flow).With(s => (s.FlowRetries, s.PumpRundownMs) = (0, 1000));
        Rig rig = Rig.InSeason(house).Call(0);
        rig.RunUntil(o => o.Pump, 5000);
        rig.RunUntil(o => !o.Pump, 2000);
        rig.RunFor(1000).On(Contact.Flow).Step();
        Assert.Equal(Alarm.PumpStuck, rig.Out.Alarms & Alarm.PumpStuck);
        Assert.Equal(HoldReason.FlowLatched, rig.Out.Hold);

        Assert.Equal(HoldReason.Limit, rig.On(Contact.Limit).Step().Out.Hold);
    }

    [Fact]
    public void Lockout_comes_before_a_latched_valve()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).Switched(0).Retries(0)).Call(0).Step().RunFor(House.SwitchLimit);
        Assert.Equal(HoldReason.ValveLatched, rig.Out.Hold);

        Assert.Equal(HoldReason.Lockout, rig.Lockout().Step().Out.Hold);
    }

    [Fact]
    public void A_withheld_call_beside_one_that_is_served_is_no_hold()
    {
        House house = House.OfZones(2).Switched(0).Retries(0).Companions(1);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(House.SwitchLimit).Call(1).Step();
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);

        rig.RunUntil(o => o.Pump, 5000);
        Assert.Equal(HoldReason.None, rig.Out.Hold);
    }

    [Fact]
    public void In_an_overrun_there_is_no_hold_even_when_calls_are_locked_out()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).Lockout();

        rig.Always(o => o is { Pump: true, Hold: HoldReason.None }, House.Overrun);
        Assert.Equal(HoldReason.Lockout, rig.Step().Out.Hold);
    }

    [Fact]
    public void A_call_not_yet_accepted_holds_nothing()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).With(s => s.CallDebounceMs = 500)).Call(0).Step();

        rig.Always(o => o is { Hold: HoldReason.None, AcceptedCalls: 0 }, 400);
        Assert.Equal(HoldReason.Proof, rig.Step().Out.Hold);
    }
}
