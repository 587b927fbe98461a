using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Seasons;
using ZoneControl.Bench.Tests.Choosing;

namespace ZoneControl.Bench.Tests.Seasons;

/// <summary>The pottery's bath: its stem stands still for 60 s, opens in 180 s at worst, its switch makes at 85 %.</summary>
public class ImpossibleTimesTests
{
    private static readonly House _house = Examples.House("pottery");

    private static SeasonRecord Record(params ZoneRecord[] zones) =>
        new() { House = _house.Name, Date = "2026-10-03", Season = "start", Source = SeasonRecord.ByHand, Zones = zones };

    private static Finding Judge(string topic, double? made, double? opened) => Assert.Single(
        RecordFindings.Judged(_house, Record(new ZoneRecord { Zone = "bath", SwitchMadeS = made, OpenedS = opened })), finding => finding.Topic == topic);

    [Theory]
    [InlineData(20.0, null)]
    [InlineData(50.0, 180.0)] // believed, and before anything moves
    [InlineData(59.0, null)]
    [InlineData(150.0, 240.0)] // switch_at puts it at 213 s
    [InlineData(210.0, 180.0)] // after the end of the stroke
    public void A_switch_that_cannot_have_made_then_is_a_fault_of_the_switch_and_its_wires(double made, double? opened)
    {
        Finding found = Judge("end switch", made, opened);
        Assert.Equal(FindingKind.Fault, found.Kind);
        Assert.StartsWith("look at the switch and its wires first", found.Change, StringComparison.Ordinal);
        Assert.Contains("Do not make switch_min_time less than the dead time of 1 min", found.Change, StringComparison.Ordinal);
        Assert.DoesNotContain("so fully open after about", found.Says, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(162.0, 180.0)]
    [InlineData(181.0, 180.0)] // within what a watch tells
    [InlineData(130.0, 150.0)]
    [InlineData(125.0, null)] // a quick valve
    public void A_switch_near_where_its_travel_puts_it_is_fine(double made, double? opened) =>
        Assert.Equal(FindingKind.Fine, Judge("end switch", made, opened).Kind);

    [Fact]
    public void A_switch_that_is_early_and_was_not_held_against_a_watch_wants_one() =>
        Assert.Contains("with a watch", Judge("end switch", 70, null).Change, StringComparison.Ordinal);

    [Theory]
    [InlineData(210.0, 180.0, 180.0)] // the watch is never overruled
    [InlineData(50.0, null, null)]
    [InlineData(null, 1.0, null)]
    [InlineData(162.0, null, 180.0)]
    public void Nothing_is_reckoned_from_a_time_that_cannot_be(double? made, double? opened, double? full) => Assert.Equal(
        full, TimeJudge.FullyOpen(_house.Zones[_house.ZoneIndex("bath")].Actuator, new ZoneRecord { Zone = "bath", SwitchMadeS = made, OpenedS = opened })?.TotalSeconds);

    [Fact]
    public void A_valve_that_was_open_before_it_can_have_moved_contradicts_the_house_file()
    {
        Finding found = Judge("opening time", null, 1);
        Assert.Equal(FindingKind.Fault, found.Kind);
        Assert.Contains("contradict", found.Says, StringComparison.Ordinal);
        Assert.Empty(RecordFindings.Settings(_house, Record(new ZoneRecord { Zone = "bath", OpenedS = 1 })));
        HistoryEntry[] entries = [.. new[] { 1.0, 170.0, 175.0 }.Select(s => new HistoryEntry("a.json", Record(new ZoneRecord { Zone = "bath", OpenedS = s })))];
        Assert.Equal(175.0 / 170.0, Assert.Single(Drift.Of(_house, entries), zone => zone.Times.Count > 0).Ratio!.Value, 1e-9);
    }

    [Fact]
    public void A_slow_valve_with_an_end_switch_is_a_hazard_only_where_that_is_not_believed()
    {
        string says = Judge("opening time", 210, 240).Says;
        Assert.Contains("It counts as open when its end switch says so, here after 3 min 30 s", says, StringComparison.Ordinal);
        Assert.Contains("Were its switch not believed, the pump may start", says, StringComparison.Ordinal);
        Assert.DoesNotContain("pump may start", Judge("end switch", 210, 240).Says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sick_actuator_is_not_taken_over_for_its_sisters_and_they_are_named()
    {
        SeasonRecord record = Record(new ZoneRecord { Zone = "shop", OpenedS = 360 }, new ZoneRecord { Zone = "bedroom", OpenedS = 200 });
        Assert.Empty(RecordFindings.Settings(_house, record));
        string choice = Assert.Single(RecordFindings.SecondChoices(_house, record));
        Assert.StartsWith("Shop: renew its actuator. Only if that cannot be: opening_time = \"6 min\"", choice, StringComparison.Ordinal);
        Assert.Contains("Glazing room and Bedroom would wait 7 min 30 s", choice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_tells_of_its_pressure_what_the_history_tells()
    {
        SeasonRecord low = Record() with { PressureBar = 0.6 };
        Finding told = Assert.Single(RecordFindings.Of(_house, low), finding => finding.Topic == "pressure");
        Assert.Equal(Assert.Single(PressureDrift.Of(_house, [new HistoryEntry("a.json", low)])), told);
        Assert.DoesNotContain(RecordFindings.Of(_house, low with { PressureBar = 1.4 }), finding => finding.Topic == "pressure");
    }
}
