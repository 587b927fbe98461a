namespace ZoneControl.Logic.Tests;

[Trait("Rule", "VALVE-LATE")]
public class ValveLateTests
{
    /// <summary>Zone 0 has an end switch, zone 1 is timed and its companion.</summary>
    private static House Mixed() => House.OfZones(2).Switched(0).Companions(1);

    private static House OneSwitched() => House.OfZones(1).Switched(0);

    private static Rig Late(House house)
    {
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(House.SwitchLimit);
        Assert.Equal(1, rig.Out.LateValves);
        return rig;
    }

    [Fact]
    public void A_switched_valve_is_late_at_its_limit_and_not_one_scan_before()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Call(0).Step();

        rig.Always(o => o is { LateValves: 0, Valves: 1 }, House.SwitchLimit - House.Scan);
        Assert.Equal(1, rig.Step().Out.LateValves);
    }

    [Fact]
    public void A_valve_that_proves_in_the_scan_of_its_limit_is_not_late()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Call(0).Step().RunFor(House.SwitchLimit - House.Scan).Make(0).Step();

        Assert.Equal(0, rig.Out.LateValves);
        Assert.Equal(1, rig.Out.ProvenValves);
    }

    [Fact]
    public void A_late_valve_rests_for_its_closing_time_and_is_then_tried_again()
    {
        Rig rig = Late(OneSwitched());
        Assert.False(rig.IsOpen(0));

        rig.Always(o => o.Valves == 0, House.Closing - House.Scan);
        Assert.True(rig.Step().IsOpen(0));
    }

    [Fact]
    public void When_the_retries_are_used_up_the_valve_is_latched_and_driven_no_more()
    {
        Rig rig = Late(OneSwitched().Retries(2)).RunFor(2 * (House.Closing + House.SwitchLimit) - House.Scan);
        Assert.Equal(0, rig.Out.LatchedValves);

        rig.Step();
        Assert.Equal(1, rig.Out.LatchedValves);
        rig.Always(o => o is { Valves: 0, LatchedValves: 1, LateValves: 1, Hold: HoldReason.ValveLatched }, 30_000);
    }

    [Fact]
    public void Without_retries_the_first_lateness_latches()
    {
        Rig rig = Late(OneSwitched().Retries(0));

        Assert.Equal(1, rig.Out.LatchedValves);
    }

    [Fact]
    public void A_latched_valve_is_driven_neither_by_a_new_call_nor_as_a_companion()
    {
        House house = House.OfZones(2).Switched(0).Retries(0).Minimum(2);
        Rig rig = Late(house).EndCall(0).RunFor(5000).Call(0).Step();
        Assert.Equal(HoldReason.ValveLatched, rig.Out.Hold);

        rig.Call(1).Step();
        rig.Always(o => o is { Valves: 2, Pump: false, Hold: HoldReason.TooFewValves }, 10_000);
    }

    [Fact]
    public void Power_up_ends_a_latch()
    {
        Rig rig = Late(OneSwitched().Retries(0));
        Assert.Equal(1, rig.Out.LatchedValves);

        Rig again = Rig.InSeason(OneSwitched().Retries(0)).Call(0).Step();
        Assert.True(again.IsOpen(0));
    }

    [Fact]
    public void Proving_clears_the_alarm_and_the_count_of_tries()
    {
        Rig rig = Late(OneSwitched()).RunFor(House.Closing).RunFor(House.SwitchMin).Make(0).Step();
        Assert.Equal(0, rig.Out.LateValves);
        Assert.Equal(1, rig.Out.ProvenValves);

        // With the count cleared the next lateness is a first one again, and is tried again rather than latched.
        rig.RunFor(1000).Break(0).RunFor(House.Rundown + House.SwitchLimit + 2 * House.Scan);
        Assert.Equal(1, rig.Out.LateValves);
        Assert.Equal(0, rig.Out.LatchedValves);
    }

    [Fact]
    public void A_late_valve_is_not_counted_on_and_a_companion_takes_its_place()
    {
        Rig rig = Late(Mixed());
        Assert.True(rig.IsOpen(1));
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);

        Assert.Equal(House.Opening, rig.RunUntil(o => o.Pump, 5000));
    }

    [Fact]
    public void A_late_valve_that_proves_after_all_gives_its_companion_back()
    {
        Rig rig = Late(Mixed()).RunFor(House.Closing + House.SwitchMin).Make(0).Step();

        Assert.Equal(Bits.Of(0), rig.Out.Valves);
        Assert.Equal(0, rig.Out.LateValves);
    }

    [Fact]
    public void A_late_valve_is_released_and_tried_again_while_the_pump_runs_on_others()
    {
        House house = Mixed().Retries(5);
        Rig rig = Rig.Running(house, 1).Call(0).Step();
        rig.Always(o => o.Pump, House.SwitchLimit);
        Assert.Equal(Bits.Of(1), rig.Out.Valves);

        rig.Always(o => o is { Pump: true, Heat: true, Valves: 2 }, House.Closing - House.Scan);
        Assert.Equal(Bits.Of(0, 1), rig.Step().Out.Valves);
    }

    [Fact]
    public void Lateness_counts_from_the_scan_that_lost_proof_however_long_nothing_happened_before()
    {
        Rig rig = Rig.Running(Mixed(), 0, 1).RunFor(60_000).Break(0).Step();
        Assert.Equal(0, rig.Out.LateValves);

        rig.Always(o => o.LateValves == 0, House.SwitchLimit - House.Scan);
        Assert.Equal(1, rig.Step().Out.LateValves);
    }

    [Fact]
    public void A_valve_that_becomes_late_in_a_rundown_is_released_only_after_it_and_without_a_contact_moving()
    {
        int rundown = House.SwitchLimit + 1000;
        Rig rig = Rig.Running(OneSwitched().With(s => s.PumpRundownMs = rundown), 0).Break(0).Step();
        Assert.False(rig.Out.Pump);

        rig.Always(o => o.Valves == 1, rundown);
        Assert.Equal(1, rig.Out.LateValves);
        Assert.Equal(0, rig.Step().Out.Valves);
        rig.RunUntil(o => o.Valves == 1, House.Closing);
    }

    [Fact]
    public void A_valve_that_becomes_late_in_an_overrun_is_alarmed_and_stays_to_the_end_of_the_rundown()
    {
        int overrun = House.SwitchLimit + 1000;
        Rig rig = Rig.Running(Mixed().With(s => s.PumpOverrunMs = overrun), 0, 1);
        rig.RunUntil(o => o.ProvenValves == 3, 5000);
        rig.EndCall(0, 1).Step().Break(0);

        rig.Always(o => o is { Pump: true, Valves: 3 }, overrun - House.Scan);
        Assert.Equal(1, rig.Out.LateValves);
        rig.Always(o => o is { Pump: false, Valves: 3 }, House.Rundown);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void When_healthy_companions_do_not_suffice_late_ones_are_opened_too_and_get_their_retry()
    {
        House house = House.OfZones(2).Minimum(2).Switched(1).Retries(5);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(House.SwitchLimit);
        Assert.Equal(HoldReason.TooFewValves, rig.Out.Hold);
        Assert.Equal(Bits.Of(0), rig.Out.Valves);

        rig.RunFor(House.Closing);
        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);
        rig.RunFor(House.SwitchMin).Make(1).Step();
        Assert.True(rig.Out.Pump);
        Assert.Equal(0, rig.Out.LateValves);
    }

    [Fact]
    public void A_late_companion_that_healthy_ones_replace_is_not_tried_again()
    {
        House house = House.OfZones(3).Minimum(2).Switched(1);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(House.SwitchLimit);
        Assert.Equal(Bits.Of(0, 2), rig.Out.Valves);

        rig.Always(o => (o.Valves & 2) == 0, 20_000);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void Without_demand_a_late_valve_is_not_tried_and_its_alarm_stays()
    {
        Rig rig = Late(OneSwitched()).EndCall(0).Step();

        rig.Always(o => o is { Valves: 0, LateValves: 1, LatchedValves: 0 }, 20_000);
        Assert.True(rig.Call(0).Step().IsOpen(0));
    }

    [Fact]
    public void A_timed_valve_is_never_late()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Minimum(2)).Call(0).Step();

        rig.Always(o => o.LateValves == 0, 20_000);
    }
}
