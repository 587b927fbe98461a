namespace ZoneControl.Logic.Tests;

[Trait("Rule", "OPEN-COMPANION")]
public class OpenCompanionTests
{
    [Fact]
    public void Calls_that_reach_minimum_open_take_no_companion()
    {
        Rig rig = Rig.InSeason(House.OfZones(4).Minimum(2)).Call(1, 3).Step();

        rig.Always(o => o.Valves == Bits.Of(1, 3), 5000);
    }

    [Fact]
    public void Companions_are_taken_in_the_house_files_order_and_no_more_than_needed()
    {
        Rig rig = Rig.InSeason(House.OfZones(5).Minimum(3).Companions(4, 2, 0)).Call(1).Step();

        Assert.Equal(Bits.Of(1, 2, 4), rig.Out.Valves);
    }

    [Fact]
    public void A_companion_that_calls_itself_is_not_counted_twice()
    {
        Rig rig = Rig.InSeason(House.OfZones(3).Minimum(3).Companions(0, 1, 2)).Call(0).Step();

        Assert.Equal(Bits.Of(0, 1, 2), rig.Out.Valves);
    }

    [Fact]
    public void Standing_capacity_saves_companions()
    {
        Rig rig = Rig.InSeason(House.OfZones(3).Minimum(3).Standing(1)).Call(2).Step();

        Assert.Equal(Bits.Of(0, 2), rig.Out.Valves);
    }

    [Fact]
    public void A_companion_opens_in_the_same_scan_as_the_zone_that_needs_it()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Minimum(2)).Call(0).Step();

        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);
        Assert.Equal(House.Opening, rig.RunUntil(o => o.Pump, 5000));
    }

    [Fact]
    public void When_its_help_is_no_longer_needed_a_companion_is_released_once_the_new_caller_has_proven()
    {
        Rig rig = Rig.Running(House.OfZones(3).Minimum(2).Companions(2, 0), 0);
        Assert.Equal(Bits.Of(0, 2), rig.Out.Valves);

        rig.Call(1).Step().Always(o => o.Valves == 7, House.Opening - House.Scan);
        Assert.Equal(Bits.Of(0, 1), rig.Step().Out.Valves);
    }

    [Fact]
    public void A_companion_whose_own_call_comes_keeps_its_proof()
    {
        Rig rig = Rig.Running(House.OfZones(2).Minimum(2), 0).Call(1);

        rig.Always(o => o is { Pump: true, ProvenValves: 3 }, 3000);
    }

    [Fact]
    public void A_late_companion_is_passed_over_for_the_next_in_order()
    {
        House house = House.OfZones(3).Minimum(2).Switched(1).Companions(1, 2);
        Rig rig = Rig.InSeason(house).Call(0).Step();
        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);

        rig.RunFor(House.SwitchLimit);
        Assert.Equal(Bits.Of(0, 2), rig.Out.Valves);
        Assert.Equal(House.Opening, rig.RunUntil(o => o.Pump, 5000));
    }

    [Fact]
    public void A_call_that_ends_while_its_companion_is_still_opening_releases_both()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Minimum(2)).Call(0).RunFor(1000).EndCall(0).Step();

        Assert.Equal(0, rig.Out.Valves);
    }
}
