using System.Xml.Linq;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests;

public class HtmlReportTests
{
    [Fact]
    public async Task The_report_is_one_document_that_asks_nothing_of_a_network_and_runs_no_script()
    {
        string html = await HtmlReport.RenderAsync(Morning.Report());
        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">", html, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", html, StringComparison.Ordinal);
        foreach (string outside in (string[])["<script", "http:", "https:", "src=", "<link", "@import", "url(\"", "url('"])
            Assert.DoesNotContain(outside, html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Rendering_twice_gives_the_same_bytes()
    {
        Assert.Equal(await HtmlReport.RenderAsync(Morning.Report()), await HtmlReport.RenderAsync(Morning.Report()));
    }

    [Fact]
    public async Task Names_from_files_cannot_smuggle_in_markup()
    {
        ReportView report = Morning.Report() with { HouseName = "<script>alert(1)</script>", ScriptTitle = "a & b \"c\"" };
        string html = await HtmlReport.RenderAsync(report);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_drawing_has_title_and_description_and_every_table_head_a_scope()
    {
        XElement body = Body(await HtmlReport.RenderAsync(Morning.Report()));
        XElement[] drawings = [.. body.Descendants("svg").Where(s => (string?)s.Attribute("role") == "img")];
        Assert.Equal(4, drawings.Length);
        foreach (XElement drawing in drawings)
        {
            string[] ids = ((string)drawing.Attribute("aria-labelledby")!).Split(' ');
            Assert.Equal((string?)drawing.Element("title")!.Attribute("id"), ids[0]);
            Assert.Equal((string?)drawing.Element("desc")!.Attribute("id"), ids[1]);
            Assert.NotEmpty(drawing.Element("desc")!.Value.Trim());
        }

        Assert.All(body.Descendants("th"), th => Assert.NotNull(th.Attribute("scope")));
        Assert.All(body.Descendants("table"), table => Assert.NotNull(table.Element("caption")));
    }

    [Fact]
    public async Task Every_identity_is_used_once_and_every_pattern_that_is_asked_for_exists()
    {
        string html = await HtmlReport.RenderAsync(Morning.Report());
        string[] ids = [.. Body(html).Descendants().Select(e => (string?)e.Attribute("id")).OfType<string>()];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        string[] asked = [.. Body(html).Descendants().Select(e => (string?)e.Attribute("fill")).OfType<string>()
            .Where(f => f.StartsWith("url(#", StringComparison.Ordinal)).Select(f => f[5..^1]).Distinct()];
        Assert.NotEmpty(asked);
        Assert.All(asked, id => Assert.Contains(id, ids));
    }

    [Fact]
    public async Task A_failing_run_says_which_rule_when_and_why()
    {
        string html = await HtmlReport.RenderAsync(Morning.Report(passed: false));
        Assert.Contains(">FAIL<", html, StringComparison.Ordinal);
        Assert.Contains(">BROKEN<", html, StringComparison.Ordinal);
        Assert.Contains("First broken at 06:25:12.5: the pump was on with capacity 2 proven, minimum open is 4", html, StringComparison.Ordinal);
        Assert.Contains("NOT MET", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_cautions_stand_in_every_report()
    {
        string html = await HtmlReport.RenderAsync(Morning.Report(compared: false));
        Assert.Contains("It never replaces a limit, relief valve or safety device", html, StringComparison.Ordinal);
    }

    /// <summary>The body as XML, so that a tag left open fails here.</summary>
    private static XElement Body(string html)
    {
        int from = html.IndexOf("<body>", StringComparison.Ordinal);
        int to = html.IndexOf("</body>", StringComparison.Ordinal) + "</body>".Length;
        string body = html[from..to]
            .Replace("&times;", "×", StringComparison.Ordinal)
            .Replace("&#xB7;", "·", StringComparison.Ordinal);
        return XElement.Parse(body);
    }
}
