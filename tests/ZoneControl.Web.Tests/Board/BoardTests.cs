using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;
using ZoneControl.Web.Board;
using ZoneControl.Web.Drawing;
using ZoneControl.Web.Live;
using ZoneControl.Web.Tests.Live;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests.Board;

/// <summary>Parts of the page on their own: what they show of a bench, and what they ask of it.</summary>
public sealed class BoardTests : BunitContext
{
    private const int Bath = 5;

    public BoardTests() => CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

    [Fact]
    public void The_first_unmet_condition_is_marked_and_counts_down_and_no_other_is()
    {
        LiveBench bench = Calling(60_000);

        IRenderedComponent<ReasonPanel> panel = Render<ReasonPanel>(p => p.Add(x => x.Bench, bench));

        IElement first = Assert.Single(panel.FindAll("[data-test=conditions] .first-unmet"));
        Assert.Contains("enough valves proven open (0 of 2)", first.TextContent, StringComparison.Ordinal);
        Assert.Contains("first unmet:", first.TextContent, StringComparison.Ordinal);
        Assert.Contains("left", first.QuerySelector(".countdown")!.TextContent, StringComparison.Ordinal);
        Assert.StartsWith("Held, valves opening.", panel.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Conditions_of_contacts_that_the_house_lacks_are_not_listed()
    {
        string pottery = Render<ReasonPanel>(p => p.Add(x => x.Bench, Calling(1000))).Markup;
        string toolworks = Render<ReasonPanel>(p => p.Add(x => x.Bench, new LiveBench(Examples.Toolworks, null))).Markup;

        Assert.DoesNotContain("high limit", pottery, StringComparison.Ordinal);
        Assert.DoesNotContain("flow seen", pottery, StringComparison.Ordinal);
        Assert.Contains("high limit closed", toolworks, StringComparison.Ordinal);
        Assert.Contains("flow seen", toolworks, StringComparison.Ordinal);
    }

    [Fact]
    public void The_spoken_reason_holds_no_countdown_so_that_a_screen_reader_is_not_kept_busy()
    {
        LiveBench bench = Calling(60_000);
        string before = Reason(bench);
        bench.AdvanceTo(90_000);

        Assert.Equal(before, Reason(bench));
    }

    [Fact]
    public void A_press_on_a_thermostat_asks_for_that_zone_s_call()
    {
        ScriptAction? asked = null;
        var bench = new LiveBench(Examples.Pottery, null);
        IRenderedComponent<ZonePanel> panel = Render<ZonePanel>(p => p
            .Add(x => x.Bench, bench)
            .Add(x => x.Now, Now(bench))
            .Add(x => x.OnAct, act => asked = act));

        panel.Find("[data-test=call-bath]").Click();

        Assert.Equal(new CallChange(1 << Bath, true), asked);
        Assert.Equal("false", panel.Find("[data-test=call-bath]").GetAttribute("aria-checked"));
    }

    [Fact]
    public void An_end_switch_can_be_broken_only_where_there_is_one()
    {
        var bench = new LiveBench(Examples.Pottery, null);
        IRenderedComponent<ZonePanel> panel = Render<ZonePanel>(p => p.Add(x => x.Bench, bench).Add(x => x.Now, Now(bench)));

        Assert.Contains("end switch never makes", panel.Find("[data-test=fault-bath]").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("end switch", panel.Find("[data-test=fault-shop]").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("stuck", "stem sticks")]
    [InlineData("never", "end switch never makes")]
    [InlineData("slow", "3 times as slow")]
    public void What_was_broken_is_said_at_its_zone(string fault, string words)
    {
        var bench = new LiveBench(Examples.Pottery, null);
        IRenderedComponent<ZonePanel> panel = Render<ZonePanel>(p => p
            .Add(x => x.Bench, bench).Add(x => x.Now, Now(bench)).Add(x => x.OnAct, bench.Do));

        panel.Find("[data-test=fault-bath]").Change(fault);
        panel.Render();

        IElement said = Assert.Single(panel.FindAll(".zone-card .alarm-word"));
        Assert.Contains(words, said.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_fitted_contacts_and_the_supply_can_be_moved()
    {
        string pottery = Render<HouseSwitches>(p => p.Add(x => x.Bench, new LiveBench(Examples.Pottery, null))).Markup;
        string toolworks = Render<HouseSwitches>(p => p.Add(x => x.Bench, new LiveBench(Examples.Toolworks, null))).Markup;

        Assert.Contains("contact-season", pottery, StringComparison.Ordinal);
        Assert.Contains("contact-supply", pottery, StringComparison.Ordinal);
        Assert.DoesNotContain("contact-freeze", pottery, StringComparison.Ordinal);
        Assert.Contains("contact-freeze", toolworks, StringComparison.Ordinal);
        Assert.DoesNotContain("contact-flow", toolworks, StringComparison.Ordinal); // it follows the water
    }

    [Fact]
    public void Strokes_move_only_where_water_flows_and_the_starved_pump_is_hatched_and_named()
    {
        LiveBench bench = Calling(60_000, beside: true);
        IRenderedComponent<WaterCircuit> guarded = Circuit(bench, bench.Guarded);
        IRenderedComponent<WaterCircuit> plain = Circuit(bench, bench.Plain!);

        Assert.Empty(guarded.FindAll(".pipe-flow"));
        Assert.Contains("HELD", guarded.Markup, StringComparison.Ordinal);
        Assert.Contains("DEADHEAD", plain.Markup, StringComparison.Ordinal);
        Assert.NotEmpty(plain.FindAll("circle.deadhead"));

        bench.AdvanceTo(900_000);
        IRenderedComponent<WaterCircuit> later = Circuit(bench, bench.Guarded);
        Assert.Equal(2, later.FindAll(".zone-column .pipe-flow").Count); // the bath and its companion
    }

    [Fact]
    public void A_circuit_is_told_in_words_too()
    {
        LiveBench bench = Calling(60_000);

        string title = Circuit(bench, bench.Guarded).Find("svg > title").TextContent;

        Assert.Contains("The pump is held: valves opening.", title, StringComparison.Ordinal);
        Assert.Contains("Bath: calls, valve", title, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_zone_and_standing_loop_has_its_place_and_none_stands_on_another()
    {
        foreach (string name in (string[])["pottery", "toolworks", "retrofit", "two-rooms"])
        {
            House house = Examples.House(name);
            CircuitLayout layout = CircuitLayout.For(house);

            Assert.Equal(house.Zones.Count, layout.Columns.Count(column => column.Zone >= 0));
            Assert.Equal(house.StandingLoops.Count, layout.Columns.Where(column => column.Zone < 0).Sum(column => column.Loops));
            Assert.All(layout.Columns.Zip(layout.Columns.Skip(1)), pair => Assert.True(pair.Second.X - pair.First.X >= 100));
            Assert.True(layout.Columns.Max(column => column.X) + 50 <= layout.Width);
        }
    }

    [Fact]
    public void An_alarm_comes_with_its_meaning_and_its_likely_causes()
    {
        var bench = new LiveBench(Examples.Pottery, null);
        bench.Do(new FaultChange(Bath, new ActuatorFault { Switch = SwitchFault.AlwaysMade }, ""));
        bench.Do(new CallChange(1 << Bath, true));
        bench.AdvanceTo(5000);

        IElement alarm = Assert.Single(Render<AlarmPanel>(p => p.Add(x => x.Bench, bench)).FindAll("[data-test=alarms] li"));

        Assert.Contains("Bath: end switch too soon", alarm.TextContent, StringComparison.Ordinal);
        Assert.Contains("welded end switch", alarm.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Lanes_of_a_stretch_begin_with_what_held_before_it()
    {
        LiveBench bench = Calling(900_000);

        RunView whole = LiveLanes.Of(bench.Guarded, bench.House, 0, 900_000);
        RunView late = LiveLanes.Of(bench.Guarded, bench.House, 800_000, 900_000);

        Assert.NotEmpty(whole.Holds);
        Assert.Equal(new Stretch(800_000, 900_000), Assert.Single(late.Lanes.Pump));
        Assert.Empty(late.Holds);
        Assert.Equal(800_000, late.Lanes.StartMs);
        Assert.Contains("pump on", LiveLanes.At(bench.Guarded, bench.House, 850_000, UnitSystem.Metric));
        Assert.Empty(LiveLanes.At(bench.Guarded, bench.House, 950_000, UnitSystem.Metric));
    }

    private static LiveBench Calling(long untilMs, bool beside = false)
    {
        var bench = new LiveBench(Examples.Pottery, null, beside);
        bench.Do(new CallChange(1 << Bath, true));
        bench.AdvanceTo(untilMs);
        return bench;
    }

    private static CircuitView Now(LiveBench bench) => CircuitView.Of(bench.Guarded, bench.House, bench.Situation);

    private string Reason(LiveBench bench) => Render<ReasonPanel>(p => p.Add(x => x.Bench, bench)).Find("[role=status]").TextContent;

    private IRenderedComponent<WaterCircuit> Circuit(LiveBench bench, Rig rig) => Render<WaterCircuit>(p => p
        .Add(x => x.Id, "c")
        .Add(x => x.Caption, rig.Name)
        .Add(x => x.House, bench.House)
        .Add(x => x.Now, CircuitView.Of(rig, bench.House, bench.Situation))
        .Add(x => x.Units, UnitSystem.Metric));
}
