namespace ZoneControl.Logic.Tests;

[Trait("Rule", "PUMP-TRIP")]
public class PumpTripTests
{
    private static House OneSwitched() => House.OfZones(1).Switched(0);

    [Fact]
    public void A_lost_switch_has_pump_and_heat_off_in_the_scan_that_accepts_it()
    {
        Rig rig = Rig.Running(OneSwitched(), 0).Break(0).Step();

        Assert.False(rig.Out.Pump);
        Assert.False(rig.Out.Heat);
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);
    }

    [Fact]
    public void With_debounce_the_pump_is_off_when_the_break_has_stood_that_long()
    {
        Rig rig = Rig.Running(OneSwitched().With(s => s.SwitchDebounceMs = 500), 0).Break(0).Step();

        rig.Always(o => o.Pump, 400);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_break_shorter_than_the_debounce_trips_nothing()
    {
        Rig rig = Rig.Running(OneSwitched().With(s => s.SwitchDebounceMs = 300), 0).Break(0).RunFor(300).Make(0);

        rig.Always(o => o is { Pump: true, ProvenValves: 1 }, 2000);
    }

    [Fact]
    public void A_switch_that_chatters_faster_than_the_debounce_keeps_its_last_accepted_state()
    {
        Rig rig = Rig.Running(OneSwitched().With(s => s.SwitchDebounceMs = 200), 0);
        for (int i = 0; i < 20; i++)
        {
            rig.Break(0).Step().Make(0).Step();
            Assert.True(rig.Out.Pump);
        }
    }

    [Fact]
    public void Losing_a_zone_that_minimum_open_can_spare_trips_nothing()
    {
        Rig rig = Rig.Running(House.OfZones(2).Switched(0), 0, 1);
        rig.RunUntil(o => o.ProvenValves == 3, 5000);

        rig.Break(0).Always(o => o is { Pump: true, Heat: true, ProvenValves: 2 }, 1000);
    }

    [Fact]
    public void Proof_regained_starts_the_pump_again_because_demand_never_went()
    {
        Rig rig = Rig.Running(OneSwitched(), 0).RunFor(1000).Break(0).RunFor(300).Make(0).Step();

        Assert.True(rig.Out.Pump);
        Assert.True(rig.Out.Heat);
    }

    [Fact]
    public void A_trip_during_the_overrun_ends_it_and_proof_regained_does_not_start_the_pump()
    {
        Rig rig = Rig.Running(OneSwitched(), 0).EndCall(0).RunFor(500).Break(0).Step();
        Assert.False(rig.Out.Pump);

        rig.Make(0).Always(o => !o.Pump, 5000);
        Assert.Equal(0, rig.Out.Valves);
    }

    [Fact]
    public void A_trip_in_a_handover_keeps_every_valve_for_the_rundown()
    {
        Rig rig = Rig.Running(House.OfZones(2).Switched(0).Companions(1), 0).Call(1).Step().EndCall(0).Step();
        rig.Break(0).Step();
        Assert.False(rig.Out.Pump);

        rig.Always(o => o.Valves == 3, House.Rundown);
    }
}
