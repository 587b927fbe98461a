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
            new SheetBars("bars", "hours", [new SheetBar("none", 2, "2 h"), new SheetBar("half", 1, "1 h")]),
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
            b => b.Bars, new SheetBars("Deadhead", "hours", [new("none", 4, "4 h"), new("quarter", 1, "1 h"), new("good", 0, "0 h")])));
        double[] widths = [.. drawn.FindAll("rect").Select(rect => double.Parse(rect.GetAttribute("width")!.TrimEnd('%')))];
        Assert.Equal(4, widths[0] / widths[1], 0.01);
        Assert.Equal(0, widths[2]);
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
}
