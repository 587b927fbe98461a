namespace ZoneControl.Logic.Tests;

[Trait("Rule", "VALVE-STUCK")]
public class ValveStuckTests
{
    private static House TwoSwitched() => House.OfZones(2).Switched(0, 1);

    /// <summary>Zone 0 ran, its call has ended and its valve was released in this scan; the switch stays made.</summary>
    private static Rig Released(House house)
    {
        Rig rig = Rig.Running(house, 0).EndCall(0);
        rig.RunUntil(o => o.Valves == 0, 5000);
        return rig;
    }

    [Fact]
    public void A_switch_still_made_when_its_valve_has_been_released_for_its_closing_time_is_alarmed_and_not_one_scan_before()
    {
        Rig rig = Released(TwoSwitched());

        rig.Always(o => o.StuckSwitches == 0, House.Closing - House.Scan);
        Assert.Equal(Bits.Of(0), rig.Step().Out.StuckSwitches);
    }

    [Fact]
    public void A_switch_that_opens_in_the_scan_in_which_that_time_is_up_is_not_stuck()
    {
        Rig rig = Released(TwoSwitched()).RunFor(House.Closing - House.Scan).Break(0);

        rig.Always(o => o.StuckSwitches == 0, 10_000);
    }

    [Fact]
    public void A_switch_that_makes_long_after_its_valve_has_shut_is_stuck_at_once()
    {
        Rig rig = Released(TwoSwitched()).Break(0).RunFor(10_000).Make(0).Step();

        Assert.Equal(Bits.Of(0), rig.Out.StuckSwitches);
    }

    [Fact]
    public void It_no_longer_proves_anything_however_long_its_valve_is_energised()
    {
        House house = TwoSwitched().Companions().Retries(5).With(s => s.SwitchLimitMs = [60_000, 60_000]);
        Rig rig = Released(house).RunFor(House.Closing).Call(0).Step();

        rig.Always(o => o is { ProvenValves: 0, Pump: false, StuckSwitches: 1 }, 30_000);
    }

    [Fact]
    public void Its_zone_is_not_counted_on_and_a_companion_makes_up_for_it()
    {
        Rig rig = Released(TwoSwitched()).RunFor(House.Closing).Call(0).Step();
        Assert.Equal(3, rig.Out.Valves);

        rig.RunFor(House.SwitchMin).Make(1).Step();
        Assert.Equal(Bits.Of(1), rig.Out.ProvenValves);
    }

    [Fact]
    public void It_is_no_companion_for_others()
    {
        House house = House.OfZones(3).Switched(0).Minimum(2);
        Rig rig = Rig.InSeason(house).Make(0).RunFor(House.Closing + House.Scan);
        Assert.Equal(Bits.Of(0), rig.Out.StuckSwitches);

        Assert.Equal(Bits.Of(1, 2), rig.Call(2).Step().Out.Valves);
    }

    [Fact]
    public void Once_seen_open_it_is_believed_again()
    {
        Rig rig = Released(TwoSwitched()).RunFor(House.Closing).Call(0).RunFor(1000).Break(0).Step();
        Assert.Equal(0, rig.Out.StuckSwitches);

        rig.Make(0).Step();
        Assert.Equal(0, rig.Out.ProvenValves); // it was made when its valve was energised: VALVE-EARLY
        rig.RunUntil(o => o.ProvenValves == 1, House.Opening);
    }

    [Fact]
    public void Power_up_counts_as_a_release_so_a_switch_has_its_closing_time_then()
    {
        Rig rig = Rig.BeforePowerUp(TwoSwitched()).Make(1).Step();

        rig.Always(o => o.StuckSwitches == 0, House.Closing - House.Scan);
        Assert.Equal(Bits.Of(1), rig.Step().Out.StuckSwitches);
    }

    [Fact]
    public void A_panels_switch_can_be_stuck_as_well()
    {
        House house = House.OfZones(2).Gated(1).Switched(1);
        Rig rig = Rig.InSeason(house).Sense(1).RunFor(1000).Make(1).RunFor(60_000).EndSense(1).Step();
        Assert.Equal(0, rig.Out.StuckSwitches);

        rig.Always(o => o.StuckSwitches == 0, House.Closing - House.Scan);
        Assert.Equal(Bits.Of(1), rig.Step().Out.StuckSwitches);
    }

    [Fact]
    public void A_switch_that_sticks_without_a_contact_moving_is_found_by_time_alone()
    {
        Rig rig = Released(TwoSwitched());

        long released = rig.Now;
        Assert.Equal(released + House.Scan, Next(rig));
        rig.RunFor(House.Rundown); // the rest of the pump has its own deadlines
        Assert.Equal(released + House.Closing, Next(rig));

        static long Next(Rig rig) => (rig.Out.NextDeadlineMs + House.Scan - 1) / House.Scan * House.Scan;
    }
}
