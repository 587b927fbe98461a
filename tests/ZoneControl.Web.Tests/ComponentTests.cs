using AngleSharp.Dom;
using Bunit;
using ZoneControl.Web.Components;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests;

public class ComponentTests : BunitContext
{
    [Fact]
    public void The_comparison_table_has_a_column_a_run_and_the_plain_wiring_first()
    {
        IRenderedComponent<ComparisonTable> table = Render<ComparisonTable>(p => p
            .Add(c => c.Caption, "caption")
            .Add(c => c.Runs, Measures.Runs(Morning.Report()))
            .Add(c => c.Units, UnitSystem.Metric));
        Assert.Equal(
            ["Measure", "pump straight to the calls", "with the controller", "What it says"],
            table.FindAll("thead th").Select(h => h.TextContent));
        IElement deadhead = table.FindAll("tbody tr")[0];
        Assert.Equal("Deadhead", deadhead.QuerySelector("th")!.TextContent);
        Assert.Equal(["18 min", "0 s"], deadhead.QuerySelectorAll("td.number").Select(d => d.TextContent));
    }

    [Fact]
    public void The_rule_table_marks_a_broken_rule_in_words()
    {
        IRenderedComponent<RuleTable> table = Render<RuleTable>(p => p
            .Add(c => c.Rules, Morning.Controlled(passed: false).Rules)
            .Add(c => c.Clock, new Clock(null)));
        IElement broken = Assert.Single(table.FindAll("tr.broken"));
        Assert.Equal("PUMP-PROOF", broken.QuerySelector("th")!.TextContent);
        Assert.Contains("BROKEN", broken.TextContent, StringComparison.Ordinal);
        Assert.Contains("First broken at 0:05:12.5: the pump was on", broken.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_lanes_put_every_stretch_where_its_time_is()
    {
        IRenderedComponent<TimingLanes> lanes = Render<TimingLanes>(p => p
            .Add(c => c.Id, "x")
            .Add(c => c.Run, Morning.Controlled())
            .Add(c => c.Clock, new Clock(null)));
        IElement pump = Assert.Single(lanes.FindAll("rect.pump"));

        // On from minute 9 to minute 75 of 120.
        Assert.Equal("7.5%", pump.GetAttribute("x"));
        Assert.Equal("55%", pump.GetAttribute("width"));
        Assert.Equal("Pump on, 0:09:00 to 1:15:00, 1 h 6 min", pump.TextContent);
        Assert.Equal(4, lanes.FindAll("rect.hold").Count);

        // A word where there is room even in a narrow window, else the letter, else nothing.
        Assert.Equal(["O", "O", "L"], lanes.FindAll("text.hold-text").Select(t => t.TextContent));
        Assert.Contains(lanes.FindAll("text.alarm-text"), t => t.TextContent == "late");
    }

    [Fact]
    public void A_drawing_in_words_tells_the_same_story()
    {
        string said = Summaries.Lanes(Morning.Controlled(), new Clock(null));
        Assert.Contains("Pump on 0:09:00 to 1:15:00.", said, StringComparison.Ordinal);
        Assert.Contains("Shop: no call; valves energised 0:40:00 to 0:44:00.", said, StringComparison.Ordinal);
        Assert.Contains("start delay 0:08:30 to 0:09:00", said, StringComparison.Ordinal);
        Assert.Contains("With less than its minimum flow", Summaries.Lanes(Morning.Straight(), new Clock(null)), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_curves_differ_in_dash_and_carry_their_names()
    {
        CurveChart.Line[] series = [new("one", [new(0, 0), new(1000, 2)]), new("other", [new(0, 1), new(1000, 1)])];
        IRenderedComponent<CurveChart> chart = Render<CurveChart>(p => p
            .Add(c => c.Id, "x")
            .Add(c => c.Title, "Flow")
            .Add(c => c.Unit, "L/min")
            .Add(c => c.Series, series)
            .Add(c => c.EndMs, 1000)
            .Add(c => c.Clock, new Clock(null)));
        Assert.Equal(["0,1000 1000,0", "0,500 1000,500"], chart.FindAll("polyline").Select(p => p.GetAttribute("points")));
        Assert.Equal(["one", "other"], chart.FindAll(".curve-key").Select(k => k.TextContent.Trim()));
        Assert.Contains("one: from 0.0 to 2.0 L/min", chart.Find("desc").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_without_holds_says_so()
    {
        IRenderedComponent<HoldTable> table = Render<HoldTable>(p => p.Add(c => c.Holds, []).Add(c => c.Clock, new Clock(null)));
        Assert.Equal("The pump was never held.", table.Find("p").TextContent);
    }
}
