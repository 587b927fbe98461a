using System.Diagnostics;

namespace ZoneControl.Plant.Tests;

/// <summary>What the trade knows of such plants is common practice unless a source is named.</summary>
public class PlantModelTests
{
    private readonly PlantModel _plant = new(Houses.Small);

    [Fact]
    public void A_new_plant_stands_still()
    {
        _plant.AdvanceTo(3_600_000);
        Assert.Equal(0, _plant.PumpFlowM3s);
        Assert.Equal(0, _plant.PumpHeadM);
        Assert.Equal(0, _plant.Travel(0));
        Assert.Equal(40, _plant.TrappedWaterC);
        Assert.False(_plant.IsMoving);
        Assert.Equal(PlantModel.Never, _plant.NextSwitchChangeMs);
    }

    [Fact]
    public void A_pump_against_closed_valves_moves_nothing_and_heats_its_water()
    {
        _plant.Drive(0, pump: true, heat: false);
        _plant.AdvanceTo(600_000);
        Assert.Equal(0, _plant.PumpFlowM3s);
        Assert.Equal(6, _plant.PumpHeadM);
        Assert.Equal(600, _plant.DeadheadS);
        Assert.Equal(1, _plant.DeadheadEvents);
        Near.Absolute(40 + 33.1, _plant.TrappedWaterC, 0.1); // 80 W, 0.35 L: 3.31 K/min by hand
        Assert.True(_plant.IsMoving);
    }

    [Fact]
    public void Slow_actuators_open_minutes_after_the_pump_of_an_unprotected_house_starts()
    {
        _plant.Drive(0b01, pump: true, heat: true);
        _plant.AdvanceTo(60_000);
        Assert.Equal(60, _plant.DeadheadS);
        _plant.AdvanceTo(600_000);
        Assert.InRange(_plant.DeadheadS, 60.5, 75); // a quick-opening valve passes 3 L/min early in its stroke
        Assert.Equal(1, _plant.DeadheadEvents);
        Assert.True(_plant.PumpFlowM3s > Houses.Pump.MinimumFlowM3s);
        Assert.InRange(_plant.HottestTrappedC, 43, 45);
        Near.Absolute(40, _plant.TrappedWaterC, 0.5); // flushed
    }

    [Fact]
    public void A_pump_started_after_the_valve_is_open_is_never_deadheaded()
    {
        _plant.Drive(0b10, pump: false, heat: false);
        _plant.AdvanceTo(_plant.NextSwitchChangeMs);
        Assert.Equal(0b10, _plant.EndSwitches);
        _plant.Drive(0b10, pump: true, heat: true);
        _plant.AdvanceTo(3_600_000);
        Assert.Equal(0, _plant.DeadheadS);
        Assert.Equal(0, _plant.DeadheadEvents);
        Assert.InRange(_plant.HottestTrappedC, 40, 40.5);
    }

    [Fact]
    public void Deadhead_is_less_than_the_minimum_flow_not_only_none()
    {
        var plant = new PlantModel(Houses.Small with
        {
            Pump = Houses.Pump with { MinimumFlowM3s = 30 * Houses.LitrePerMinute },
        });
        plant.Drive(0b11, pump: true, heat: false);
        plant.AdvanceTo(600_000);
        Assert.True(plant.PumpFlowM3s > 0);
        Assert.Equal(600, plant.DeadheadS);
    }

    [Fact]
    public void Every_separate_stretch_of_deadhead_counts_once()
    {
        _plant.Drive(0, pump: true, heat: false);
        _plant.AdvanceTo(10_000);
        _plant.Drive(0, pump: false, heat: false);
        _plant.AdvanceTo(20_000);
        _plant.Drive(0, pump: true, heat: false);
        _plant.AdvanceTo(25_000);
        _plant.Drive(1, pump: true, heat: false);
        _plant.AdvanceTo(30_000);
        Assert.Equal(2, _plant.DeadheadEvents);
        Assert.Equal(20, _plant.DeadheadS);
        Assert.Equal(2, _plant.PumpStarts);
        Assert.Equal(20, _plant.PumpRunS);
        Near.Relative(80 * 20 / 3600.0, _plant.PumpEnergyWh, 1e-12);
    }

    [Fact]
    public void A_deadhead_that_lasts_no_time_is_none()
    {
        _plant.Drive(1, pump: false, heat: false);
        _plant.AdvanceTo(600_000);
        _plant.SetFault(0, new ActuatorFault { Stuck = true });
        _plant.Drive(1, pump: true, heat: false);
        _plant.Drive(1, pump: false, heat: false);
        _plant.AdvanceTo(700_000);
        Assert.Equal(0, _plant.DeadheadEvents);
        Assert.Equal(0, _plant.PumpRunS);
    }

    [Fact]
    public void A_stretch_begins_once_however_many_things_happen_at_its_first_moment()
    {
        _plant.Drive(0, pump: true, heat: false);
        _plant.SetFault(0, new ActuatorFault { Stuck = true });
        _plant.Drive(1, pump: true, heat: false);
        _plant.AdvanceTo(10_000);
        Assert.Equal(1, _plant.DeadheadEvents);
    }

