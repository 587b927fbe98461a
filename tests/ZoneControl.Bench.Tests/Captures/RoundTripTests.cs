using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Tests.Files;

namespace ZoneControl.Bench.Tests.Captures;

/// <summary>What `run` writes is read back to the same verdict, rule by rule, for every example and with both controllers.</summary>
public class RoundTripTests
{
    public static TheoryData<string, string> Pairs => ExampleTests.Pairs;

    [Theory]
    [MemberData(nameof(Pairs))]
    public void A_run_s_dump_and_table_are_judged_as_the_run_was(string houseFile, string scriptFile)
    {
        foreach (Run run in (Run[])[Rig.Run(houseFile, scriptFile, Rig.Library), Rig.Run(houseFile, scriptFile, Rig.Straight)])
        {
            Same(run, Rig.Audit(run.House, Rig.Vcd(run)));
            Same(run, Rig.Audit(run.House, Rig.Csv(run)));
        }
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void A_board_s_log_of_a_run_is_judged_as_its_dump(string houseFile, string scriptFile)
    {
        Run run = Rig.Run(houseFile, scriptFile, Rig.Library);
        AuditResult log = Rig.Audit(run.House, BoardLog.Of(run));
        AuditResult dump = Rig.Audit(run.House, Rig.Vcd(run));
        Assert.Equal(CaptureFormat.Log, log.Format);
        Assert.All(log.Rules, rule => Assert.True(rule.Judgement != Judgement.Broken, $"{rule.Rule} at {rule.FirstMs} ms: {rule.Why}"));
        // A board knows only its own clock; where that is tampered with the same faults are seen, but not as often.
        bool clockFails = run.Trace.Frames.Any(frame => frame.ClockAheadMs != 0);
        Assert.Equal(dump.Rules.Select(rule => Said(rule, !clockFails)), log.Rules.Select(rule => Said(rule, !clockFails)));
        Assert.Equal(dump.Passed, log.Passed);
        Assert.Equal(Judgement.NotJudged, log.Wires.Judgement);
    }

    [Fact]
    public void A_faulty_controller_s_log_and_dump_are_found_broken_alike()
    {
        Run run = Rig.Run("two-rooms.house.toml", "two-rooms-evening.script.toml", Rig.Straight);
        AuditResult log = Rig.Audit(run.House, BoardLog.Of(run));
        AuditResult dump = Rig.Audit(run.House, Rig.Vcd(run));
        Assert.False(log.Passed);
        Assert.Equal(dump.Rules, log.Rules);
    }

    private static void Same(Run run, AuditResult audit)
    {
        Assert.Equal(run.Rules, audit.Rules);
        bool tampered = run.Trace.Frames.Any(frame => frame.ClockAheadMs != 0);
        bool wiresBroken = run.Expectations.Any(verdict => verdict.Text == "contacts published as wired");
        Judgement wires = tampered ? Judgement.NotJudged : wiresBroken ? Judgement.Broken : Judgement.Kept;
        Assert.Equal(wires, audit.Wires.Judgement);
        Assert.Equal(run.Trace.EndMs, audit.EndMs);
        Assert.Equal(run.Rules.All(rule => rule.Judgement != Judgement.Broken) && !wiresBroken, audit.Passed);
    }

    private static (string, Judgement, int, long?) Said(RuleVerdict rule, bool exactly) =>
        (rule.Rule, rule.Judgement, exactly ? rule.Occasions : 0, exactly ? rule.FirstMs : null);
}
