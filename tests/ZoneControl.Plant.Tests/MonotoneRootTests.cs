using CsCheck;

namespace ZoneControl.Plant.Tests;

public class MonotoneRootTests
{
    [Fact]
    public void A_root_is_found_wherever_the_search_begins()
    {
        // |x|^p with its root moved: steep, flat and straight functions; p below 1 has an endless slope at the root.
        Gen.Select(Gen.Double[0.2, 6], Gen.Double[1e-6, 1], Gen.Double[-1, 2]).Sample((power, root, start) =>
            Near.Absolute(root, MonotoneRoot.Find(new Power(power, root), 0, 1.1, start, 1e-12, out _), 1e-8));
    }

    [Theory]
    [InlineData(0.502)] // plain Newton steps to and fro across the root, hardly nearing it
    [InlineData(12)] // and creeps up to this one
    public void A_function_on_which_plain_Newton_dawdles_is_solved_all_the_same(double power)
    {
        double root = MonotoneRoot.Find(new Power(power, 0.3), 0, 1.1, 0.9, 1e-12, out int steps);
        Near.Absolute(0.3, root, 1e-9);
        Assert.InRange(steps, 2, 120);
    }

    [Fact]
    public void A_root_beside_a_kink_is_found()
    {
        Gen.Select(Gen.Double[1e-3, 1], Gen.Double[-8, 8], Gen.Double[0, 1]).Sample((root, logRatio, start) =>
            Near.Absolute(root, MonotoneRoot.Find(new Kink(Math.Pow(10, logRatio), root), 0, 1.1, start, 1e-12, out _), 1e-10));
    }

    [Fact]
    public void A_level_function_ends_the_search()
    {
        double x = MonotoneRoot.Find(new Step(0.3), 0, 1, 0.9, 1e-12, out _);
        Near.Absolute(0.3, x, 1e-12);
    }

    private readonly struct Power(double power, double root) : IRising
    {
        public double At(double x, out double slope)
        {
            double from = x - root;
            slope = power * Math.Pow(Math.Abs(from), power - 1);
            return Math.Sign(from) * Math.Pow(Math.Abs(from), power);
        }
    }

    private readonly struct Kink(double ratio, double root) : IRising
    {
        public double At(double x, out double slope)
        {
            slope = x < root ? 1 : ratio;
            return slope * (x - root);
        }
    }

    private readonly struct Step(double at) : IRising
    {
        public double At(double x, out double slope)
        {
            slope = 0;
            return x < at ? -1 : 1;
        }
    }
}
