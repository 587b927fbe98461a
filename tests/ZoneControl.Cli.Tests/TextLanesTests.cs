using ZoneControl.Cli.Terminal;
using ZoneControl.Logic;
using ZoneControl.Web.Tests;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Tests;

public class TextLanesTests
{
    private static readonly RunLanes _lanes = LaneBuilder.From(
        new Sketch(2)
            .At(0, f => f)
            .At(2, f => f with { Calls = 1, Valves = 1 })
            .At(5, f => f with { ProvenValves = 1 })
            .At(6, f => f with { Pump = true, Heat = true })
            .At(10, f => f with { Calls = 0 })
            .At(12, f => f with { Pump = false, Heat = false, Valves = 0, ProvenValves = 0 })
            .At(15, f => f with { Calls = 2 })
            .At(17, f => f with { LateValves = 2 })
            .At(18, f => f with { Unpowered = true, Calls = 0, LateValves = 0 })
            .Finish(20),
        [new ZoneView("North", "timed"), new ZoneView("South", "timed")]);

    private readonly TextLanes _text = new(_lanes, 20);

    [Fact]
    public void An_alarm_of_the_house_shows_wherever_it_touches_a_cell_and_a_contact_where_it_fills_one()
    {
        Stretch[] when = [new(121_000, 240_000)];
        Assert.Equal("··xx··············  ", _text.House(new HouseLane("No flow", when, IsAlarm: true)).Cells);
        Assert.Equal("··▄█··············  ", _text.House(new HouseLane("Frost", when, IsAlarm: false)).Cells);
    }

    [Fact]
    public void A_zone_shows_opening_proven_retained_closing_and_rest() =>
        Assert.Equal("··░░░█████▒▒\\\\\\···  ", _text.Zone(_lanes.Zones[0]).Cells);

    [Fact]
    public void A_zone_that_calls_in_vain_or_fails_says_so() =>
        Assert.Equal("···············ccx  ", _text.Zone(_lanes.Zones[1]).Cells);

    [Fact]
    public void The_pump_shows_on_and_off() => Assert.Equal("······██████······  ", _text.Pump("Pump").Cells);

    [Fact]
    public void A_start_shorter_than_a_cell_still_shows()
    {
        RunLanes lanes = _lanes with { Pump = [new Stretch(61_000, 62_000)] };
        Assert.Equal("·▄················  ", new TextLanes(lanes, 20).Pump("Pump").Cells);
    }

    [Fact]
    public void Deadhead_shows_wherever_it_touches_a_cell()
    {
        RunLanes lanes = _lanes with { Deadhead = [new Stretch(360_000, 421_000)] };
        Assert.Equal("······!!████······  ", new TextLanes(lanes, 20).Pump("Pump").Cells);
    }

    [Fact]
    public void Holds_show_the_letter_of_the_reason_that_fills_most_of_the_cell()
    {
        HoldView[] holds =
        [
            new(new Stretch(120_000, 340_000), HoldReason.Proof),
            new(new Stretch(340_000, 360_000), HoldReason.StartDelay),
            new(new Stretch(900_000, 1_020_000), HoldReason.Lockout),
        ];
        Assert.Equal("··OOOO·········LL·  ", _text.Holds("Held", holds).Cells);
    }

    [Fact]
    public void The_axis_labels_round_times_over_their_marks()
    {
        (string labels, string marks) = new TextLanes(_lanes, 40).Axis(new Clock(new TimeOnly(6, 55)));
        Assert.Equal("06:55     07:00     07:05     07:10     ", labels);
        Assert.Equal("┬─────────┬─────────┬─────────┬─────────", marks);
    }

    [Fact]
    public void Characters_differ_in_shape()
    {
        char[] zone =
        [
            TextLanes.Rest, TextLanes.Waiting, TextLanes.Opening, TextLanes.OpenCalled, TextLanes.OpenUncalled,
            TextLanes.Closing, TextLanes.Failed, TextLanes.Dark,
        ];
        char[] pump = [TextLanes.Rest, TextLanes.On, TextLanes.PartlyOn, TextLanes.Starved, TextLanes.Dark];
        Assert.Equal(zone.Length, zone.Distinct().Count());
        Assert.Equal(pump.Length, pump.Distinct().Count());
    }
}