    [Fact]
    public void An_interruption_that_lasts_no_time_does_not_split_a_stretch()
    {
        _plant.Drive(0, pump: true, heat: false);
        _plant.AdvanceTo(10_000);
        _plant.Drive(0, pump: false, heat: false);
        _plant.Drive(0, pump: true, heat: false);
        _plant.AdvanceTo(20_000);
        Assert.Equal(1, _plant.DeadheadEvents);
        Assert.Equal(20, _plant.DeadheadS);
        Assert.Equal(2, _plant.PumpStarts);
    }

    [Fact]
    public void While_a_valve_moves_flow_is_solved_at_every_whole_half_second_whenever_it_was_energised()
    {
        _plant.AdvanceTo(137);
        _plant.Drive(1, pump: true, heat: false);
        _plant.AdvanceTo(90_400);
        double last = _plant.PumpFlowM3s;
        _plant.AdvanceTo(90_499);
        Assert.Equal(last, _plant.PumpFlowM3s);
        _plant.AdvanceTo(90_500);
        Assert.True(_plant.PumpFlowM3s > last);
        last = _plant.PumpFlowM3s;
        _plant.AdvanceTo(90_999);
        Assert.Equal(last, _plant.PumpFlowM3s);
    }

    [Fact]
    public void Closing_the_last_valve_under_a_running_pump_deadheads_it()
    {
        _plant.Drive(1, pump: true, heat: false);
        _plant.AdvanceTo(600_000);
        double before = _plant.DeadheadS;
        _plant.Drive(0, pump: true, heat: false);
        _plant.AdvanceTo(600_000 + 270_000); // 90 s dead, 180 s stroke
        Assert.Equal(0, _plant.PumpFlowM3s);
        Assert.True(_plant.DeadheadS > before);
        Assert.Equal(2, _plant.DeadheadEvents);
    }

    [Fact]
    public void A_zone_adds_up_its_loops()
    {
        var plant = new PlantModel(Houses.Small with
        {
            Loops = [Houses.Loop(0, 0, 60), Houses.Loop(1, 0, 90), Houses.Loop(0, 0, 80), Houses.Loop(-1, 0, 100)],
        });
        plant.Drive(0b01, pump: true, heat: false);
        plant.AdvanceTo(600_000);
        Assert.Equal(plant.LoopFlowM3s(0) + plant.LoopFlowM3s(2), plant.ZoneFlowM3s(0));
        Assert.Equal(0, plant.ZoneFlowM3s(1));
        Assert.True(plant.LoopFlowM3s(3) > 0);
    }

    [Fact]
    public void A_stuck_valve_keeps_its_zone_dry()
    {
        _plant.SetFault(0, new ActuatorFault { Stuck = true });
        _plant.Drive(0b11, pump: false, heat: false);
        _plant.AdvanceTo(600_000);
        _plant.Drive(0b11, pump: true, heat: false);
        Assert.Equal(0, _plant.ZoneFlowM3s(0));
        Assert.True(_plant.ZoneFlowM3s(1) > 0);
    }

    [Fact]
    public void Looking_again_is_asked_for_in_the_dead_time_too_and_ends_with_the_stroke()
    {
        _plant.Drive(1, pump: false, heat: false);
        Assert.True(_plant.IsMoving);
        _plant.AdvanceTo(179_999);
        Assert.True(_plant.IsMoving);
        _plant.AdvanceTo(180_000);
        Assert.False(_plant.IsMoving);
    }

    [Fact]
    public void An_eight_hour_run_with_a_stroke_every_hour_costs_little_and_allocates_nothing()
    {
        Cycle(_plant, 1);
        var watch = Stopwatch.StartNew();
        long allocated = GC.GetAllocatedBytesForCurrentThread();
        Cycle(_plant, 8);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - allocated);
        // Tens of ms, with room for a busy machine.
        Assert.True(watch.ElapsedMilliseconds < 2000, $"{watch.ElapsedMilliseconds} ms");
    }

    private static void Cycle(PlantModel plant, int hours)
    {
        for (int i = 0; i < hours; i++)
        {
            plant.Drive(0b11, pump: true, heat: true);
            plant.AdvanceTo(plant.NowMs + 1_800_000);
            plant.Drive(0, pump: true, heat: false);
            plant.AdvanceTo(plant.NowMs + 1_800_000);
        }
    }

    [Fact]
    public void Bad_inputs_are_refused_with_the_reason()
    {
        _plant.AdvanceTo(1000);
        Assert.Contains("cannot go back", Refused(() => _plant.AdvanceTo(999)), StringComparison.Ordinal);
        Assert.Contains("bits for 2 zones", Refused(() => _plant.Drive(0b100, false, false)), StringComparison.Ordinal);
        Assert.Contains("one of 2 zones", Refused(() => _plant.SetFault(2, ActuatorFault.None)), StringComparison.Ordinal);
        Assert.Contains("between 0.1 and 100",
            Refused(() => _plant.SetFault(0, new ActuatorFault { Slowness = double.NaN })), StringComparison.Ordinal);
        Assert.Contains("no end switch",
            Refused(() => _plant.SetFault(0, new ActuatorFault { Switch = SwitchFault.AlwaysMade })), StringComparison.Ordinal);
    }

    private static string Refused(Action action) => Assert.ThrowsAny<ArgumentException>(action).Message;
}
