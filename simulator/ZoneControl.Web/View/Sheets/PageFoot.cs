using System.Text;

namespace ZoneControl.Web.View.Sheets;

/// <summary>Margins and foot of every printed page: title and house on the left, day and page number on the right.</summary>
public static class PageFoot
{
    /// <summary>The style rules for one document.</summary>
    public static string Css(SheetView sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        string left = Quoted($"{sheet.HouseName}: {sheet.Title}");
        string right = sheet.Date.Length > 0 ? Quoted(sheet.Date + ", page ") : Quoted("page ");
        const string Look = "font: 8.5pt ui-sans-serif, system-ui, sans-serif; color: #5a4c41;";
        return "\n@page {\n  margin: 14mm 14mm 16mm 18mm;\n"
            + $"  @bottom-left {{ content: {left}; {Look} }}\n"
            + $"  @bottom-right {{ content: {right} counter(page) \" of \" counter(pages); {Look} }}\n}}\n";
    }

    /// <summary>A string of a style sheet; every character that could end it, or the style element, is written as its number.</summary>
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune) || rune.Value is ' ' or '.' or ',' or ':' or '-')
                quoted.Append(rune.ToString());
            else
                quoted.Append($"\\{rune.Value:x6}");
        }

        return quoted.Append('"').ToString();
    }
}
