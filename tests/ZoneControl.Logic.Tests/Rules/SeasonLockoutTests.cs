namespace ZoneControl.Logic.Tests;

[Trait("Rule", "SEASON-LOCKOUT")]
public class SeasonLockoutTests
{
    [Fact]
    public void In_lockout_no_call_opens_a_valve_starts_the_pump_or_asks_for_heat()
    {
        Rig rig = Rig.InSeason(House.OfZones(3).Standing(9).Switched(1)).Lockout().Step().Call(0, 1, 2).Make(1);

        rig.Always(o => o is { Valves: 0, Pump: false, Heat: false, Hold: HoldReason.Lockout }, 10_000);
    }

    [Fact]
    public void Entering_it_while_running_is_an_orderly_stop_with_overrun()
    {
        Rig rig = Rig.Running(House.OfZones(2), 0, 1).Lockout().Step();
        Assert.False(rig.Out.Heat);

        rig.Always(o => o is { Pump: true, Heat: false, Valves: 3, Hold: HoldReason.None }, House.Overrun - House.Scan);
        rig.Always(o => o is { Pump: false, Valves: 3, Hold: HoldReason.Lockout }, House.Rundown);
        rig.Always(o => o is { Pump: false, Valves: 0 }, 5000);
    }

    [Fact]
    public void Entering_it_in_a_handover_abandons_the_handover()
    {
        Rig rig = Rig.Running(House.OfZones(3).Minimum(2).Companions(2, 0), 0, 1).EndCall(1).RunFor(1000).Lockout().Step();

        rig.Always(o => o.Valves == Bits.Of(0, 1), House.Overrun + House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void Entering_it_while_valves_are_still_opening_releases_them_at_once()
    {
        Rig rig = Rig.InSeason(House.OfZones(2)).Call(0).RunFor(1000).Lockout().Step();

        Assert.Equal(0, rig.Out.Valves);
    }

    [Fact]
    public void Leaving_it_in_the_overrun_takes_the_standing_calls_up_without_a_stop()
    {
        Rig rig = Rig.Running(House.OfZones(1), 0).Lockout().RunFor(1000).Season().Step();

        Assert.True(rig.Out.Heat);
        rig.Always(o => o is { Pump: true, Heat: true }, 5000);
    }

    [Fact]
    public void The_season_contact_counts_when_it_has_stood_for_its_debounce()
    {
        Rig rig = Rig.Running(House.OfZones(1).With(s => s.SeasonDebounceMs = 600), 0).Lockout().Step();

        rig.Always(o => o is { AcceptedLockout: false, Heat: true }, 500);
        Assert.True(rig.Step().Out.AcceptedLockout);
        Assert.False(rig.Out.Heat);
    }

    [Fact]
    public void Alarms_of_late_valves_outlast_lockout_but_no_valve_is_tried_in_it()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).Switched(0)).Call(0).Step().RunFor(House.SwitchLimit).Lockout();

        rig.Always(o => o is { Valves: 0, LateValves: 1, LatchedValves: 0 }, 20_000);
    }
}
