using System.Text;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;

namespace ZoneControl.Bench.Tests.Captures;

public class StreamingTests
{
    private static readonly House _house = Rig.House("bakery.house.toml");

    [Theory]
    [InlineData(60)]
    [InlineData(3)] // too little to tell what it is before it falls silent
    public void A_silent_line_is_stopped_by_hand_and_what_was_read_is_judged(int more)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        byte[] said = Encoding.UTF8.GetBytes("time_s,pump,oven-room.valve,shop.valve,flat.valve\n" + "0,0,0,0,0\n" + "5,1,1,0,0\n9,1,1,0,0\n"
            + string.Concat(Enumerable.Range(10, more).Select(s => $"{s},1,1,0,0\n")));
        using var line = new Silent(said, stop.Cancel);
        Audit audit = CaptureAudit.Run(_house, line, "line", ChannelMap.None, cancel: stop.Token);
        Assert.True(audit.Result!.Stopped);
        Assert.Equal((9 + more) * 1000, audit.Result.EndMs);
        Assert.Equal(Judgement.Broken, audit.Result.Rules.First(rule => rule.Rule == "PUMP-PROOF").Judgement);
    }

    [Fact]
    public void A_glitch_shorter_than_its_filter_is_left_out_and_what_stands_is_dated_when_it_came()
    {
        ChannelMap map = ChannelMapFile.Parse(
            "[[channel]]\nsignal = \"D0\"\nis = \"pump\"\nactive = \"low\"\nglitch = \"20 ms\"\n", "map.toml", _house).Map!;
        AuditResult audit = Rig.Audit(_house, "time_ms,D0\n0,1\n1000,0\n1019,1\n2000,0\n2020,1\n3000,0\n3005,1\n3010,0\n60000,0\n", map);
        Assert.Equal(2, audit.Glitches);
        Assert.Equal([2000L, 3010L], Starts(audit));
    }

    [Fact]
    public void A_panel_that_starts_its_pump_with_the_call_breaks_PUMP_PROOF_and_what_it_cannot_show_is_not_judged()
    {
        string folder = Files.ExampleTests.Folder();
        ChannelMapReading map = ChannelMapFile.Read(Path.Combine(folder, "bakery-panel.map.toml"), _house);
        Assert.Empty(map.Mistakes);
        AuditResult audit = Rig.Audit(_house, File.ReadAllText(Path.Combine(folder, "bakery-panel.csv")), map.Map);
        Assert.False(audit.Passed);
        Dictionary<string, RuleVerdict> rules = audit.Rules.ToDictionary(rule => rule.Rule);
        Assert.Equal((Judgement.Broken, 120_203L), (rules["PUMP-PROOF"].Judgement, rules["PUMP-PROOF"].FirstMs));
        Assert.Equal(Judgement.Broken, rules["HEAT-FLOW"].Judgement);
        foreach ((string rule, string channel) in new[] { ("ANSWER-WHY", "hold"), ("BOOT-SAFE", "power_up"), ("TIME-FAULT", "clock_ahead") })
        {
            Assert.Equal(Judgement.NotJudged, rules[rule].Judgement);
            Assert.Contains(channel, rules[rule].Why, StringComparison.Ordinal);
        }

        Assert.Equal(Judgement.NotJudged, audit.Wires.Judgement);
        Assert.InRange(audit.Estimate.DeadheadS, 30, 180);
    }

    [Theory]
    [InlineData("time_s,pump\n0,0\n1,2\n", "capture:3: found \"2\", expected 0, 1, x or nothing")]
    [InlineData("time_s,pump\n0,0\n1\n", "capture:3: found 1 fields, expected 2 fields")]
    [InlineData("time_s,pump\n0,0\n1,0,0\n", "capture:3: found more than 2 fields")]
    [InlineData("time_s,pump\n5,0\n1,0\n", "capture:3: found time 1 after 5")]
    [InlineData("time_s,pump\nsoon,0\n", "capture:2: found \"soon\", expected a time")]
    [InlineData("time_s,pump\n1e12,0\n", "capture:2: found time")]
    [InlineData("0,1\n1,1\n", "expected a header line")]
    [InlineData("time_s,\"pump\n0,0\n", "quotes")]
    [InlineData("time_s,pump,heat,heat_demand\n0,0,0,0\n", "two signals for heat_demand")]
    public void A_broken_table_gets_one_message_with_its_line(string table, string expected) =>
        Assert.Contains(expected, Rig.Refused(_house, table), StringComparison.Ordinal);

    [Theory]
    [InlineData("Time [s],pump\n-1.5e-1,0\n0.35,1\n", 500)]
    [InlineData("pump;t (ms)\r\n0;0\r\n1;1700000000500\r\n", 1_700_000_000_500)]
    [InlineData("; made by hand\ntime_us\tpump\n0\toff\n2500\tON\n", 2)]
    public void A_table_s_time_may_have_any_unit_and_begin_anywhere(string table, long endMs)
    {
        ChannelMap map = ChannelMap.None with { TimeColumn = table.StartsWith("pump", StringComparison.Ordinal) ? "t (ms)" : null };
        Assert.Equal(endMs, Rig.Audit(_house, table, map).EndMs);
    }

    [Theory]
    [InlineData("@5 boot log=1 fp=0 zones=9\n", "zones=3")]
    [InlineData("@5 boot log=2 fp=0 zones=3\n", "log=1")]
    [InlineData("@5 boot log=1 fp=0 zones=3\n@5 name z1 attic\n", "\"oven-room\"")]
    [InlineData("@5 boot log=1 fp=0 zones=3\n@5 next never\n@6 valve z4 on\n", "a zone from z1 to z3")]
    [InlineData("@5 boot log=1 fp=0 zones=3\n@5 next never\n@6 pump yes\n", "on or off")]
    [InlineData("@5 boot log=1 fp=0 zones=3\n@5 next never\n@6 pump on\n@7 heat on\n", "\"next\" at the end of the scan at 6 ms")]
    [InlineData("@5 boot log=1 fp=0 zones=3\n@5 next never\n@6 alarm smoke on\n", "an alarm: flow-trip")]
    public void A_broken_log_gets_one_message(string log, string expected) =>
        Assert.Contains(expected, Rig.Refused(_house, log), StringComparison.Ordinal);

    [Fact]
    public void After_lost_records_a_log_is_not_judged_until_the_next_boot()
    {
        const string Boot = "@5 boot log=1 fp=0 zones=3\n@5 next never\n";
        AuditResult audit = Rig.Audit(_house, Boot + "@100 lost n=3\n@200 pump on\n@200 next never\n" + Boot + "@900 alive scans=9 overruns=0\n");
        Assert.Equal(1, audit.GapCount);
        Assert.True(audit.Rules.First(rule => rule.Rule == "PUMP-PROOF").Judgement is Judgement.NotCalledUpon);
        Assert.Contains(audit.Notes, note => note.Text.Contains("lost records", StringComparison.Ordinal));
    }

    private static IEnumerable<long> Starts(AuditResult audit) => audit.Picture.Frames
        .Where((frame, i) => frame.Pump && (i == 0 || !audit.Picture.Frames[i - 1].Pump)).Select(frame => frame.Ms);
}
