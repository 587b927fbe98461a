namespace ZoneControl.Bench.Houses;

/// <summary>Tube sizes by the names of the trade, and the inside diameter each stands for.</summary>
/// <remarks>
/// Inch sizes: outside diameter and least wall of ASTM F876/F877 from a secondary dimension chart (the standard itself
/// was not read); least wall makes it the largest inside diameter, and tube in the hand is a few percent narrower.
/// Metric sizes: arithmetic from the designation.
/// </remarks>
public static class TubeSizes
{
    private const double Inch = 0.0254;

    /// <summary>Size words and inside diameters, m.</summary>
    public static IReadOnlyList<(string Word, double InsideM)> All { get; } =
    [
        ("3/8 in", (0.500 - (2 * 0.070)) * Inch),
        ("1/2 in", (0.625 - (2 * 0.070)) * Inch),
        ("5/8 in", (0.750 - (2 * 0.083)) * Inch),
        ("3/4 in", (0.875 - (2 * 0.097)) * Inch),
        ("1 in", (1.125 - (2 * 0.125)) * Inch),
        ("16x2 mm", 0.012),
        ("17x2 mm", 0.013),
        ("20x2 mm", 0.016),
    ];
}
