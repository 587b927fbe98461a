namespace ZoneControl.Logic.Tests;

[Trait("Rule", "PUMP-PROOF")]
public class PumpProofTests
{
    [Fact]
    public void A_timed_valve_proves_after_its_opening_time_and_not_one_scan_before()
    {
        Rig rig = Rig.InSeason(House.OfZones(1)).Call(0).Step();

        rig.Always(o => o is { Pump: false, ProvenValves: 0 }, House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_switched_valve_proves_with_its_switch_however_long_it_is_energised()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).Switched(0)).Call(0).Step();

        rig.Always(o => o is { Pump: false, ProvenValves: 0 }, House.SwitchLimit - House.Scan);
        Assert.True(rig.Make(0).Step().Out.Pump);
    }

    [Fact]
    public void A_switch_that_makes_sooner_than_the_opening_time_proves_sooner()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).Switched(0)).Call(0).Step().RunFor(House.StartDelay - House.Scan);

        Assert.True(rig.Make(0).Step().Out.Pump);
    }

    [Fact]
    public void Timed_and_switched_proof_add_up_to_minimum_open()
    {
        House house = House.OfZones(2).Switched(1).Minimum(2);
        Rig rig = Rig.InSeason(house).Call(0, 1).Step().RunFor(House.Opening);
        Assert.Equal(Bits.Of(0), rig.Out.ProvenValves);
        Assert.False(rig.Out.Pump);

        rig.Make(1).Step();
        Assert.Equal(Bits.Of(0, 1), rig.Out.ProvenValves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void Capacity_counts_and_not_the_number_of_zones()
    {
        House house = House.OfZones(3).Capacity(1, 3, 1).Minimum(3).Companions(1);
        Rig small = Rig.InSeason(house).Call(0, 2).Step();
        Assert.True(small.IsOpen(1));

        Rig large = Rig.InSeason(house).Call(1).Step();
        Assert.Equal(Bits.Of(1), large.Out.Valves);
        Assert.Equal(House.Opening, large.RunUntil(o => o.Pump, 5000));
    }

    [Fact]
    public void Standing_capacity_counts_towards_minimum_open()
    {
        House house = House.OfZones(2).Standing(1).Minimum(2);
        Rig rig = Rig.InSeason(house).Call(0).Step();

        Assert.Equal(Bits.Of(0), rig.Out.Valves);
        Assert.Equal(House.Opening, rig.RunUntil(o => o.Pump, 5000));
    }

    [Fact]
    public void Standing_capacity_that_reaches_minimum_open_lets_the_pump_start_before_any_valve_is_open()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).Standing(1)).Call(0).Step();

        rig.Always(o => !o.Pump, House.StartDelay - House.Scan);
        Assert.True(rig.Step().Out.Pump);
        Assert.Equal(0, rig.Out.ProvenValves);
    }

    [Fact]
    public void Releasing_a_valve_loses_its_timed_proof_at_once_and_reopening_takes_the_full_time()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0);
        rig.RunUntil(o => o.Valves == 0, 5000);
        Assert.Equal(0, rig.Out.ProvenValves);

        rig.Call(0).Step().Always(o => o is { Pump: false, ProvenValves: 0 }, House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_switch_that_is_made_while_its_valve_is_released_proves_nothing()
    {
        House house = House.OfZones(2).Switched(1).Companions().With(s => s.PumpStartDelayMs = 0);
        Rig rig = Rig.InSeason(house).Make(1).Call(0).Step();

        rig.Always(o => o is { Pump: false, ProvenValves: 0 }, House.Opening - House.Scan);
    }

    [Fact]
    public void Sixteen_zones_are_all_counted()
    {
        House house = House.OfZones(16).Minimum(16).Switched(7, 15);
        Rig rig = Rig.InSeason(house).Call(15).Step();
        Assert.Equal(0xFFFF, rig.Out.Valves);

        rig.RunFor(House.Opening).Make(7).Step();
        Assert.Equal(0x7FFF, rig.Out.ProvenValves);
        Assert.False(rig.Out.Pump);
        rig.Make(15).Step();
        Assert.Equal(0xFFFF, rig.Out.ProvenValves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void Contacts_beyond_the_last_zone_are_ignored()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Switched(0, 1)).Call(2, 15, 31).Make(2, 15, 31);

        rig.Always(o => o is { AcceptedCalls: 0, AcceptedSwitches: 0, Valves: 0, Hold: HoldReason.None }, 500);
    }
}
