using System.Globalization;

namespace ZoneControl.Web.View;

/// <summary>
/// Where moments stand in a drawing that stretches sideways: positions are percentages of its width, so that text keeps its
/// shape whatever the width.
/// </summary>
/// <param name="EndMs">End of the run, ms; at least 1.</param>
public sealed record LaneScale(long EndMs)
{
    /// <summary>Start of the stretch that is drawn, ms; 0 for a whole run.</summary>
    public long StartMs { get; init; }

    /// <summary>Width below which a drawing scrolls instead of shrinking, CSS pixels. The style sheet says the same.</summary>
    public const int NarrowestPx = 640;

    /// <summary>Width of a character of small text, CSS pixels, on the wide side.</summary>
    private const double CharacterPx = 7;

    /// <summary>A moment's place from the left: "12.345%".</summary>
    public string X(long ms) => Percent(Fraction(ms));

    /// <summary>A stretch's width, never so small that it vanishes: "0.2%".</summary>
    public string Width(Stretch stretch) => Percent(Math.Max(0.0015, Fraction(stretch.ToMs) - Fraction(stretch.FromMs)));

    /// <summary>A moment's place from the left, 0 to 1.</summary>
    public double Fraction(long ms) => Math.Clamp((double)(ms - StartMs) / Math.Max(1, EndMs - StartMs), 0, 1);

    /// <summary>True when a text fits inside a stretch even at the narrowest width.</summary>
    public bool Fits(string text, Stretch stretch)
    {
        ArgumentNullException.ThrowIfNull(text);
        return (Fraction(stretch.ToMs) - Fraction(stretch.FromMs)) * NarrowestPx >= text.Length * CharacterPx + 6;
    }

    /// <summary>Points of a curve in a box of 1000 by 1000, y downward, for a drawing that is stretched into place.</summary>
    /// <param name="points">The curve.</param>
    /// <param name="low">Value at the bottom.</param>
    /// <param name="high">Value at the top.</param>
    public string Points(IReadOnlyList<TimedValue> points, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(points);
        double range = high > low ? high - low : 1;
        return string.Join(' ', points.Select(p => string.Create(
            CultureInfo.InvariantCulture,
            $"{Fraction(p.Ms) * 1000:0.##},{1000 - Math.Clamp((p.Value - low) / range, 0, 1) * 1000:0.#}")));
    }

    /// <summary>As <see cref="Points"/>, closed along the bottom so that it can be filled.</summary>
    public string Area(IReadOnlyList<TimedValue> points, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0)
            return "";
        string from = (Fraction(points[0].Ms) * 1000).ToString("0.##", CultureInfo.InvariantCulture);
        string to = (Fraction(points[^1].Ms) * 1000).ToString("0.##", CultureInfo.InvariantCulture);
        return $"{from},1000 {Points(points, low, high)} {to},1000";
    }

    private static string Percent(double fraction) => (fraction * 100).ToString("0.###", CultureInfo.InvariantCulture) + "%";
}
