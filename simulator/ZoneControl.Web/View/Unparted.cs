using System.Text;
using System.Text.RegularExpressions;
using ZoneControl.Bench.Files;

namespace ZoneControl.Web.View;

/// <summary>
/// Keeps a number and its unit on one line: "3 min", "Kv 0.27". For text that is shown only; files and JSON keep ordinary
/// blanks.
/// </summary>
public static class Unparted
{
    /// <summary>A blank at which no browser breaks a line.</summary>
    public const char HtmlBlank = '\u00A0';

    private static readonly string[] _moreUnits =
        ["kWh", "Wh", "K·h", "°F·h", "W/m²", "BTU/h", "BTU/h/ft²", "m/s", "ft/s", "A", "mA", "mm²", "times"];

    /// <summary>Signs of units as the renderer writes them; the document is in UTF-8 and needs no code for them.</summary>
    private static readonly (string Coded, string Sign)[] _codedSigns = [("&#xB0;", "°"), ("&#xB2;", "²"), ("&#xB3;", "³"), ("&#xB7;", "·")];

    private static readonly string _units = string.Join('|', Dimension.All.SelectMany(dimension => dimension.Units).Concat(_moreUnits)
        .Distinct().OrderByDescending(unit => unit.Length).Select(Regex.Escape));

    private static readonly Regex _inNumbers = new($@"(?<=[0-9]) (?=(?:{_units})(?!\p{{L}}))|(?<=\b[KC]v) (?=[0-9])", RegexOptions.Compiled);

    private static readonly Regex _betweenParts = new("(?<=[0-9].(?:d|h|min)) (?=[0-9]+(?:[.][0-9]+)?.(?:h|min|s)\\b)", RegexOptions.Compiled);

    private static readonly Regex _tag = new("<(?<end>/?)(?<name>[a-zA-Z0-9]+)[^>]*>", RegexOptions.Compiled);

    /// <summary>Text with its quantities joined.</summary>
    /// <param name="text">The text.</param>
    /// <param name="blank">What stands for a blank that must not part.</param>
    /// <param name="alsoTimes">Whether the parts of a time ("3 min 45 s") stay together too, for text that has the room.</param>
    public static string Of(string text, char blank, bool alsoTimes = true)
    {
        ArgumentNullException.ThrowIfNull(text);
        string joined = _inNumbers.Replace(text, blank.ToString());
        return alsoTimes ? _betweenParts.Replace(joined, blank.ToString()) : joined;
    }

    /// <summary>A document with the quantities of its text joined; what is to be copied (pre, code, style) stays as it is.</summary>
    public static string Html(string html)
    {
        ArgumentNullException.ThrowIfNull(html);
        foreach ((string coded, string sign) in _codedSigns)
            html = html.Replace(coded, sign, StringComparison.Ordinal);
        var joined = new StringBuilder(html.Length + 1000);
        int verbatim = 0;
        int cells = 0;
        int at = 0;
        foreach (Match tag in _tag.Matches(html))
        {
            string text = html[at..tag.Index];
            joined.Append(verbatim > 0 ? text : Of(text, HtmlBlank, cells == 0)).Append(tag.Value);
            int step = tag.Groups["end"].Length > 0 ? -1 : 1;
            if (tag.Groups["name"].Value is "pre" or "code" or "style")
                verbatim += step;
            if (tag.Groups["name"].Value is "td" or "th")
                cells += step;
            at = tag.Index + tag.Length;
        }

        return joined.Append(html, at, html.Length - at).ToString();
    }
}
