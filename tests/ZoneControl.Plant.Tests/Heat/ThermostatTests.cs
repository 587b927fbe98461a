using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class ThermostatTests
{
    private static readonly RcNetwork _room = new([1e6], [], [20]); // time constant 50,000 s

    [Fact]
    public void It_asks_half_a_differential_below_and_ceases_half_a_differential_above()
    {
        var thermostat = new Thermostat(new ThermostatDescription { SetC = 20, DifferentialK = 1 });
        Assert.False(thermostat.Look(Even(19.51), 0, 1000));
        Assert.True(thermostat.Look(Even(19.49), 0, 2000));
        Assert.True(thermostat.Asks);
        Assert.False(thermostat.Look(Even(20.49), 0, 3000));
        Assert.True(thermostat.Look(Even(20.51), 0, 4000));
        Assert.False(thermostat.Asks);
    }

    [Fact]
    public void It_keeps_to_its_shortest_times_and_knows_when_they_end()
    {
        var thermostat = new Thermostat(new ThermostatDescription { SetC = 20, MinimumOnS = 300, MinimumOffS = 120.5 });
        RcRun cold = Even(15);
        RcRun warm = Even(25);
        Assert.Equal(1000, thermostat.NextChange(cold, 0, 0, 3_600_000));
        Assert.True(thermostat.Look(cold, 0, 1000));
        Assert.Equal(301_000, thermostat.NextChange(warm, 0, 5000, 3_600_000));
        Assert.False(thermostat.Look(warm, 0, 300_000));
        Assert.True(thermostat.Look(warm, 0, 301_000));
        Assert.Equal(422_000, thermostat.NextChange(cold, 0, 301_000, 3_600_000));
        Assert.False(thermostat.Look(cold, 0, 421_000));
        Assert.True(thermostat.Look(cold, 0, 422_000));
    }

    // Cooling from 21 °C to 10 °C with 50,000 s: 19.75 °C after 50,000·ln(11/9.75) = 6031.4 s.
    [Fact]
    public void It_knows_beforehand_at_which_second_it_will_ask()
    {
        var run = new RcRun(1);
        run.Begin(0, _room, [21], [200]);
        var thermostat = new Thermostat(new ThermostatDescription { SetC = 20 });
        Assert.Equal(6_032_000, thermostat.NextChange(run, 0, 0, 10_000_000));
        Assert.Equal(PlantModel.Never, thermostat.NextChange(run, 0, 0, 6_032_000));
    }

    // Warming from 19 °C to 30 °C with 50,000 s: without anticipation it ceases at 20.25 °C. With 0.5 K that comes with 900 s it feels
    // T + 0.5·(1 − e^−t/900) and ceases earlier; by hand 11·(1 − e^−t/50000) + 0.5·(1 − e^−t/900) = 1.25 at t = 3,576.7 s.
    [Theory]
    [InlineData(0, 6031.4)]
    [InlineData(0.5, 3576.7)]
    public void Anticipation_has_it_cease_early(double kelvin, double seconds)
    {
        var run = new RcRun(1);
        run.Begin(0, _room, [19], [600]);
        var thermostat = new Thermostat(new ThermostatDescription { SetC = 20, AnticipationK = kelvin });
        Assert.True(thermostat.Look(run, 0, 0));
        long ceases = thermostat.NextChange(run, 0, 0, 100_000_000);
        double felt = 11 * (1 - Math.Exp(-seconds / 50_000)) + kelvin * (1 - Math.Exp(-seconds / 900));
        Near.Absolute(1.25, felt, 2e-4, "the figure by hand");
        Assert.Equal(Math.Ceiling(seconds), ceases / 1000.0, 1.0);
    }

    private static RcRun Even(double celsius)
    {
        var run = new RcRun(1);
        run.Begin(0, _room, [celsius], [20 * celsius]);
        return run;
    }
}
