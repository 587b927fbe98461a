using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Seasons;
using ZoneControl.Bench.Tests.Choosing;

namespace ZoneControl.Bench.Tests.Seasons;

public sealed class RecordTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static SeasonRecord Record(params ZoneRecord[] zones) =>
        new() { House = "The pottery", Date = "2026-10-03", Season = "start", Source = "by hand", Zones = zones };

    private static SeasonRecord Commissioned()
    {
        House house = Examples.House("pottery");
        CommissioningRun run = Commissioner.Run(house, Installation.Sound, h => new LibraryController(h.ToSettings()));
        return RecordOf.Run(house, run, Diagnosis.Of(house, run), "library", new DateOnly(2026, 10, 3));
    }

    [Fact]
    public void A_record_is_read_back_as_it_was_written()
    {
        SeasonRecord record = Commissioned();
        string text = RecordFile.Write(record);
        RecordReading reading = RecordFile.Parse(text, "r.json");
        Assert.Empty(reading.Mistakes);
        Assert.Equal(text, RecordFile.Write(reading.Record!));
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{", "not JSON, or breaks off")]
    [InlineData("{ \"house\": ", "not JSON, or breaks off")]
    [InlineData("null", "null")]
    [InlineData("""{ "house": "x", "date": "3.10.2026", "season": "autumn", "source": "by hand" }""", "2026-10-03")]
    [InlineData("""{ "house": "x", "date": "2026-10-03", "season": "start", "source": "by hand", "zones": [{ "zone": "a", "openedS": -3 }] }""", "zones[1].openedS")]
    [InlineData("""{ "house": "x", "date": "2026-10-03", "season": "start", "source": "by hand", "speed": 3 }""", "speed")]
    public void A_bad_record_is_refused_with_its_place(string text, string named)
    {
        RecordReading reading = RecordFile.Parse(text, "r.json");
        Assert.Null(reading.Record);
        Assert.Contains(reading.Mistakes, mistake => mistake.ToString().Contains(named, StringComparison.Ordinal));
        Assert.All(reading.Mistakes, mistake => Assert.StartsWith("r.json", mistake.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void Measured_times_are_offered_as_settings_rounded_up()
    {
        House house = Examples.House("pottery");
        SeasonRecord record = Record(
            new ZoneRecord { Zone = "shop", OpenedS = 248 }, new ZoneRecord { Zone = "bedroom", OpenedS = 231 },
            // 60 s of dead time, then 85 % of the stroke in 127.5 s: the whole stroke takes 150 s, 210 s in all.
            new ZoneRecord { Zone = "bath", SwitchMadeS = 187.5 });
        Assert.Equal(
            [new MeasuredSetting("switched-wax", "opening_time", "3 min 30 s", "3 min"), new MeasuredSetting("plain-wax", "opening_time", "4 min 10 s", "4 min")],
            RecordFindings.Settings(house, record));
        Assert.Empty(RecordFindings.Settings(house, Record(new ZoneRecord { Zone = "shop", OpenedS = 240 })));
    }

    [Theory]
    [InlineData(null, 239.0, FindingKind.Fine)]
    [InlineData(null, 260.0, FindingKind.Advice)]
    [InlineData(null, 301.0, FindingKind.Fault)]
    public void A_two_wire_valve_slower_than_its_proof_time_is_a_fault(double? made, double opened, FindingKind kind) =>
        Assert.Equal(kind, Assert.Single(
            RecordFindings.Of(Examples.House("pottery"), Record(new ZoneRecord { Zone = "shop", SwitchMadeS = made, OpenedS = opened })),
            finding => finding.Topic == "opening time").Kind);

    [Theory]
    [InlineData(20.0, FindingKind.Fault)] // believed from 60 s on
    [InlineData(162.0, FindingKind.Fine)]
    [InlineData(190.0, FindingKind.Advice)] // fully open after about 213 s; worst opening time 180 s
    [InlineData(205.0, FindingKind.Fault)] // fully open after about 231 s; counts as open after 225 s where its switch is not believed
    [InlineData(340.0, FindingKind.Fault)] // late after 337.5 s
    public void An_end_switch_is_held_against_its_limits(double made, FindingKind kind) =>
        Assert.Equal(kind, Assert.Single(
            RecordFindings.Of(Examples.House("pottery"), Record(new ZoneRecord { Zone = "bath", SwitchMadeS = made })),
            finding => finding.Topic == "end switch").Kind);

    [Fact]
    public void Zones_that_only_one_side_knows_are_told()
    {
        IReadOnlyList<Finding> findings = RecordFindings.Of(Examples.House("pottery"), Record(new ZoneRecord { Zone = "attic", OpenedS = 200 }));
        Assert.Contains(findings, finding => finding.Says.Contains("attic", StringComparison.Ordinal));
        Assert.Equal(6, findings.Count(finding => finding.Says.Contains("is not in the record", StringComparison.Ordinal)));
    }

    [Fact]
    public void History_lies_beside_the_house_file_and_drift_is_told()
    {
        string houseFile = Path.Combine(_folder, "pottery.house.toml");
        File.Copy(Path.Combine(Examples.Folder, "pottery.house.toml"), houseFile);
        string folder = History.FolderOf(houseFile);
        Assert.Equal(Path.Combine(_folder, "pottery.history"), folder);
        Assert.Empty(History.Read(houseFile).Entries);

        Directory.CreateDirectory(folder);
        foreach ((string date, double bath, double? shop) in new[] { ("2028-10-01", 186.0, (double?)null), ("2026-10-03", 160.0, 238.0), ("2027-10-02", 166.0, 240.0) })
        {
            SeasonRecord record = Record(new ZoneRecord { Zone = "bath", SwitchMadeS = bath }, new ZoneRecord { Zone = "shop", OpenedS = shop }) with { Date = date };
            File.WriteAllText(History.NewName(folder, record), RecordFile.Write(record));
        }

        File.WriteAllText(Path.Combine(folder, "broken.json"), "{");
        HistoryReading history = History.Read(houseFile);
        Assert.Equal(["2026-10-03", "2027-10-02", "2028-10-01"], history.Entries.Select(entry => entry.Record.Date));
        Assert.Single(history.Mistakes);
        House house = Examples.House("pottery");
        IReadOnlyList<ZoneDrift> drift = Drift.Of(house, history.Entries);
        ZoneDrift bathDrift = Assert.Single(drift, zone => zone.Zone == house.ZoneIndex("bath"));
        Assert.Equal([160.0, 166.0, 186.0], bathDrift.Times.Select(time => time.Seconds));
        Assert.True(bathDrift.IsSlowing && bathDrift.IsTooSlow); // 186 is 16 % more than 160, and fully open well after 3 min
        Assert.False(Assert.Single(drift, zone => zone.Zone == house.ZoneIndex("shop")).IsSlowing);
        Assert.Empty(Assert.Single(drift, zone => zone.Zone == house.ZoneIndex("bedroom")).Times);
    }

    [Fact]
    public void Runs_on_virtual_pins_tell_nothing_of_the_houses_own_valves()
    {
        House house = Examples.House("pottery");
        var model = new HistoryEntry("a.json", Record(new ZoneRecord { Zone = "bath", SwitchMadeS = 162 }) with { Source = SeasonRecord.Virtual });
        var own = new HistoryEntry("b.json", Record(new ZoneRecord { Zone = "bath", SwitchMadeS = 170 }));
        Assert.Equal([170.0], Assert.Single(Drift.Of(house, [model, own]), zone => zone.Zone == house.ZoneIndex("bath")).Times.Select(time => time.Seconds));
        Assert.Equal([162.0], Assert.Single(Drift.Of(house, [model]), zone => zone.Zone == house.ZoneIndex("bath")).Times.Select(time => time.Seconds));
    }

    [Fact]
    public void A_second_record_of_a_day_does_not_replace_the_first()
    {
        string first = History.NewName(_folder, Record());
        File.WriteAllText(first, "x");
        Assert.Equal("2026-10-03-start-2.json", Path.GetFileName(History.NewName(_folder, Record())));
    }
}
