namespace ZoneControl.Web.Serving;

/// <summary>Style sheet and script of the page, carried inside the program so that no install can lose them.</summary>
internal static class Look
{
    private static readonly Dictionary<string, (string Text, string Type)> _files = new(StringComparer.Ordinal)
    {
        ["page.css"] = (HtmlSheet.Style + Read("ZoneControl.Web.Style.page.css"), "text/css"),
        ["page.js"] = (Read("ZoneControl.Web.Script.page.js"), "text/javascript"),
    };

    /// <summary>The page's own style sheet, without the report's.</summary>
    public static string PageStyle { get; } = Read("ZoneControl.Web.Style.page.css");

    /// <summary>A file by its name; null without one.</summary>
    public static (string Text, string Type)? Find(string name) => _files.TryGetValue(name, out (string, string) file) ? file : null;

    private static string Read(string name)
    {
        using Stream stream = typeof(Look).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program was built without {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
