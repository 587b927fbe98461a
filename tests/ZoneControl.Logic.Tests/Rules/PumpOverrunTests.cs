namespace ZoneControl.Logic.Tests;

[Trait("Rule", "PUMP-OVERRUN")]
public class PumpOverrunTests
{
    [Fact]
    public void The_pump_runs_on_for_the_overrun_and_not_one_scan_longer()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0).Step();

        rig.Always(o => o is { Pump: true, Heat: false, Valves: 1 }, House.Overrun - House.Scan);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void An_overrun_that_is_no_whole_number_of_scans_ends_at_the_next_scan()
    {
        Rig rig = Rig.Running(House.OfZones(1).With(s => s.PumpOverrunMs = House.Overrun + 1), 0).EndCall(0).Step();

        rig.Always(o => o.Pump, House.Overrun);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void The_zones_that_were_proven_stay_and_those_still_opening_are_released()
    {
        Rig rig = Rig.Running(House.OfZones(3), 0, 1).Call(2).RunFor(500).EndCall(0, 1, 2).Step();

        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);
        rig.Always(o => o.Valves == 3, House.Overrun + House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_companion_that_was_proven_stays_as_well()
    {
        Rig rig = Rig.Running(House.OfZones(2).Minimum(2), 0).EndCall(0).Step();

        rig.Always(o => o.Valves == 3, House.Overrun + House.Rundown - House.Scan);
    }

    [Fact]
    public void New_demand_in_the_overrun_keeps_the_pump_running_and_brings_heat_back_at_once()
    {
        Rig rig = Rig.Running(House.OfZones(2), 0).EndCall(0).RunFor(1000).Call(1).Step();

        Assert.True(rig.Out.Heat);
        rig.Always(o => o.Pump, 10_000);
        Assert.Equal(Bits.Of(1), rig.Out.Valves);
    }

    [Fact]
    public void An_overrun_after_new_demand_is_a_whole_one()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0).RunFor(1000).Call(0).Step().EndCall(0).Step();

        Assert.Equal(House.Overrun, rig.RunUntil(o => !o.Pump, 10_000));
    }

    [Fact]
    public void A_call_that_ends_before_the_pump_ran_has_no_overrun_and_releases_at_once()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Minimum(2)).Call(0).RunFor(1000).EndCall(0).Step();

        Assert.Equal(0, rig.Out.Valves);
        rig.Always(o => o is { Pump: false, Valves: 0 }, 5000);
    }

    [Fact]
    public void An_overrun_never_starts_a_pump()
    {
        House house = House.OfZones(1).With(s => s.PumpStartDelayMs = House.Opening + 500);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(House.Opening + 400);
        Assert.Equal(1, rig.Out.ProvenValves);

        rig.EndCall(0).Always(o => o is { Pump: false, Valves: 0 }, 5000);
    }

    [Fact]
    public void A_latch_that_ends_demand_before_the_pump_ran_is_followed_by_no_overrun()
    {
        House house = House.OfZones(2).Switched(0).Companions(1).Retries(0);
        Rig rig = Rig.InSeason(house).Call(0).Step();

        rig.RunFor(House.SwitchLimit);
        Assert.Equal(1, rig.Out.LatchedValves);
        rig.Always(o => o is { Pump: false, Valves: 0, Hold: HoldReason.ValveLatched }, 5000);
    }

    [Fact]
    public void A_latch_while_the_pump_runs_on_a_companion_is_followed_by_a_whole_overrun()
    {
        House house = House.OfZones(2).Switched(0).Companions(1).Retries(1);
        Rig rig = Rig.InSeason(house).Call(0).Step();
        rig.RunUntil(o => o.Pump, 10_000);
        rig.RunUntil(o => o.LatchedValves == 1, 10_000);
        Assert.True(rig.Out.Pump);
        Assert.False(rig.Out.Heat);

        Assert.Equal(House.Overrun, rig.RunUntil(o => !o.Pump, 5000));
        Assert.Equal(HoldReason.ValveLatched, rig.Out.Hold);
    }
}
