using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Scripts;

/// <summary>
/// One trace by hand: at 60 s the kitchen's valves are energised and the pump waits for them, at 300 s the pump and heat
/// come on, at 600 s heat goes off and bath is late, at 700 s the pump goes off. 4 s of deadhead between 300 s and 310 s.
/// </summary>
public class ExpectationJudgeTests
{
    private static readonly Trace _trace = new(
        [
            new Frame { Ms = 0, PowerUp = true },
            new Frame { Ms = 60_000, Valves = 0b01, Hold = HoldReason.Proof },
            new Frame { Ms = 300_000, Valves = 0b01, Pump = true, Heat = true },
            new Frame { Ms = 600_000, Valves = 0b01, Pump = true, LateValves = 0b10 },
            new Frame { Ms = 700_000, Valves = 0b01 },
        ],
        [Sample(0, 0), Sample(300_000, 0), Sample(310_000, 4), Sample(3_600_000, 4)],
        3_600_000);

    public static TheoryData<string, long?> Met => new()
    {
        { "pump = \"on\", at = \"5 min\"", 300_000 },
        { "pump = \"off\", at = \"299.999 s\"", 299_999 },
        { "pump = \"off\", at = \"1 h\"", 3_600_000 },
        { "pump = \"off\", from = \"0 s\", until = \"5 min\"", null },
        { "pump = \"on\", from = \"5 min\", until = \"700 s\"", null },
        { "pump = \"off\", from = \"700 s\", until = \"1 h\"", null },
        { "pump = \"on\", within = \"5 min\"", 300_000 },
        { "pump = \"on\", after = \"6 min\", within = \"0 s\"", 360_000 },
        { "pump = \"off\", after = \"6 min\", within = \"10 min\"", 700_000 },
        { "heat = \"off\", at = \"10 min\"", 600_000 },
        { "valve = \"kitchen\", is = \"open\", at = \"1 min\"", 60_000 },
        { "valve = \"bath\", is = \"shut\", from = \"0 s\", until = \"1 h\"", null },
        { "hold = \"valves opening\", at = \"1 min\"", 60_000 },
        { "hold = \"no hold\", at = \"5 min\"", 300_000 },
        { "alarm = \"late\", zone = \"bath\", at = \"11 min\"", 660_000 },
        { "alarm = \"latched\", zone = \"bath\", is = \"clear\", at = \"11 min\"", 660_000 },
        { "deadhead_at_most = \"4 s\"", null },
        { "deadhead_at_most = \"0 s\", from = \"0 s\", until = \"5 min\"", null },
        { "deadhead_at_most = \"2 s\", from = \"305 s\", until = \"1 h\"", null },
    };

    [Theory]
    [MemberData(nameof(Met))]
    public void What_the_trace_shows_is_met(string entry, long? ms)
    {
        ExpectationVerdict verdict = Judge(entry, _trace);
        Assert.True(verdict.Met, verdict.Why);
        Assert.Equal((ms, ""), (verdict.Ms, verdict.Why));
    }

    public static TheoryData<string, long?, string> Unmet => new()
    {
        { "pump = \"on\", at = \"299.999 s\"", 299_999, "the pump was off, hold reason \"valves opening\"" },
        { "pump = \"off\", at = \"5 min\"", 300_000, "the pump was on" },
        { "pump = \"off\", from = \"0 s\", until = \"300.001 s\"", 300_000, "the pump was on at 5 min" },
        { "pump = \"on\", from = \"299.999 s\", until = \"6 min\"", 299_999, "the pump was off, hold reason \"valves opening\" at 4 min 59.999 s" },
        { "pump = \"on\", within = \"299.999 s\"", 299_999, "the pump was off, hold reason \"valves opening\" at 4 min 59.999 s, and it did not come true before" },
        { "pump = \"on\", after = \"12 min\", within = \"48 min\"", 3_600_000, "the pump was off, hold reason \"no hold\" at 1 h, and it did not come true before" },
        { "heat = \"on\", at = \"10 min\"", 600_000, "heat demand was off" },
        { "valve = \"bath\", is = \"open\", at = \"1 min\"", 60_000, "valves opened were: kitchen" },
        { "valve = \"kitchen\", is = \"shut\", from = \"0 s\", until = \"1 h\"", 60_000, "valves opened were: kitchen at 1 min" },
        { "hold = \"start delay\", at = \"1 min\"", 60_000, "the hold reason was \"valves opening\"" },
        { "alarm = \"late\", zone = \"bath\", at = \"1 min\"", 60_000, "alarm \"late\" was raised for: none" },
        { "alarm = \"early\", zone = \"bath\", at = \"11 min\"", 660_000, "alarm \"early\" was raised for: none" },
        { "deadhead_at_most = \"3 s\"", 310_000, "4 s of deadhead" },
        { "deadhead_at_most = \"1 s\", from = \"305 s\", until = \"1 h\"", 310_000, "2 s of deadhead" },
    };

    [Theory]
    [MemberData(nameof(Unmet))]
    public void What_the_trace_does_not_show_is_unmet_and_says_what_was_seen(string entry, long? ms, string why)
    {
        ExpectationVerdict verdict = Judge(entry, _trace);
        Assert.False(verdict.Met);
        Assert.Equal((ms, why), (verdict.Ms, verdict.Why));
    }

    [Theory]
    [InlineData("pump = \"off\", at = \"1 h\"")]
    [InlineData("pump = \"off\", from = \"20 min\", until = \"1 h\"")]
    [InlineData("pump = \"on\", after = \"20 min\", within = \"20 min\"")]
    [InlineData("deadhead_at_most = \"9 s\", from = \"0 s\", until = \"1 h\"")]
    public void A_run_that_was_stopped_early_does_not_meet_what_it_did_not_reach(string entry)
    {
        ExpectationVerdict verdict = Judge(entry, _trace with { EndMs = 1_800_000 });
        Assert.False(verdict.Met);
        Assert.Equal("not recorded: the record goes from 0 s to 30 min", verdict.Why);
    }

    [Fact]
    public void An_empty_trace_meets_nothing() =>
        Assert.Equal("nothing was recorded", Judge("pump = \"off\", at = \"0 s\"", new Trace([], [], 0)).Why);

    [Fact]
    public void A_verdict_carries_the_words_and_the_line_of_its_expectation()
    {
        ExpectationVerdict verdict = Judge("pump = \"on\", at = \"5 min\"", _trace);
        Assert.Equal(("pump on at 5 min", 3), (verdict.Text, verdict.Line));
    }

    private static ExpectationVerdict Judge(string entry, Trace trace) =>
        Assert.Single(ExpectationJudge.Judge(ScriptText.Script($"expect = [{{ {entry} }}]"), ScriptText.House, trace));

    private static PlantSample Sample(long ms, double deadheadS) => new()
    {
        Ms = ms,
        RawCalls = 0,
        RawSwitches = 0,
        Travel = [0, 0],
        ZoneFlowM3s = [0, 0],
        PumpFlowM3s = 0,
        BypassFlowM3s = 0,
        PumpHeadM = 0,
        TrappedWaterC = 30,
        DeadheadS = deadheadS,
    };
}
