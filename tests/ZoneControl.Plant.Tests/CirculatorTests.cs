using CsCheck;

namespace ZoneControl.Plant.Tests;

public class CirculatorTests
{
    private const double PascalPerM = 992.27 * 9.80665;

    // H = 6 · (1 − (Q/30)²), Q in L/min.
    private static readonly PumpDescription _square = Houses.Pump with
    {
        Curve = [new(0, 6), new(15 * Houses.LitrePerMinute, 4.5), new(30 * Houses.LitrePerMinute, 0)],
    };

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.8)]
    [InlineData(0.5)]
    [InlineData(1.2)]
    public void At_another_speed_flow_goes_with_it_head_with_its_square_and_power_with_its_cube(double speed)
    {
        // The affinity laws, as in any pump handbook.
        var full = new Circulator(_square, PascalPerM);
        var other = new Circulator(_square with { Speed = speed }, PascalPerM);
        Gen.Double[0, 0.99].Sample(part =>
        {
            double flow = part * 30 * Houses.LitrePerMinute;
            Near.Relative(speed * speed * full.Head(flow, out _), other.Head(speed * flow, out _), 1e-12);
            Near.Relative(speed * speed * speed * full.PowerW(flow), other.PowerW(speed * flow), 1e-12);
        });
        Near.Relative(6 * speed * speed, other.MostHeadM, 1e-14);
        Near.Relative(30 * speed * Houses.LitrePerMinute, other.LargestFlowM3s, 1e-14);
        Assert.Equal(speed, other.Speed(5 * Houses.LitrePerMinute));
    }

    [Theory]
    [InlineData(0, 3)]
    [InlineData(10, 3)]
    [InlineData(21.2, 3)]
    [InlineData(24, 6 * (1 - 0.64))] // past the curve's 3 m at 21.21 L/min it can do no more
    public void A_constant_difference_is_kept_until_full_speed(double litresPerMinute, double head)
    {
        var pump = new Circulator(_square with { Regulation = new(3) }, PascalPerM);
        Near.Relative(head, pump.Head(litresPerMinute * Houses.LitrePerMinute, out _), 1e-12);
        Assert.Equal(3, pump.MostHeadM);
    }

    [Fact]
    public void A_proportional_difference_rises_from_its_floor_to_the_set_head_where_the_curve_passes_it()
    {
        var pump = new Circulator(_square with { Regulation = new(3) { HeadAtNoFlowM = 1.5 } }, PascalPerM);
        double most = 30 * Math.Sqrt(0.5) * Houses.LitrePerMinute; // the curve's 3 m
        Near.Relative(1.5, pump.Head(0, out _), 1e-12);
        Near.Relative(2.25, pump.Head(most / 2, out double slope), 1e-9);
        Near.Relative(1.5 / most, slope, 1e-9);
        Near.Relative(3, pump.Head(most, out _), 1e-9);
        Near.Relative(6 * (1 - 0.64), pump.Head(24 * Houses.LitrePerMinute, out _), 1e-12);
    }

    [Fact]
    public void Below_its_lowest_speed_it_does_not_go()
    {
        // At 0.8 of the speed the curve begins at 3.84 m and has 3 m left at 0.8 · 30 · √(1 − 3/3.84) = 11.22 L/min.
        var pump = new Circulator(_square with { Regulation = new(3) { LowestSpeed = 0.8 } }, PascalPerM);
        Near.Relative(3.84, pump.Head(0, out _), 1e-12);
        Near.Relative(3.84, pump.MostHeadM, 1e-12);
        Near.Relative(0.8, pump.Speed(0), 1e-9);
        Assert.True(pump.Head(11.1 * Houses.LitrePerMinute, out _) > 3);
        Near.Relative(3, pump.Head(11.4 * Houses.LitrePerMinute, out _), 1e-12);
    }

    [Theory]
    [InlineData(3.0, null, 0.0)]
    [InlineData(3.0, 1.5, 0.0)]
    [InlineData(3.0, null, 0.8)]
    [InlineData(3.0, 1.5, 0.6)]
    public void The_slope_is_the_derivative_under_every_regulation(double set, double? floor, double lowest)
    {
        var pump = new Circulator(
            _square with { Regulation = new(set) { HeadAtNoFlowM = floor, LowestSpeed = lowest } }, PascalPerM);
        int kinks = 0;
        for (double litres = 0.05; litres < 29.9; litres += 0.1)
        {
            double flow = litres * Houses.LitrePerMinute;
            double step = 1e-4 * Houses.LitrePerMinute;
            pump.Head(flow, out double slope);
            double measured = (pump.Head(flow + step, out _) - pump.Head(flow - step, out _)) / (2 * step);
            kinks += Math.Abs(measured - slope) > 1e-5 * Math.Abs(slope) + 0.01 ? 1 : 0;
        }

        // Only a kink itself, of which there are at most three, may lie within a step.
        Assert.InRange(kinks, 0, 1);
    }

    [Fact]
    public void The_speed_is_the_one_whose_curve_gives_the_head()
    {
        var pump = new Circulator(_square with { Regulation = new(3) { HeadAtNoFlowM = 2 } }, PascalPerM);
        Near.Relative(Math.Sqrt(2 / 6.0), pump.Speed(0), 1e-9);
        Gen.Double[0, 29].Sample(litres =>
        {
            double flow = litres * Houses.LitrePerMinute;
            double speed = pump.Speed(flow);
            var there = new Circulator(_square with { Speed = speed }, PascalPerM);
            Near.Relative(pump.Head(flow, out _), there.Head(flow, out _), 1e-9, $"at {litres} L/min, speed {speed}");
        });
    }

    [Fact]
    public void Power_by_flow_and_efficiency_are_those_worked_by_hand()
    {
        var pump = new Circulator(
            _square with { PowerByFlow = [new(0, 20), new(15 * Houses.LitrePerMinute, 40), new(30 * Houses.LitrePerMinute, 50)] },
            PascalPerM);
        Near.Relative(20, pump.PowerW(0), 1e-12);
        Near.Relative(40, pump.PowerW(15 * Houses.LitrePerMinute), 1e-12);
        Near.Relative(50, pump.PowerW(31 * Houses.LitrePerMinute), 1e-12);

        // ρ·g·Q·H = 992.27 · 9.80665 · 0.25e-3 · 4.5 = 10.947 W of 40 W.
        Near.Relative(10.947, pump.HydraulicW(15 * Houses.LitrePerMinute), 1e-4);
        Near.Relative(0.27368, pump.Efficiency(15 * Houses.LitrePerMinute), 1e-4);
        Assert.Equal(0, pump.Efficiency(0));
    }

    [Fact]
    public void Hydraulic_power_is_the_handbook_s()
    {
        // ρ·g·Q·H at 12 L/min, 3 m, 40 °C: 5.84 W.
        var pump = new Circulator(_square with { Regulation = new(3) }, PascalPerM);
        Near.Absolute(5.84, pump.HydraulicW(12 * Houses.LitrePerMinute), 0.005);
    }

    [Theory]
    [InlineData(1, 80)]
    [InlineData(0.25, 10.947 + 0.25 * (80 - 10.947))]
    [InlineData(0, 10.947)]
    public void What_moves_the_water_warms_it_and_of_the_losses_a_share(double share, double watts)
    {
        var pump = new Circulator(_square with { HeatToWaterShare = share }, PascalPerM);
        Near.Relative(watts, pump.HeatToWaterW(15 * Houses.LitrePerMinute), 1e-4);
        Near.Relative(80 * share, pump.HeatToWaterW(0), 1e-12);
    }

    [Fact]
    public void A_regulated_pump_keeps_its_head_as_valves_shut_and_a_plain_one_gains_head()
    {
        // Common practice: that is what constant difference is for.
        var plain = new Network(Houses.Small);
        var kept = new Network(Houses.Small with { Pump = Houses.Pump with { Regulation = new(3) } });
        plain.Solve([1, 1]);
        kept.Solve([1, 1]);
        (double plainBefore, double keptBefore) = (plain.LoopFlowM3s(1), kept.LoopFlowM3s(1));
        plain.Solve([0, 1]);
        kept.Solve([0, 1]);
        Near.Relative(3, kept.PumpHeadM, 1e-12);
        Assert.True(plain.PumpHeadM > 5);
        double plainRise = plain.LoopFlowM3s(1) / plainBefore;
        double keptRise = kept.LoopFlowM3s(1) / keptBefore;
        Assert.True(keptRise < plainRise, $"{keptRise} against {plainRise}");
        Assert.Equal(0, kept.SlowSearches);
    }

    [Fact]
    public void Energy_follows_power_as_it_changes_with_flow()
    {
        var plant = new PlantModel(Houses.Small with
        {
            Pump = Houses.Pump with { PowerByFlow = [new(0, 20), new(0.2e-3, 40), new(0.8e-3, 60)] },
        });
        plant.Drive(0, pump: true, heat: false);
        plant.AdvanceTo(1_800_000);
        Near.Relative(20 * 0.5, plant.PumpEnergyWh, 1e-12);
        plant.Drive(0b11, pump: false, heat: false);
        plant.AdvanceTo(3_600_000);
        Near.Relative(10, plant.PumpEnergyWh, 1e-12);
        Assert.Equal(0, plant.PumpPowerW);
        plant.Drive(0b11, pump: true, heat: false);
        double power = plant.PumpPowerW;
        Assert.InRange(power, 25, 60);
        plant.AdvanceTo(5_400_000);
        Near.Relative(10 + power * 0.5, plant.PumpEnergyWh, 1e-12);
        Assert.Equal(1, plant.PumpSpeed);
        Assert.InRange(plant.PumpEfficiency, 0.1, 0.9);
        Near.Relative(power, plant.PumpHeatToWaterW, 1e-12);
    }

    [Fact]
    public void The_time_until_trapped_water_is_hot_is_that_worked_by_hand()
    {
        // 80 W, 0.35 L, no loss: 40 to 100 °C in 18.1 min.
        var plant = new PlantModel(Houses.Small);
        plant.Drive(0, pump: true, heat: false);
        Near.Relative(18.1 * 60, plant.SecondsToTrappedC(100)!.Value, 0.005);
        Assert.Equal(0, plant.SecondsToTrappedC(39));
        plant.AdvanceTo((long)(plant.SecondsToTrappedC(75)!.Value * 1000));
        Near.Absolute(75, plant.TrappedWaterC, 1e-3);

        // With 1 W/K it stays below 100 °C for good; 75 °C comes where 60 · (1 − e^(−t/1451 s)) = 35.
        plant = new PlantModel(Houses.Small with { Pump = Houses.Pump with { CasingLossWPerK = 1 } });
        plant.Drive(0, pump: true, heat: false);
        Assert.Null(plant.SecondsToTrappedC(100.5));
        Near.Relative(-1451 * Math.Log(1 - 35 / 60.0), plant.SecondsToTrappedC(75)!.Value, 0.005);
        plant.Drive(0, pump: false, heat: false);
        Assert.Null(plant.SecondsToTrappedC(75));
    }
}
