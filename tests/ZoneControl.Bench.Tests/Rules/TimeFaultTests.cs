using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class TimeFaultTests
{
    private const string Rule = "TIME-FAULT";

    private static readonly ControllerSettings _threeScans = With(s => s.StallScans = 3);

    [Fact]
    public void A_jump_back_that_begins_everything_anew_keeps_it() => Verdict.IsKept(
        Rule,
        Faulty(JumpsBack())
            .At(30_000).Hold(HoldReason.StartDelay)
            .At(32_000).Pump().Heat().Hold(HoldReason.None)
            .End(40_000),
        occasions: 1);

    [Fact]
    public void So_does_another_while_the_alarm_stands() => Verdict.IsKept(
        Rule,
        Faulty(Faulty(JumpsBack()).At(25_000).Clock(-20_100))
            .At(35_000).Hold(HoldReason.StartDelay)
            .At(37_000).Pump().Heat().Hold(HoldReason.None)
            .End(40_000),
        occasions: 2);

    [Fact]
    public void A_clock_that_stands_still_is_one() => Verdict.IsKept(Rule, Faulty(StandsStill()).End(25_000), occasions: 1, _threeScans);

    [Fact]
    public void A_jump_past_the_deadline_and_its_limit_is_one() => Verdict.IsKept(
        Rule,
        Faulty(Deadline().At(20_100).Clock(1_401)).End(25_000),
        occasions: 1);

    [Fact]
    public void A_jump_ahead_that_is_not_past_it_is_none() => Verdict.IsNotCalledUpon(
        Rule,
        Deadline().At(20_100).Clock(1_400).End(25_000));

    [Fact]
    public void A_scan_that_comes_late_by_the_runs_time_is_seen_where_every_scan_is() => Verdict.IsKept(
        Rule,
        Faulty(Deadline().EveryScan().At(21_501)).End(25_000),
        occasions: 1);

    [Fact]
    public void A_jump_back_that_is_not_noticed_breaks_it() => Verdict.IsBroken(
        Rule,
        20_000,
        "the clock runs back, and no alarm says so",
        JumpsBack().NoPump().NoHeat().Hold(HoldReason.Proof).End(21_000));

    [Fact]
    public void A_pump_that_runs_on_breaks_it() => Verdict.IsBroken(
        Rule,
        20_300,
        "the clock stands still, and the pump is on",
        StandsStill().Alarmed(Alarm.TimeFault).End(20_400),
        _threeScans);

    [Fact]
    public void A_late_scan_that_is_not_noticed_breaks_it() => Verdict.IsBroken(
        Rule,
        21_501,
        "the scan comes too late, and no alarm says so",
        Deadline().EveryScan().At(21_501).NoPump().NoHeat().Hold(HoldReason.Proof).End(22_000));

    [Fact]
    public void A_fault_that_the_clock_does_not_show_breaks_it() => Verdict.IsBroken(
        Rule,
        21_500,
        "a time fault is alarmed, and the clock shows none",
        Faulty(Deadline().EveryScan().At(21_500)).End(22_000));

    [Fact]
    public void A_valve_released_before_the_fresh_rundown_breaks_it() => Verdict.IsBroken(
        Rule,
        24_900,
        "Kiln released before the fresh rundown after a fault of the clock was over",
        Faulty(JumpsBack())
            .At(24_900).NoCall(Kiln).NoValve(Kiln).Hold(HoldReason.None)
            .End(27_000));

    [Fact]
    public void Proof_from_before_the_fault_does_not_count() => Verdict.IsBroken(
        "PUMP-PROOF",
        29_000,
        "the pump went on with proven capacity 0",
        Faulty(JumpsBack()).At(29_000).Pump().Heat().Hold(HoldReason.None).End(29_100),
        "PUMP-DELAY");

    [Fact]
    public void Time_that_the_clock_does_not_count_passes_for_nobody() => Verdict.IsKept(
        "PUMP-DELAY",
        Scene.KilnOpens()
            .At(12_000)
            .At(12_100).Clock(-100)
            .At(12_200).Clock(-200)
            .At(13_200).Pump().Heat().Hold(HoldReason.None)
            .End(20_000),
        occasions: 1);

    [Fact]
    public void A_clock_that_can_be_trusted_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder JumpsBack() => Scene.KilnRuns().At(20_000).Clock(-15_000);

    private static TraceBuilder StandsStill() => Scene.KilnRuns()
        .At(20_000)
        .At(20_100).Clock(-100)
        .At(20_200).Clock(-200)
        .At(20_300).Clock(-300);

    private static TraceBuilder Deadline() => Scene.KilnRuns().At(20_000).Deadline(20_500);

    private static TraceBuilder Faulty(TraceBuilder trace) =>
        trace.NoPump().NoHeat().Alarmed(Alarm.TimeFault).Hold(HoldReason.Proof);
}
