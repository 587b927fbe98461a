namespace ZoneControl.Logic.Tests;

[Trait("Rule", "BOOT-SAFE")]
public class BootSafeTests
{
    private static Published AllOff(bool powerUp) => new() { PowerUp = powerUp, Contacts = Contact.Lockout };

    [Fact]
    public void A_contact_that_only_the_first_scan_saw_is_not_accepted()
    {
        Rig rig = Rig.BeforePowerUp(House.OfZones(1)).Call(0).Step().EndCall(0).Step();

        rig.Always(o => (o.AcceptedCalls | o.Valves) == 0, 1000);
    }

    [Fact]
    public void With_every_contact_made_the_first_scan_puts_nothing_on()
    {
        Rig rig = Rig.BeforePowerUp(House.OfZones(3).Switched(0, 2)).Call(0, 1, 2).Make(0, 2).Step();

        Assert.Equal(AllOff(powerUp: true), Published.Of(rig.Out));
    }

    [Fact]
    public void Standing_capacity_and_the_shortest_delays_do_not_start_the_pump_in_the_first_scan()
    {
        House house = House.OfZones(1).Standing(5).With(s => s.PumpStartDelayMs = 0);
        Rig rig = Rig.BeforePowerUp(house).Call(0).Step();

        Assert.Equal(AllOff(powerUp: true), Published.Of(rig.Out));
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void Only_the_first_scan_is_marked_as_power_up()
    {
        Rig rig = Rig.BeforePowerUp(House.OfZones(1)).Step();
        Assert.True(rig.Out.PowerUp);

        rig.Always(o => !o.PowerUp, 1000);
    }

    [Fact]
    public void The_deadline_after_the_first_scan_is_the_next_scan_because_contacts_are_accepted_only_then()
    {
        Rig rig = Rig.BeforePowerUp(House.OfZones(1)).Call(0).Step();

        Assert.InRange(rig.Out.NextDeadlineMs, rig.Now + 1, rig.Now + House.Scan);
    }

    [Fact]
    public void Until_the_season_contact_is_accepted_the_controller_is_in_lockout_and_says_so()
    {
        Rig rig = Rig.BeforePowerUp(House.OfZones(1).With(s => s.SeasonDebounceMs = 400)).Call(0).Step();

        rig.Always(o => o is { AcceptedLockout: true, Hold: HoldReason.Lockout, Valves: 0 }, 300);
        rig.Step();
        Assert.False(rig.Out.AcceptedLockout);
        Assert.True(rig.IsOpen(0));
    }

    [Fact]
    public void A_valve_that_the_last_power_left_open_proves_nothing_until_its_opening_time_has_passed_again()
    {
        House house = House.OfZones(1);
        Rig before = Rig.Running(house, 0);
        Assert.True(before.Out.Pump);

        Rig after = Rig.BeforePowerUp(house).Call(0).Step().Step();
        after.Always(o => o is { Pump: false, ProvenValves: 0 }, House.Opening - House.Scan);
        Assert.True(after.Step().Out.Pump);
    }
}
