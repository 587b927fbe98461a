namespace ZoneControl.Plant.Tests;

/// <summary>
/// Check values: IAPWS-IF97 and, for viscosity, IAPWS R12-08 at 2 bar absolute, computed with the Python package `iapws` 1.5.2.
/// Tolerances hold the difference between 1 and 2 bar (density 0.005 %), between that formulation and the one that the plant
/// uses (heat capacity up to 0.06 %), and the table's rounding.
/// </summary>
public class WaterTests
{
    [Theory]
    [InlineData(10, 999.75, 4195.1, 1.3058e-3, 1.3061e-6)]
    [InlineData(20, 998.25, 4184.5, 1.0016e-3, 1.0033e-6)]
    [InlineData(30, 995.70, 4179.8, 0.7972e-3, 0.8007e-6)]
    [InlineData(40, 992.27, 4178.3, 0.6527e-3, 0.6578e-6)]
    [InlineData(50, 988.09, 4179.3, 0.5465e-3, 0.5531e-6)]
    [InlineData(60, 983.25, 4182.5, 0.4661e-3, 0.4740e-6)]
    [InlineData(70, 977.82, 4187.9, 0.4036e-3, 0.4127e-6)]
    [InlineData(80, 971.85, 4195.3, 0.3541e-3, 0.3643e-6)]
    public void Properties_match_the_international_formulation(
        double celsius, double density, double heatCapacity, double dynamic, double kinematic)
    {
        Near.Relative(density, Water.Density(celsius), 1e-4);
        Near.Relative(heatCapacity, Water.HeatCapacity(celsius), 7e-4);
        Near.Relative(dynamic, Water.DynamicViscosity(celsius), 3e-4);
        Near.Relative(kinematic, Water.KinematicViscosity(celsius), 4e-4);
    }

    [Fact]
    public void Density_is_greatest_near_four_degrees()
    {
        // Common knowledge of physics; the place of the maximum, 3.98 °C, is from memory.
        Assert.True(Water.Density(3.98) > Water.Density(3));
        Assert.True(Water.Density(3.98) > Water.Density(5));
        Assert.InRange(Water.Density(0), 999.7, 999.95);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(100.1)]
    [InlineData(double.NaN)]
    public void A_temperature_at_which_water_is_not_liquid_is_refused(double celsius)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Water.Density(celsius));
        Assert.Throws<ArgumentOutOfRangeException>(() => Water.HeatCapacity(celsius));
        Assert.Throws<ArgumentOutOfRangeException>(() => Water.DynamicViscosity(celsius));
    }
}
