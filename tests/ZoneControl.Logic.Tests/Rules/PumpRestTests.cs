namespace ZoneControl.Logic.Tests;

[Trait("Rule", "PUMP-REST")]
public class PumpRestTests
{
    private static House Rested(int minOff, int interval) =>
        House.OfZones(1).Switched(0).With(s => (s.PumpMinOffMs, s.PumpStartIntervalMs, s.PumpStartDelayMs) = (minOff, interval, 0));

    [Fact]
    public void A_start_waits_for_the_least_time_off_and_not_one_scan_longer()
    {
        Rig rig = Rig.Running(Rested(4000, 0), 0).Break(0).Step().Make(0).Step();
        Assert.Equal(HoldReason.Rest, rig.Out.Hold);

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Rest, ProvenValves: 1 }, 4000 - 2 * House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void Rest_that_is_no_whole_number_of_scans_ends_at_the_next_scan()
    {
        Rig rig = Rig.Running(Rested(3950, 0), 0).Break(0).Step().Make(0).Step();

        rig.Always(o => !o.Pump, 3900 - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_start_waits_for_the_least_time_since_the_last_start()
    {
        Rig rig = Rig.Running(Rested(0, 10_000), 0).RunFor(6000).Break(0).Step().Make(0).Step();

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Rest }, 10_000 - 6000 - 3 * House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void Of_both_times_the_longer_one_counts()
    {
        Rig rig = Rig.Running(Rested(4000, 10_000), 0).RunFor(9000).Break(0).Step().Make(0).Step();

        rig.Always(o => !o.Pump, 4000 - 2 * House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Theory]
    [InlineData(5000, 0)]
    [InlineData(0, 5000)]
    public void Power_up_counts_as_a_stop_and_as_a_start(int minOff, int interval)
    {
        House house = House.OfZones(1).Standing(1).With(s => (s.PumpMinOffMs, s.PumpStartIntervalMs, s.PumpStartDelayMs) = (minOff, interval, 0));
        Rig rig = Rig.BeforePowerUp(house).Call(0).Step();

        rig.Always(o => !o.Pump, 5000 - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void After_a_long_run_only_the_least_time_off_is_waited_for()
    {
        Rig rig = Rig.Running(Rested(500, 3000), 0).RunFor(60_000).Break(0).Step().Make(0).Step();

        rig.Always(o => !o.Pump, 500 - 2 * House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_hand_waits_for_it_too()
    {
        Rig rig = Rig.Running(Rested(4000, 0).Fit(Contact.ServicePump), 0).Break(0).Step().Make(0).Hand(0).On(Contact.ServicePump).Step();

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Rest }, 4000 - 2 * House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }
}
