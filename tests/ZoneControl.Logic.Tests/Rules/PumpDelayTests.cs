namespace ZoneControl.Logic.Tests;

[Trait("Rule", "PUMP-DELAY")]
public class PumpDelayTests
{
    private static House SlowStart() => House.OfZones(2).With(s => s.PumpStartDelayMs = 2 * House.Opening);

    [Fact]
    public void The_pump_goes_on_at_the_start_delay_and_not_one_scan_before()
    {
        Rig rig = Rig.InSeason(SlowStart()).Call(0).Step();

        rig.Always(o => !o.Pump, 2 * House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_second_call_does_not_begin_the_delay_again()
    {
        Rig rig = Rig.InSeason(SlowStart()).Call(0).Step().RunFor(1000).Call(1).Step();

        Assert.Equal(2 * House.Opening - 1000 - House.Scan, rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void A_change_from_one_call_to_another_in_one_scan_keeps_demand_and_delay()
    {
        Rig rig = Rig.InSeason(SlowStart()).Call(0).Step().RunFor(3000).EndCall(0).Call(1).Step();

        Assert.Equal(2 * House.Opening - 3000 - House.Scan, rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void Demand_that_goes_for_one_scan_begins_the_delay_again()
    {
        Rig rig = Rig.InSeason(SlowStart()).Call(0).Step().RunFor(3000).EndCall(0).Step().Call(0).Step();

        Assert.Equal(2 * House.Opening, rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void Demand_counts_from_when_the_call_is_accepted()
    {
        House house = SlowStart().With(s => s.CallDebounceMs = 700);
        Rig rig = Rig.InSeason(house).Call(0).Step();

        Assert.Equal(700 + 2 * House.Opening, rig.RunUntil(o => o.Pump, 10_000));
    }

    [Fact]
    public void New_demand_in_a_rundown_waits_for_the_whole_delay_with_the_valves_kept()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0);
        rig.RunUntil(o => !o.Pump, 5000);
        rig.Call(0).Step();

        rig.Always(o => o is { Pump: false, ProvenValves: 1, Hold: HoldReason.StartDelay }, House.StartDelay - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void Leaving_lockout_with_a_standing_call_begins_the_delay()
    {
        Rig rig = Rig.InSeason(SlowStart()).Lockout().Step().Call(0).RunFor(30_000).Season().Step();

        Assert.Equal(2 * House.Opening, rig.RunUntil(o => o.Pump, 10_000));
    }
}
