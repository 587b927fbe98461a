namespace ZoneControl.Plant.Tests;

/// <summary>Comparisons whose failure says how far off the value was.</summary>
internal static class Near
{
    public static void Relative(double expected, double actual, double tolerance, string what = "value") =>
        Assert.True(
            Math.Abs(actual - expected) <= tolerance * Math.Abs(expected),
            $"{what}: expected {expected:R}, found {actual:R}, off by {(actual / expected - 1) * 100:G3} %,"
            + $" allowed {tolerance * 100} %");

    public static void Absolute(double expected, double actual, double tolerance, string what = "value") =>
        Assert.True(
            Math.Abs(actual - expected) <= tolerance,
            $"{what}: expected {expected:R}, found {actual:R}, off by {actual - expected:G3}, allowed {tolerance}");
}
