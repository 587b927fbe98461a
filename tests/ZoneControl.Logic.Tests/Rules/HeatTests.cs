namespace ZoneControl.Logic.Tests;

[Trait("Rule", "HEAT-FLOW")]
public class HeatFlowTests
{
    [Fact]
    public void Heat_comes_with_the_pump_and_not_before()
    {
        Rig rig = Rig.InSeason(House.OfZones(1)).Call(0).Step();

        rig.Always(o => !o.Heat, House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Heat);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void A_call_that_comes_in_the_overrun_asks_for_heat_and_none_does_not()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0).RunFor(500);
        Assert.True(rig.Out.Pump);
        Assert.False(rig.Out.Heat);

        Assert.True(rig.Call(0).Step().Out.Heat);
    }

    [Fact]
    public void Heat_goes_off_with_a_trip()
    {
        Rig rig = Rig.Running(House.OfZones(1).Switched(0), 0).Break(0).Step();

        Assert.False(rig.Out.Heat);
    }

    [Fact]
    public void The_call_of_a_latched_zone_asks_for_no_heat()
    {
        House house = House.OfZones(2).Switched(0).Companions(1).Retries(1);
        Rig rig = Rig.InSeason(house).Call(0).Step();
        rig.RunUntil(o => o.Pump, 10_000);
        Assert.True(rig.Out.Heat);

        rig.RunUntil(o => o.LatchedValves == 1, 10_000);
        Assert.True(rig.Out.Pump);
        Assert.False(rig.Out.Heat);
    }
}

[Trait("Rule", "HEAT-FIRST-OFF")]
public class HeatFirstOffTests
{
    [Fact]
    public void Heat_goes_off_in_the_scan_that_ends_demand()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).EndCall(0).Step();

        Assert.False(rig.Out.Heat);
        Assert.True(rig.Out.Pump);
    }

    [Fact]
    public void With_an_overrun_as_short_as_the_lead_the_pump_still_outlasts_heat_by_the_lead()
    {
        House house = House.OfZones(1).With(s => s.PumpOverrunMs = s.HeatLeadMs);
        Rig rig = Rig.Running(house, 0).EndCall(0).Step();
        Assert.False(rig.Out.Heat);

        Assert.Equal(House.HeatLead, rig.RunUntil(o => !o.Pump, 5000));
    }

    [Fact]
    public void The_lead_begins_again_when_heat_came_back_in_the_overrun()
    {
        House house = House.OfZones(1).With(s => s.PumpOverrunMs = s.HeatLeadMs);
        Rig rig = Rig.Running(house, 0).EndCall(0).RunFor(200).Call(0).Step().EndCall(0).Step();

        Assert.Equal(House.HeatLead, rig.RunUntil(o => !o.Pump, 5000));
    }

    [Fact]
    public void Lockout_stops_heat_first_as_well()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).Lockout().Step();

        Assert.False(rig.Out.Heat);
        rig.Always(o => o.Pump, House.HeatLead);
    }
}
