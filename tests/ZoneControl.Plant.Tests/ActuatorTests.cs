using CsCheck;

namespace ZoneControl.Plant.Tests;

public class ActuatorTests
{
    // Opens: 60 s dead, 120 s stroke; closes: 90 s dead, 180 s stroke; switch makes at 0.85, breaks at 0.80.
    private readonly Actuator _actuator = new(Houses.FourWire);

    [Fact]
    public void Energised_it_waits_out_its_dead_time_and_then_moves_evenly()
    {
        _actuator.Energise(10_000, true);
        Assert.Equal(0, _actuator.Travel(70_000));
        Near.Absolute(0.5, _actuator.Travel(130_000), 1e-12);
        Assert.Equal(1, _actuator.Travel(190_000));
        Assert.Equal(1, _actuator.Travel(999_000));
    }

    [Fact]
    public void Released_in_mid_stroke_it_turns_round_after_the_closing_dead_time_from_where_it_is()
    {
        _actuator.Energise(0, true);
        _actuator.Energise(120_000, false);
        Near.Absolute(0.5, _actuator.Travel(210_000), 1e-12);
        Near.Absolute(0.25, _actuator.Travel(255_000), 1e-12);
        Assert.Equal(0, _actuator.Travel(300_000));
    }

    [Fact]
    public void The_end_switch_makes_at_its_travel_and_breaks_below_it_by_the_hysteresis()
    {
        _actuator.Energise(0, true);
        // 60 s + 0.85 · 120 s
        Assert.Equal(162_000, _actuator.NextSwitchChange(0));
        Assert.False(_actuator.IsSwitchMade(161_999));
        Assert.True(_actuator.IsSwitchMade(162_000));
        _actuator.Energise(200_000, false);
        // 90 s + 0.20 · 180 s after the release
        Assert.Equal(326_000, _actuator.NextSwitchChange(200_000));
        Assert.True(_actuator.IsSwitchMade(325_999));
        Assert.False(_actuator.IsSwitchMade(326_000));
        Assert.Equal(PlantModel.Never, _actuator.NextSwitchChange(326_000));
    }

    [Fact]
    public void Between_its_two_points_the_switch_stays_as_it_was()
    {
        _actuator.Energise(0, true);
        _actuator.Energise(159_000, false); // at travel 0.825, on the way up
        Assert.False(_actuator.IsSwitchMade(159_000));
        Assert.Equal(PlantModel.Never, _actuator.NextSwitchChange(159_000));
    }

    [Fact]
    public void A_stuck_stem_stays_whatever_is_energised_and_goes_on_when_freed()
    {
        _actuator.Energise(0, true);
        _actuator.SetFault(120_000, new ActuatorFault { Stuck = true });
        Near.Absolute(0.5, _actuator.Travel(1_000_000), 1e-12);
        Assert.False(_actuator.IsOnItsWay(120_000));
        Assert.Equal(PlantModel.Never, _actuator.NextSwitchChange(120_000));
        _actuator.SetFault(1_000_000, ActuatorFault.None);
        Near.Absolute(0.75, _actuator.Travel(1_030_000), 1e-12);
    }

    [Fact]
    public void A_dead_actuator_closes_as_if_released()
    {
        _actuator.Energise(0, true);
        _actuator.SetFault(500_000, new ActuatorFault { Dead = true });
        Assert.Equal(1, _actuator.Travel(590_000));
        Near.Absolute(0.5, _actuator.Travel(680_000), 1e-12);
        Assert.Equal(0, _actuator.Travel(770_000));
    }

    [Fact]
    public void A_slow_fault_planted_in_mid_stroke_keeps_the_progress_so_far()
    {
        _actuator.Energise(0, true);
        _actuator.SetFault(90_000, new ActuatorFault { Slowness = 3 }); // a quarter of the stroke done
        Near.Absolute(0.25, _actuator.Travel(90_000), 1e-12);
        Near.Absolute(0.5, _actuator.Travel(180_000), 1e-12);
        Assert.Equal(1, _actuator.Travel(360_000));
    }

    [Fact]
    public void A_slow_fault_planted_in_the_dead_time_stretches_what_is_left_of_it()
    {
        _actuator.Energise(0, true);
        _actuator.SetFault(30_000, new ActuatorFault { Slowness = 2 });
        Assert.Equal(0, _actuator.Travel(90_000));
        Near.Absolute(0.5, _actuator.Travel(210_000), 1e-12);
    }

    [Theory]
    [InlineData(SwitchFault.NeverMakes, false)]
    [InlineData(SwitchFault.AlwaysMade, true)]
    public void A_failed_switch_says_the_same_whatever_the_stem_does(SwitchFault fault, bool made)
    {
        _actuator.SetFault(0, new ActuatorFault { Switch = fault });
        Assert.Equal(made, _actuator.IsSwitchMade(0));
        _actuator.Energise(0, true);
        Assert.Equal(PlantModel.Never, _actuator.NextSwitchChange(0));
        Assert.Equal(made, _actuator.IsSwitchMade(500_000));
        _actuator.SetFault(500_000, ActuatorFault.None);
        Assert.True(_actuator.IsSwitchMade(500_000));
    }

    [Fact]
    public void The_next_switch_change_is_told_to_the_millisecond_whatever_was_done_before()
    {
        Gen<(int After, int What)> change = Gen.Select(Gen.Int[0, 200_000], Gen.Int[0, 5]);
        change.Array[1, 8].Sample(changes =>
        {
            var actuator = new Actuator(Houses.FourWire);
            long now = 0;
            foreach ((int after, int what) in changes)
            {
                now += after;
                Do(actuator, now, what);
                bool made = actuator.IsSwitchMade(now);
                long next = actuator.NextSwitchChange(now);
                if (next == PlantModel.Never)
                {
                    Assert.Equal(made, actuator.IsSwitchMade(now + 100_000_000));
                    continue;
                }

                Assert.True(next > now);
                Assert.Equal(made, actuator.IsSwitchMade(next - 1));
                Assert.NotEqual(made, actuator.IsSwitchMade(next));
                double point = made ? 0.80 : 0.85;
                Near.Absolute(point, actuator.Travel(next), 1.0 / 12_000, "travel where the switch changes");
            }
        }, iter: 3_000);
    }

    [Fact]
    public void Travel_never_jumps_and_never_leaves_its_range()
    {
        Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 5]).Array[1, 8].Sample(changes =>
        {
            var actuator = new Actuator(Houses.FourWire);
            long now = 0;
            foreach ((int after, int what) in changes)
            {
                now += after;
                double before = actuator.Travel(now);
                Do(actuator, now, what);
                Near.Absolute(before, actuator.Travel(now), 1e-12);
                Assert.InRange(before, 0, 1);
            }
        }, iter: 3_000);
    }

    private static void Do(Actuator actuator, long now, int what)
    {
        switch (what)
        {
            case 0 or 1: actuator.Energise(now, what == 1); break;
            case 2: actuator.SetFault(now, new ActuatorFault { Stuck = true }); break;
            case 3: actuator.SetFault(now, new ActuatorFault { Dead = true }); break;
            case 4: actuator.SetFault(now, new ActuatorFault { Slowness = 2.5 }); break;
            default: actuator.SetFault(now, ActuatorFault.None); break;
        }
    }
}
