namespace ZoneControl.Logic.Tests;

[Trait("Rule", "VALVE-EARLY")]
public class ValveEarlyTests
{
    private static House OneSwitched() => House.OfZones(1).Switched(0);

    [Fact]
    public void An_end_switch_already_made_when_its_valve_is_energised_proves_only_after_full_opening_time()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Make(0).RunFor(1000).Call(0).Step();

        rig.Always(o => o is { ProvenValves: 0, EarlySwitches: 1, Pump: false }, House.Opening - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void An_end_switch_that_makes_too_soon_proves_only_after_full_opening_time()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Call(0).Step().RunFor(House.SwitchMin - 2 * House.Scan).Make(0).Step();
        Assert.Equal(1, rig.Out.EarlySwitches);

        rig.Always(o => o is { ProvenValves: 0, Pump: false }, House.Opening - House.SwitchMin);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void An_end_switch_that_makes_at_its_least_time_is_believed_at_once()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Call(0).Step().RunFor(House.SwitchMin - House.Scan).Make(0).Step();

        Assert.Equal(0, rig.Out.EarlySwitches);
        Assert.Equal(1, rig.Out.ProvenValves);
    }

    [Fact]
    public void An_early_switch_that_breaks_and_makes_again_is_still_not_believed_in_this_opening()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Call(0).Step().RunFor(200).Make(0).RunFor(200).Break(0).RunFor(600).Make(0);

        rig.Always(o => o is { ProvenValves: 0, EarlySwitches: 1 }, House.Opening - 1000 - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void Full_opening_time_proves_no_early_switch_that_is_broken()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Make(0).Step().Call(0).Step().Break(0);

        rig.Always(o => o is { ProvenValves: 0, EarlySwitches: 1 }, House.Opening + 400);
        Assert.Equal(1, rig.Make(0).Step().Out.ProvenValves);
    }

    [Fact]
    public void A_switch_that_breaks_and_makes_again_while_the_valve_is_open_is_not_early()
    {
        Rig rig = Rig.Running(OneSwitched(), 0).RunFor(5000).Break(0).Step().Make(0).Step();

        Assert.Equal(0, rig.Out.EarlySwitches);
        Assert.Equal(1, rig.Out.ProvenValves);
    }

    [Fact]
    public void The_next_opening_believes_the_switch_again()
    {
        Rig rig = Rig.InSeason(OneSwitched()).Make(0).Step().Call(0).Step().Break(0).EndCall(0).Step();
        Assert.Equal(0, rig.Out.EarlySwitches);

        rig.Call(0).Step().RunFor(House.SwitchMin).Make(0).Step();
        Assert.Equal(1, rig.Out.ProvenValves);
    }

    [Fact]
    public void A_valve_energised_again_before_its_switch_has_broken_needs_full_opening_time()
    {
        Rig rig = Rig.Running(OneSwitched(), 0).EndCall(0);
        rig.RunUntil(o => o.Valves == 0, 5000);
        rig.Call(0).Step();

        rig.Always(o => o is { ProvenValves: 0, EarlySwitches: 1 }, House.Opening - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void The_contact_of_a_zone_without_a_switch_says_nothing()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Switched(1)).Make(0).Call(0).Step();

        rig.Always(o => o is { ProvenValves: 0, EarlySwitches: 0, AcceptedSwitches: 0 }, House.Opening - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void A_switch_made_before_but_accepted_after_its_valve_was_energised_counts_as_already_made()
    {
        House house = OneSwitched().With(s =>
        {
            s.SwitchDebounceMs = 500;
            s.SwitchMinMs[0] = 200;
        });
        Rig rig = Rig.InSeason(house).Make(0).Step().Call(0).Step();
        Assert.Equal(0, rig.Out.AcceptedSwitches);

        rig.Always(o => o is { ProvenValves: 0, EarlySwitches: 1 }, House.Opening - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void A_switch_found_made_at_power_up_proves_only_after_full_opening_time()
    {
        House house = OneSwitched().With(s =>
        {
            s.SwitchDebounceMs = 500;
            s.SwitchMinMs[0] = 0;
        });
        Rig rig = Rig.BeforePowerUp(house).Call(0).Make(0).Step().Step();
        Assert.True(rig.IsOpen(0));

        rig.Always(o => o is { Pump: false, ProvenValves: 0, EarlySwitches: 1 }, House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }
}
