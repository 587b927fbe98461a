using CsCheck;

namespace ZoneControl.Plant.Tests;

/// <summary>
/// Against a second evaluation of the same polynomials (tests/reference/glycol.py, NumPy), so a slip of the pen in
/// either shows; the polynomials themselves stand on their source.
/// </summary>
public class GlycolTests
{
    [Theory]
    [InlineData(0.30, 10, 1028.0353, 4.438420e-3, 3829.907)]
    [InlineData(0.30, 35, 1016.2265, 1.808472e-3, 3897.184)]
    [InlineData(0.30, 60, 1001.1528, 9.945782e-4, 3962.339)]
    [InlineData(0.50, 10, 1045.2631, 1.057857e-2, 3491.694)]
    [InlineData(0.15, 0, 1014.5319, 3.416546e-3, 3996.789)]
    [InlineData(0.60, 80, 996.7438, 1.400810e-3, 3609.818)]
    public void Properties_match_a_second_evaluation(
        double share, double celsius, double density, double viscosity, double heatCapacity)
    {
        var liquid = new Liquid(celsius, share);
        Near.Relative(density, liquid.Density, 1e-7);
        Near.Relative(viscosity, liquid.DynamicViscosity, 1e-6);
        Near.Relative(viscosity / density, liquid.KinematicViscosity, 1e-6);
        Near.Relative(heatCapacity, liquid.HeatCapacity, 1e-6);
    }

    [Theory]
    [InlineData(0.15, -4.8722)]
    [InlineData(0.30, -12.7891)]
    [InlineData(0.50, -32.1935)]
    public void Freezing_points_match_it_too(double share, double celsius) =>
        Near.Absolute(celsius, Glycol.FreezingC(share), 1e-4);

    [Theory]
    [InlineData(20)]
    [InlineData(40)]
    [InlineData(60)]
    public void Without_glycol_the_polynomials_come_within_one_per_cent_of_water(double celsius)
    {
        Near.Relative(Water.DynamicViscosity(celsius), Glycol.DynamicViscosity(celsius, 0), 0.01);
        Near.Relative(Water.Density(celsius), Glycol.Density(celsius, 0), 0.01);
        Near.Relative(Water.HeatCapacity(celsius), Glycol.HeatCapacity(celsius, 0), 0.01);
    }

    [Fact]
    public void More_glycol_is_thicker_and_warmer_is_thinner()
    {
        Gen.Select(Gen.Double[0.05, 0.549], Gen.Double[0, 95]).Sample((share, celsius) =>
        {
            double here = Glycol.DynamicViscosity(celsius, share);
            Assert.True(Glycol.DynamicViscosity(celsius, share + 0.05) > here);
            Assert.True(Glycol.DynamicViscosity(celsius + 5, share) < here);
        });
    }

    [Theory]
    [InlineData(0.61, 20)]
    [InlineData(-0.01, 20)]
    [InlineData(double.NaN, 20)]
    [InlineData(0.3, -12.9)]
    [InlineData(0.3, 100.1)]
    [InlineData(0.3, double.NaN)]
    public void Past_their_range_they_are_refused(double share, double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Glycol.DynamicViscosity(celsius, share));

    [Fact]
    public void A_circuit_with_glycol_moves_less()
    {
        var water = new Network(Houses.Small);
        var mixture = new Network(Houses.Small with { GlycolShare = 0.3 });
        water.Solve([1, 1]);
        mixture.Solve([1, 1]);
        Assert.InRange(mixture.PumpFlowM3s / water.PumpFlowM3s, 0.8, 0.95);
    }
}
