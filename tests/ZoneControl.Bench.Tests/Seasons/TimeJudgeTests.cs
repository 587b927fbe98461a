using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Seasons;
using ZoneControl.Bench.Tests.Choosing;

namespace ZoneControl.Bench.Tests.Seasons;

public class TimeJudgeTests
{
    private static readonly House _house = Examples.House("pottery");

    private static SeasonRecord Record(string date, params ZoneRecord[] zones) =>
        new() { House = _house.Name, Date = date, Season = "start", Source = SeasonRecord.ByHand, Zones = zones };

    private static HistoryEntry Entry(string date, double? bar, params ZoneRecord[] zones) =>
        new($"{date}-start.json", Record(date, zones) with { PressureBar = bar });

    // The shop's wax actuator: 240 s at worst, counts as open after 300 s.
    [Theory]
    [InlineData(240, FindingKind.Fine)]
    [InlineData(243, FindingKind.Fine)]
    [InlineData(243.1, FindingKind.Advice)]
    [InlineData(300, FindingKind.Advice)]
    [InlineData(300.1, FindingKind.Fault)]
    public void Record_history_and_check_judge_a_watch_alike(double seconds, FindingKind kind)
    {
        var shop = new ZoneRecord { Zone = "shop", Actuator = "plain-wax", OpenedS = seconds };
        SeasonRecord record = Record("2026-10-03", shop);
        Finding judged = Assert.Single(RecordFindings.Judged(_house, record));
        Assert.Equal(kind, judged.Kind);
        Assert.Contains(judged, RecordFindings.Of(_house, record));
        Assert.Equal(judged, Assert.Single(Drift.Of(_house, [Entry("2026-10-03", null, shop)]), zone => zone.Times.Count > 0).Judged);
        Assert.Equal(kind == FindingKind.Fault, judged.Says.Contains("against a valve that is not open yet", StringComparison.Ordinal));
        Assert.Contains("3 s", judged.Basis, StringComparison.Ordinal);
    }

    [Fact]
    public void A_switch_and_a_watch_are_different_moments_and_have_a_line_each()
    {
        var both = new ZoneRecord { Zone = "bath", SwitchMadeS = 162, OpenedS = 181 };
        Assert.Equal([true, false], Drift.Of(_house, [Entry("2026-10-03", null, both)])
            .Where(zone => zone.Times.Count > 0).Select(zone => zone.Times[0].BySwitch));
    }

    [Theory]
    [InlineData(20, false)] // believed from 60 s on
    [InlineData(162, true)]
    public void Only_a_switch_that_is_believed_tells_when_its_valve_is_open(double made, bool tells) => Assert.Equal(tells, Assert.Single(
        RecordFindings.Judged(_house, Record("2026-10-03", new ZoneRecord { Zone = "bath", SwitchMadeS = made }))).Says.Contains("fully open", StringComparison.Ordinal));

    [Fact]
    public void One_measurement_is_not_getting_slow() =>
        Assert.All(Drift.Of(_house, [Entry("2026-10-03", null, new ZoneRecord { Zone = "shop", OpenedS = 360 })]), zone => Assert.False(zone.IsSlowing));

    [Fact]
    public void Closing_is_held_against_the_time_at_which_it_counts_as_shut()
    {
        double counts = _house.Zones[_house.ZoneIndex("bath")].ClosingTime.Value.TotalSeconds;
        FindingKind Kind(double seconds) => Assert.Single(RecordFindings.Judged(_house, Record("2026-10-03", new ZoneRecord { Zone = "bath", ClosedS = seconds }))).Kind;
        Assert.Equal((FindingKind.Fine, FindingKind.Advice), (Kind(counts + 2), Kind(counts + 4)));
    }

    [Fact]
    public void What_a_record_by_hand_lacks_is_told()
    {
        SeasonRecord one = Record("2026-10-03", new ZoneRecord { Zone = "shop", OpenedS = 240 });
        string[] missing = [.. RecordFindings.Missing(_house, one)];
        Assert.Equal(2, missing.Length);
        Assert.DoesNotContain("Shop", missing[0], StringComparison.Ordinal);
        Assert.Contains("Bath", missing[0], StringComparison.Ordinal);
        Assert.Single(RecordFindings.Missing(_house, one with { Season = "stop" }));
        Assert.Empty(RecordFindings.Missing(_house, one with { Season = "stop", PressureBar = 1.4 }));
        House retrofit = Examples.House("retrofit"); // two of its three zones are a panel's
        Assert.Contains("Bath", Assert.Single(RecordFindings.Missing(retrofit, Record("2026-10-03") with { PressureBar = 1.4 })), StringComparison.Ordinal);
        Assert.DoesNotContain("Upstairs", RecordFindings.Missing(retrofit, Record("2026-10-03"))[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.4, 1.2, 0)]
    [InlineData(1.5, 1.2, 1)] // fell by 0.3 bar
    [InlineData(1.4, 0.83, 2)] // fell, and low
    [InlineData(0.9, 0.9, 1)] // low
    public void Pressure_that_falls_or_is_low_is_told(double before, double after, int findings) => Assert.Equal(
        findings, PressureDrift.Of(_house, [Entry("2025-10-03", before), Entry("2026-04-03", null), Entry("2026-10-03", after)]).Count());

    [Fact]
    public void Records_of_one_day_are_read_in_the_order_in_which_they_were_filed()
    {
        string folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;
        try
        {
            string house = Path.Combine(folder, "a.house.toml");
            Directory.CreateDirectory(History.FolderOf(house));
            for (int i = 1; i <= 11; i++)
            {
                SeasonRecord record = Record("2026-10-03") with { Notes = $"{i}" };
                File.WriteAllText(History.NewName(History.FolderOf(house), record), RecordFile.Write(record));
            }

            Assert.Equal(Enumerable.Range(1, 11).Select(i => $"{i}"), History.Read(house).Entries.Select(entry => entry.Record.Notes));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Loops_to_flush_are_those_that_the_check_counts()
    {
        foreach (string name in (string[])["pottery", "two-rooms", "toolworks"])
        {
            House house = Examples.House(name);
            Finding air = Assert.Single(HouseCheck.Of(house, new CheckAssumptions()).Findings, finding => finding.Topic == "air");
            int count = AirBound.Loops(house).Count;
            Assert.Equal(count > 0, air.Kind == FindingKind.Advice);
            if (count > 0)
                Assert.Contains($"in {count} of ", air.Says, StringComparison.Ordinal);
        }
    }
}
