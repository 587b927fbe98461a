using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class TimeFaultTests
{
    private const string Rule = "TIME-FAULT";

    [Fact]
    public void A_jump_back_that_begins_everything_anew_keeps_it() => Verdict.IsKept(
        Rule,
        Faulty(Scene.KilnRuns().At(5_000))
            .At(15_000).Hold(HoldReason.StartDelay)
            .At(17_000).Pump().Heat().Hold(HoldReason.None)
            .End(20_000),
        occasions: 1);

    [Fact]
    public void A_clock_that_stands_still_is_seen_where_its_scans_are() => Verdict.IsKept(
        Rule,
        Faulty(Scene.KilnRuns().At(20_000).At(20_000).At(20_000).At(20_000)).End(25_000),
        occasions: 1,
        With(s => s.StallScans = 3));

    [Fact]
    public void A_scan_long_after_its_deadline_is_seen_where_every_scan_is() => Verdict.IsKept(
        Rule,
        Faulty(Scene.KilnRuns().EveryScan().At(20_000).Deadline(20_500).At(21_501)).End(25_000),
        occasions: 1);

    [Fact]
    public void A_jump_back_that_is_not_noticed_breaks_it() => Verdict.IsBroken(
        Rule,
        5_000,
        "the clock runs back, and no alarm says so",
        Scene.KilnRuns().At(5_000).NoPump().NoHeat().Hold(HoldReason.Proof).End(6_000));

    [Fact]
    public void A_pump_that_runs_on_breaks_it() => Verdict.IsBroken(
        Rule,
        20_000,
        "the clock stands still, and the pump is on",
        Scene.KilnRuns().At(20_000).At(20_000).At(20_000).At(20_000).Alarmed(Alarm.TimeFault).End(20_100),
        With(s => s.StallScans = 3));

    [Fact]
    public void A_late_scan_that_is_not_noticed_breaks_it() => Verdict.IsBroken(
        Rule,
        21_501,
        "the scan comes too late, and no alarm says so",
        Scene.KilnRuns().EveryScan().At(20_000).Deadline(20_500).At(21_501).NoPump().NoHeat().Hold(HoldReason.Proof).End(22_000));

    [Fact]
    public void A_fault_that_the_clock_does_not_show_breaks_it() => Verdict.IsBroken(
        Rule,
        21_500,
        "a time fault is alarmed, and the clock shows none",
        Faulty(Scene.KilnRuns().EveryScan().At(20_000).Deadline(20_500).At(21_500)).End(22_000));

    [Fact]
    public void A_valve_released_before_the_fresh_rundown_breaks_it() => Verdict.IsBroken(
        Rule,
        9_900,
        "Kiln released before the fresh rundown after a fault of the clock was over",
        Faulty(Scene.KilnRuns().At(5_000))
            .At(9_900).NoCall(Kiln).NoValve(Kiln).Hold(HoldReason.None)
            .End(12_000));

    [Fact]
    public void Proof_from_before_the_fault_does_not_count() => Verdict.IsBroken(
        "PUMP-PROOF",
        14_000,
        "the pump went on with proven capacity 0",
        Faulty(Scene.KilnRuns().At(5_000)).At(14_000).Pump().Heat().Hold(HoldReason.None).End(14_100),
        "PUMP-DELAY");

    [Fact]
    public void A_clock_that_can_be_trusted_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Faulty(TraceBuilder trace) =>
        trace.NoPump().NoHeat().Alarmed(Alarm.TimeFault).Hold(HoldReason.Proof);
}
