namespace ZoneControl.Logic.Tests;

[Trait("Rule", "OPEN-HANDOVER")]
public class OpenHandoverTests
{
    /// <summary>Zones 0 and 1 call and make minimum open; zone 2 is the companion.</summary>
    private static House ThreeZones() => House.OfZones(3).Minimum(2).Companions(2, 0);

    [Fact]
    public void The_companion_is_proven_open_before_the_zone_whose_call_ended_is_released()
    {
        Rig rig = Rig.Running(ThreeZones(), 0, 1).EndCall(1).Step();
        Assert.Equal(7, rig.Out.Valves);

        rig.Always(o => o is { Valves: 7, Pump: true, Heat: true }, House.Opening - House.Scan);
        Assert.Equal(Bits.Of(0, 2), rig.Step().Out.Valves);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void A_switched_companion_takes_over_the_moment_it_proves()
    {
        Rig rig = Rig.Running(ThreeZones().Switched(2), 0, 1).EndCall(1).Step().RunFor(House.SwitchMin).Make(2).Step();

        Assert.Equal(Bits.Of(0, 2), rig.Out.Valves);
    }

    [Fact]
    public void A_late_companion_leaves_the_zone_open_and_the_pump_running()
    {
        Rig rig = Rig.Running(ThreeZones().Switched(2), 0, 1).EndCall(1).Step();

        rig.Always(o => o is { Pump: true, ProvenValves: 3 }, House.SwitchLimit);
        Assert.Equal(Bits.Of(2), rig.Out.LateValves);
        rig.Always(o => o is { Pump: true, ProvenValves: 3 }, House.Closing + House.SwitchMin);
        Assert.Equal(Bits.Of(0, 2), rig.Make(2).Step().Out.Valves);
    }

    [Fact]
    public void A_companion_that_latches_leaves_the_zone_open_for_as_long_as_demand_remains()
    {
        Rig rig = Rig.Running(ThreeZones().Switched(2).Retries(0), 0, 1).EndCall(1).Step();

        rig.RunUntil(o => o.LatchedValves == 4, 5000);
        rig.Always(o => o is { Pump: true, Valves: 3 }, 10_000);
    }

    [Fact]
    public void A_call_that_comes_back_in_the_handover_ends_it()
    {
        Rig rig = Rig.Running(ThreeZones(), 0, 1).EndCall(1).RunFor(1000).Call(1).Step();

        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);
        rig.Always(o => o is { Pump: true, ProvenValves: 3 }, 5000);
    }

    [Fact]
    public void Demand_that_ends_in_a_handover_releases_the_companion_and_overruns_on_what_is_proven()
    {
        Rig rig = Rig.Running(ThreeZones(), 0, 1).EndCall(1).RunFor(1000).EndCall(0).Step();

        rig.Always(o => o.Valves == Bits.Of(0, 1), House.Overrun + House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void Before_the_pump_runs_a_change_of_calls_does_not_set_the_start_back()
    {
        Rig rig = Rig.InSeason(House.OfZones(2)).Call(0).Step().RunFor(1500).EndCall(0).Call(1).Step();
        Assert.Equal(3, rig.Out.Valves);

        Assert.Equal(House.Opening - 1500 - House.Scan, rig.RunUntil(o => o.Pump, 5000));
        Assert.Equal(Bits.Of(0), rig.Out.ProvenValves);
    }

    [Fact]
    public void Before_the_pump_runs_a_late_zone_whose_call_ends_is_not_waited_for()
    {
        House house = House.OfZones(2).Switched(0).Companions().Retries(5);
        Rig rig = Rig.InSeason(house).Call(0).Step().RunFor(House.SwitchLimit + House.Closing + 500);
        Assert.Equal(Bits.Of(0), rig.Out.Valves);

        rig.EndCall(0).Call(1).Step();
        Assert.Equal(Bits.Of(1), rig.Out.Valves);
    }
}
