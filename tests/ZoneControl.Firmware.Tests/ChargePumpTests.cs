using System.Globalization;
using ZoneControl.Bench.Boards;

namespace ZoneControl.Firmware.Tests;

/// <summary>The charge pump of hardware-notes, stepped push by push, does what its page says and the bench takes it to do.</summary>
public class ChargePumpTests
{
    private const double PushV = 5 - (2 * 0.3); // a 5 V swing less two Schottky diodes
    private const double C1 = 1e-6;
    private const double C2 = 0.68e-6;
    private const double R = 1e6;
    private const double StepS = 1e-4;

    [Fact]
    public void Its_numbers_are_those_of_the_page()
    {
        string page = File.ReadAllText(Path.Combine(Examples.Root, "hardware-notes", "power-up.md"));
        (double high, double low) = Steady(periodS: 0.2);

        foreach (double number in (double[])[high, low, TimeTo(2.0, high), TimeTo(1.0, high), After(high, 0.4)])
            Assert.Contains(number.ToString("0.00", CultureInfo.InvariantCulture), page, StringComparison.Ordinal);
    }

    [Fact]
    public void It_holds_between_two_pushes_and_over_one_that_is_left_out_and_lets_go_within_the_benchs_time()
    {
        (double high, double low) = Steady(periodS: 0.2);

        Assert.True(low > 2.0);
        Assert.True(After(high, 0.4) > 2.0);
        Assert.InRange(TimeTo(1.0, high), 0, (VirtualHardware.BeatHoldUs(100) / 1e6) - 0.05);
    }

    /// <summary>Gate after and before a push, V, once it no longer changes.</summary>
    private static (double High, double Low) Steady(double periodS)
    {
        double v = 0;
        double low = 0;
        for (int push = 0; push < 200; push++)
        {
            low = v;
            v = Math.Max(v, ((v * C2) + (PushV * C1)) / (C1 + C2)); // C1 shares its charge with C2
            double high = v;
            v = After(v, periodS);
            if (push == 199)
                return (high, low);
        }

        throw new InvalidOperationException();
    }

    private static double After(double v, double seconds)
    {
        for (double t = 0; t < seconds - (StepS / 2); t += StepS)
            v -= v / (R * C2) * StepS;
        return v;
    }

    private static double TimeTo(double threshold, double v)
    {
        double t = 0;
        for (; v > threshold; t += StepS)
            v -= v / (R * C2) * StepS;
        return t;
    }
}
