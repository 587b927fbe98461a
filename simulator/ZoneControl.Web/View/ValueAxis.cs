namespace ZoneControl.Web.View;

/// <summary>A value axis with round ticks.</summary>
/// <param name="Low">Value at the bottom.</param>
/// <param name="High">Value at the top.</param>
/// <param name="Ticks">Round values from bottom to top.</param>
public sealed record ValueAxis(double Low, double High, IReadOnlyList<double> Ticks)
{
    /// <summary>The axis for values between two bounds, with about <paramref name="wanted"/> ticks of 1, 2 or 5 times a power of ten.</summary>
    public static ValueAxis For(double low, double high, int wanted = 4)
    {
        double range = Math.Max(high - low, 1e-6);
        double raw = range / wanted;
        double power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        double step = power * ((raw / power) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 });
        long first = (long)Math.Floor(low / step + 1e-9);
        long last = (long)Math.Ceiling(high / step - 1e-9);
        if (last == first)
            last++;
        var ticks = new List<double>();
        for (long i = first; i <= last; i++)
            ticks.Add(Math.Round(i * step, 9));
        return new ValueAxis(ticks[0], ticks[^1], ticks);
    }
}
