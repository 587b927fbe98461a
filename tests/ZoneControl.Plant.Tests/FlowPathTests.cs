namespace ZoneControl.Plant.Tests;

/// <summary>
/// 300 ft of half-inch tube, 40 °C. The heads are worked by hand from h = (f·L/D)·v²/2g with factors of the Python package
/// `fluids` 1.0.22: 0.6 US gal/min gives v 0.31759 m/s, Re 5947; 0.15 gives v 0.07940 m/s, Re 1486.9.
/// </summary>
public class FlowPathTests
{
    private const double UsGallonPerMinute = 3.785411784e-3 / 60;

    [Theory]
    [InlineData(FrictionLaw.Colebrook, 1.5e-6, 0.6, 1.364)]
    [InlineData(FrictionLaw.SwameeJainDunlop, 1.5e-6, 0.6, 1.378)]
    [InlineData(FrictionLaw.Colebrook, 7e-6, 0.6, 1.385)]
    [InlineData(FrictionLaw.Colebrook, 1.5e-6, 0.15, 0.10269)]
    public void A_long_loop_loses_the_head_worked_by_hand(FrictionLaw law, double roughness, double gpm, double head)
    {
        var path = new FlowPath(
            new PipeDescription(91.44, 0.012319, roughness, 0), new HydraulicRules { Friction = law },
            Water.KinematicViscosity(40));
        Near.Relative(head, path.Head(gpm * UsGallonPerMinute, 0, out _), 1e-3);
    }

    [Fact]
    public void Fittings_lose_K_velocity_heads()
    {
        // K 10 at 1 m/s in 20 mm: 10 · 1/(2 · 9.80665) = 0.50986 m.
        var path = new FlowPath(new PipeDescription(0, 0.02, 0, 10), new HydraulicRules(), 1e-6);
        Near.Relative(0.50986, path.Head(Math.PI / 4 * 0.02 * 0.02, 0, out _), 1e-5);
    }
}
