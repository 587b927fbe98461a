using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class ValveLateTests
{
    private const string Rule = "VALVE-LATE";

    [Fact]
    public void Alarm_rest_retry_latch_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.LoftIsLatched(),
        occasions: 2);

    [Fact]
    public void A_retry_that_proves_ends_the_alarm() => Verdict.IsKept(
        Rule,
        Scene.LoftIsRetried()
            .At(33_000).Switch(Loft).NoLate(Loft).NoValve(Glaze).NoValve(Shop)
            .End(40_000),
        occasions: 1);

    [Fact]
    public void Inside_a_rundown_the_retry_waits() => Verdict.IsKept(
        Rule,
        Scene.GlazeRuns()
            .At(20_000).Call(Loft).Valve(Loft)
            .At(33_000).NoSwitch(Shop).NoPump().NoHeat().Hold(HoldReason.Proof)
            .At(35_000).Late(Loft)
            .At(38_000).NoValve(Loft)
            .End(39_000),
        occasions: 1);

    [Fact]
    public void A_late_valve_that_is_no_longer_wanted_just_closes() => Verdict.IsKept(
        Rule,
        Scene.LoftIsRetried()
            .At(30_000).NoCall(Loft).NoValve(Loft).NoHeat()
            .At(50_000).NoPump()
            .At(55_000).NoValve(Glaze).NoValve(Shop)
            .End(60_000),
        occasions: 1);

    [Fact]
    public void A_valve_that_is_late_without_alarm_breaks_it() => Verdict.IsBroken(
        Rule,
        16_200,
        "Loft is energised and not proven for 15 s, and no alarm says so",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .End(17_000));

    [Fact]
    public void A_proof_lost_while_energised_runs_into_the_limit_too() => Verdict.IsBroken(
        Rule,
        45_200,
        "no alarm says so",
        Scene.LoftRuns()
            .At(30_000).NoSwitch(Loft).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(46_000));

    [Fact]
    public void An_alarm_before_the_limit_breaks_it() => Verdict.IsBroken(
        Rule,
        15_900,
        "published as late without having waited",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(15_900).Late(Loft).NoValve(Loft).Valve(Glaze).Valve(Shop)
            .End(20_000));

    [Fact]
    public void A_timed_valve_is_never_late() => Verdict.IsBroken(
        Rule,
        20_000,
        "Kiln is published as late without",
        Scene.KilnRuns()
            .At(20_000).Late(Kiln)
            .End(20_100));

    [Fact]
    public void An_alarm_withdrawn_before_proof_breaks_it() => Verdict.IsBroken(
        Rule,
        23_500,
        "no longer published as late, and has not proven",
        Scene.LoftIsLate()
            .At(23_500).NoLate(Loft).Valve(Loft)
            .End(24_000));

    [Fact]
    public void An_alarm_that_stays_after_proof_breaks_it() => Verdict.IsBroken(
        Rule,
        33_200,
        "has proven, and is still published",
        Scene.LoftIsRetried()
            .At(33_000).Switch(Loft)
            .End(34_000));

    [Fact]
    public void A_late_valve_that_is_neither_released_nor_latched_breaks_it() => Verdict.IsBroken(
        Rule,
        16_200,
        "neither released for a retry nor latched",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(16_000).Late(Loft).Valve(Glaze).Valve(Shop)
            .End(17_000));

    [Fact]
    public void A_retry_before_the_closing_time_breaks_it() => Verdict.IsBroken(
        Rule,
        23_900,
        "sooner than its closing time of 8 s",
        Scene.LoftIsLate()
            .At(23_900).Valve(Loft)
            .End(25_000));

    [Fact]
    public void A_retry_that_never_comes_breaks_it() => Verdict.IsBroken(
        Rule,
        24_200,
        "is not tried again",
        Scene.LoftIsLate()
            .End(25_000));

    [Fact]
    public void A_release_for_a_retry_inside_a_rundown_breaks_it() => Verdict.IsBroken(
        Rule,
        36_000,
        "released for a retry while the pump runs down",
        Scene.GlazeRuns()
            .At(20_000).Call(Loft).Valve(Loft)
            .At(33_000).NoSwitch(Shop).NoPump().NoHeat().Hold(HoldReason.Proof)
            .At(35_000).Late(Loft)
            .At(36_000).NoValve(Loft)
            .End(37_000));

    [Fact]
    public void One_rest_too_many_breaks_it() => Verdict.IsBroken(
        Rule,
        39_200,
        "late after 1 retries, and not latched",
        Scene.LoftIsRetried()
            .At(39_000).NoValve(Loft)
            .End(40_000));

    [Fact]
    public void A_latch_before_the_retries_are_used_up_breaks_it() => Verdict.IsBroken(
        Rule,
        16_000,
        "latched after 0 of 1 retries",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(16_000).Late(Loft).Latched(Loft).NoValve(Loft).Hold(HoldReason.ValveLatched)
            .End(20_000));

    [Fact]
    public void A_latched_valve_that_stays_driven_breaks_it() => Verdict.IsBroken(
        Rule,
        39_200,
        "latched, and its valve is still driven",
        Scene.LoftIsRetried()
            .At(39_000).Latched(Loft).NoHeat()
            .End(40_000));

    [Fact]
    public void A_latch_that_opens_by_itself_breaks_it() => Verdict.IsBroken(
        Rule,
        70_000,
        "no longer latched, without a power-up",
        Scene.LoftIsLatched()
            .At(70_000).NoLatched(Loft).Hold(HoldReason.Proof)
            .End(70_100),
        "ALARM-LATCH");

    [Fact]
    public void A_switch_that_makes_in_time_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.LoftDay());
}
