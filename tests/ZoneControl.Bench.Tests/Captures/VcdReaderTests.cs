using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;

namespace ZoneControl.Bench.Tests.Captures;

public class VcdReaderTests
{
    private const string Head = "$timescale 1 ms $end $scope module top $end $var wire 1 ! pump $end $var wire 1 \" den.valve $end "
        + "$var wire 8 # bus [7:0] $end $upscope $end $enddefinitions $end\n";

    private static readonly House _house = Rig.House("two-rooms.house.toml");

    [Theory]
    [InlineData("1 ms", 60_000)]
    [InlineData("10us", 600)]
    [InlineData("100 ns", 6)]
    [InlineData("1 s", 60_000_000)]
    [InlineData("1 fs", 0)]
    public void Times_count_in_the_dump_s_own_scale(string scale, long endMs) =>
        Assert.Equal(endMs, Rig.Audit(_house, Head.Replace("1 ms", scale) + "#0 0! 0\"\n#60000 1!\n").EndMs);

    [Fact]
    public void A_bit_of_a_bus_is_taken_from_vectors_of_any_length()
    {
        // bus[3] is the pump: b1000 has it on, b101 is short and has it off, bx leaves it unknown.
        ChannelMap map = Mapped("bus[3]", "pump");
        Assert.Equal(1, Rig.Audit(_house, Head + "#0 b0 # 0\" #1000 b1000 # #2000 b101 # #3000\n", map).Estimate.PumpStarts);
        AuditResult unknown = Rig.Audit(_house, Head + "#0 b0 # 0\" #1000 bx # #2000 b0 # #3000\n", map);
        Assert.Equal((1000, 2000), (Assert.Single(unknown.Gaps).FromMs, unknown.Gaps[0].ToMs));
    }

    [Fact]
    public void While_dumping_is_off_nothing_is_judged_and_the_gap_is_told()
    {
        AuditResult audit = Rig.Audit(_house, Head + "#0 $dumpvars 0! 0\" $end #5000 $dumpoff x! x\" $end #9000 $dumpon 1! 1\" $end #12000\n");
        CaptureGap gap = Assert.Single(audit.Gaps);
        Assert.Equal((5000, 9000), (gap.FromMs, gap.ToMs));
        Assert.Contains("not known", gap.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void One_code_may_stand_for_several_signals()
    {
        AuditResult audit = Rig.Audit(_house, "$timescale 1ms $end $var wire 1 ! pump $end $var wire 1 ! heat_demand $end $enddefinitions $end #0 0! #10 1! #20\n");
        Assert.Equal(["pump", "heat_demand"], audit.Channels.Select(pair => pair.Channel));
    }

    [Fact]
    public void A_channel_that_never_gets_a_value_leaves_nothing_judged()
    {
        AuditResult audit = Rig.Audit(_house, Head + "#0 1! #1000 0! #2000\n");
        Assert.False(audit.Passed);
        Assert.All(audit.Rules, rule => Assert.True(rule.Judgement is Judgement.NotJudged, rule.Rule));
    }

    [Theory]
    [InlineData("#0 0! 0\" #100 1! #50 0!\n", "time 50 after 100")]
    [InlineData("#0 0! 0\" #99999999999999999999 1!\n", "a whole number after #")]
    [InlineData("#0 0! 0\" #18446744073709551615 1!\n", "at most 100 years")]
    [InlineData("#0 0! 0\" 1~\n", "the code of a signal that the head declares")]
    [InlineData("#0 b2 #\n", "b and bits 0, 1, x or z")]
    [InlineData("#0 b1", "the end of the file")]
    [InlineData("#0 nonsense\n", "found \"nonsense\"")]
    [InlineData("$comment never ends\n", "without $end")]
    public void A_broken_dump_gets_one_message_with_its_line(string body, string expected)
    {
        string message = Rig.Refused(_house, Head + body);
        Assert.StartsWith("capture:2: ", message, StringComparison.Ordinal);
        Assert.Contains(expected, message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("$var wire 1 ! pump $end", "$enddefinitions")]
    [InlineData("$var wire 1 ! pump $end $enddefinitions $end #0", "$timescale")]
    [InlineData("$timescale 3 ms $end $enddefinitions $end", "1, 10 or 100")]
    [InlineData("$timescale 1 ms $end $upscope $end", "$upscope without a $scope")]
    [InlineData("$timescale 1 ms $end $var wire x ! a $end", "the width of a signal")]
    [InlineData("$timescale 1 ms $end $var wire 1 ! unheard $end $enddefinitions $end #0 1!", "a channel map (--map FILE)")]
    public void A_broken_head_is_told(string text, string expected) =>
        Assert.Contains(expected, Rig.Refused(_house, text), StringComparison.Ordinal);

    [Fact]
    public void A_word_without_end_is_refused_in_constant_memory()
    {
        using var endless = new Repeating("a"u8.ToArray(), 1L << 40);
        Audit audit = CaptureAudit.Run(_house, new Joined("$timescale "u8.ToArray(), endless), "capture", ChannelMap.None, cancel: TestContext.Current.CancellationToken);
        Assert.Contains("without a break", Assert.Single(audit.Mistakes).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_unheard_of_signal_in_a_map_is_told_with_the_nearest_word()
    {
        string message = Rig.Refused(_house, Head + "#0 0!\n", Mapped("bsu", "pump"));
        Assert.Contains("found \"bsu\"", message, StringComparison.Ordinal);
        Assert.Contains("did you mean", message, StringComparison.Ordinal);
    }

    internal static ChannelMap Mapped(string signal, string channel, string more = "")
    {
        ChannelMapReading reading = ChannelMapFile.Parse(
            $"{more}\n[[channel]]\nsignal = \"{signal}\"\nis = \"{channel}\"\n", "map.toml", _house);
        Assert.Empty(reading.Mistakes);
        return reading.Map!;
    }
}
