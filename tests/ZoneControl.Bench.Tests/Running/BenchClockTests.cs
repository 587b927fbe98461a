using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Tests.Running;

public class BenchClockTests
{
    [Fact]
    public void A_sound_clock_shows_the_plants_time() => Assert.Equal(1_234, new BenchClock().Read(1_234));

    [Fact]
    public void A_jump_lasts()
    {
        var clock = new BenchClock();
        clock.Jump(-500);
        Assert.Equal(500, clock.Read(1_000));
        clock.Jump(700);
        Assert.Equal(1_300, clock.Read(1_100));
    }

    [Fact]
    public void A_clock_that_stood_still_goes_on_from_where_it_stood()
    {
        var clock = new BenchClock();
        clock.Jump(10);
        clock.Stop(1_000, 300);
        Assert.True(clock.Stands);
        Assert.Equal(1_010, clock.Read(1_299));
        Assert.Equal(1_010, clock.Read(1_300));
        Assert.False(clock.Stands);
        Assert.Equal(1_110, clock.Read(1_400));
    }

    [Fact]
    public void A_stop_during_a_stop_begins_where_the_clock_stands()
    {
        var clock = new BenchClock();
        clock.Stop(1_000, 300);
        clock.Stop(1_200, 100);
        Assert.Equal(1_000, clock.Read(1_299));
        Assert.Equal(1_050, clock.Read(1_350));
    }

    [Fact]
    public void A_clock_that_stands_can_be_made_to_jump()
    {
        var clock = new BenchClock();
        clock.Stop(1_000, 300);
        clock.Jump(50);
        Assert.Equal(1_050, clock.Read(1_100));
        Assert.Equal(1_150, clock.Read(1_400));
    }
}
