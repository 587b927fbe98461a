using System.Globalization;
using System.Text.RegularExpressions;

namespace ZoneControl.Web.Tests;

public partial class StyleTests
{
    /// <summary>Colours of text, each with the grounds that it is put on by the style sheet.</summary>
    private static readonly (string Text, string[] Grounds)[] _pairs =
    [
        ("ink", ["paper", "card", "shade"]),
        ("soft", ["paper", "card"]),
        ("clay", ["paper", "card"]),
        ("moss", ["paper", "card"]),
        ("alarm", ["paper", "card"]),
    ];

    [Theory]
    [InlineData(0, "light")]
    [InlineData(1, "dark")]
    [InlineData(2, "print")]
    public void Text_stands_out_from_its_ground(int palette, string name)
    {
        Dictionary<string, string> colours = Palettes()[palette];
        foreach ((string text, string[] grounds) in _pairs)
        {
            // WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1 for text.
            foreach (string ground in grounds)
                Assert.True(Contrast(colours[text], colours[ground]) >= 4.5, $"{name}: {text} on {ground} is {Contrast(colours[text], colours[ground]):0.00}");
        }

        // WCAG 2.2, success criterion 1.4.11: at least 3 to 1 for the parts of a drawing.
        foreach (string shape in (string[])["ochre", "glaze", "clay", "alarm", "soft"])
            Assert.True(Contrast(colours[shape], colours["paper"]) >= 3, $"{name}: {shape} in drawings");
    }

    [Fact]
    public void Contrast_of_black_on_white_is_21() => Assert.Equal(21, Contrast("#000000", "#ffffff"), 6);

    [Fact]
    public void Every_colour_that_is_used_is_defined()
    {
        Dictionary<string, string> light = Palettes()[0];
        string[] used = [.. Use().Matches(HtmlReport.Style).Select(m => m.Groups[1].Value).Distinct()];
        Assert.NotEmpty(used);
        Assert.All(used, name => Assert.Contains(name, light.Keys));
        Assert.All(Palettes(), palette => Assert.Equal(light.Keys.Order(), palette.Keys.Order()));
    }

    private static List<Dictionary<string, string>> Palettes() =>
        [.. Root().Matches(HtmlReport.Style).Select(root => Colour().Matches(root.Groups[1].Value)
            .ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value))];

    /// <summary>Contrast ratio and relative luminance as WCAG 2.2 defines them.</summary>
    private static double Contrast(string a, string b)
    {
        double high = Math.Max(Luminance(a), Luminance(b));
        double low = Math.Min(Luminance(a), Luminance(b));
        return (high + 0.05) / (low + 0.05);
    }

    private static double Luminance(string hex)
    {
        double[] linear = [.. Enumerable.Range(0, 3).Select(i =>
        {
            double c = int.Parse(hex.AsSpan(1 + 2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        })];
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
    }

    [GeneratedRegex(@":root\s*\{([^}]*)\}")]
    private static partial Regex Root();

    [GeneratedRegex(@"--([\w-]+):\s*(#[0-9a-f]{6})")]
    private static partial Regex Colour();

    [GeneratedRegex(@"var\(--([\w-]+)\)")]
    private static partial Regex Use();
}
