using Bunit;
using ZoneControl.Web.Components.Sheets;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Web.Tests;

public class SheetTests : BunitContext
{
    private static SheetView Sheet(params SheetBlock[] blocks) => new("sheet", "Title", "House", "Lead.", [new SheetSection("Section", blocks)]);

    [Fact]
    public void Every_kind_of_block_is_drawn()
    {
        SheetBlock[] blocks =
        [
            new SheetText("a text"), new SheetCaution("a caution"), new SheetTable("a caption", [new("zone"), new("seen", Blank: true)], [["Bath", ""]]),
            new SheetSteps([new SheetStep("a step", "pressure, bar")]),
            new SheetFindings([new SheetFinding(SheetMark.Fault, "topic", "says", "basis", "change")]),
            new SheetBars("bars", [new SheetBar("none", 2, "2 h"), new SheetBar("half", 1, "1 h")]),
            new SheetLines("lines", ["key = \"value\""]),
        ];
        Assert.Equal(
            typeof(SheetBlock).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(SheetBlock))).Select(type => type.Name).Order(),
            blocks.Select(block => block.GetType().Name).Order());
        string words = Render<SheetBody>(p => p.Add(s => s.Sheet, Sheet(blocks))).Markup;
        foreach (string word in (string[])["a text", "a caution", "a caption", "a step", "pressure, bar", "FAULT", "says", "change", "none", "<pre>key = "])
            Assert.Contains(word, words, StringComparison.Ordinal);
    }

    [Fact]
    public void Bars_are_as_long_as_their_numbers()
    {
        IRenderedComponent<SheetBarsView> drawn = Render<SheetBarsView>(p => p.Add(
            b => b.Bars, new SheetBars("Deadhead", [new("none", 4, "4 h"), new("quarter", 1, "1 h"), new("good", 0, "0 h")])));
        double[] widths = [.. drawn.FindAll("rect").Select(rect => double.Parse(rect.GetAttribute("width")!.TrimEnd('%')))];
        Assert.Equal(4, widths[0] / widths[1], 0.01);
        Assert.Equal(0, widths[2]);
        Assert.Contains("the longest bar is 4 h", drawn.Markup, StringComparison.Ordinal);
        Assert.Equal("", new SheetBars("Deadhead", [new("good", 0, "0 s")]).Scale);
    }

    [Fact]
    public void Cautions_stand_under_every_sheet_and_text_is_escaped()
    {
        string words = Render<SheetBody>(p => p.Add(s => s.Sheet, Sheet(new SheetText("<b>bold</b>")))).Markup;
        Assert.Contains("&lt;b&gt;", words, StringComparison.Ordinal);
        Assert.Contains("never replaces a limit", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_is_one_document_that_asks_for_nothing_and_its_colours_are_defined()
    {
        string html = await HtmlSheet.RenderAsync(Sheet(new SheetText("x")));
        Assert.StartsWith("<!DOCTYPE html>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", html, StringComparison.Ordinal);
        foreach (System.Text.RegularExpressions.Match used in System.Text.RegularExpressions.Regex.Matches(HtmlSheet.Style, @"var\((--[a-z-]+)\)"))
            Assert.Contains($"  {used.Groups[1].Value}: ", HtmlSheet.Style, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_what_comes_from_a_model_says_that_it_does()
    {
        Assert.Contains("a model of the house", Render<SheetBody>(p => p.Add(s => s.Sheet, Sheet(new SheetText("x")))).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "a model of the house", Render<SheetBody>(p => p.Add(s => s.Sheet, Sheet(new SheetText("x")) with { FromModel = false })).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void The_foot_of_a_page_names_house_and_day_and_cannot_leave_its_string()
    {
        string css = PageFoot.Css(Sheet() with { House = "A\"; } </style><b>: 3 zones", Date = "2026-10-03" });
        Assert.Contains("2026-10-03, page ", css, StringComparison.Ordinal);
        Assert.DoesNotContain("</style>", css, StringComparison.Ordinal);
        Assert.DoesNotContain("A\"", css, StringComparison.Ordinal);
        Assert.DoesNotContain("3 zones", css, StringComparison.Ordinal);
        Assert.DoesNotContain("size:", css, StringComparison.Ordinal); // the paper is the printer's
    }

    [Fact]
    public void Short_tables_stay_on_one_page_and_long_ones_part_between_rows()
    {
        SheetTable Rows(int count) => new("c", [new("n")], [.. Enumerable.Range(0, count).Select(i => (IReadOnlyList<string>)[$"{i}"])]);
        Assert.Contains("sheet-short", Render<SheetTableView>(p => p.Add(t => t.Table, Rows(6))).Markup, StringComparison.Ordinal);
        Assert.Contains("sheet-long", Render<SheetTableView>(p => p.Add(t => t.Table, Rows(11))).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("sheet-short", Render<SheetTableView>(p => p.Add(t => t.Table, Rows(11))).Markup, StringComparison.Ordinal);
    }
}
