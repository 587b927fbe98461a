using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class AnswerWhyTests
{
    private const string Rule = "ANSWER-WHY";

    [Fact]
    public void Proof_then_start_delay_then_nothing_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void Lockout_is_published_once_the_overrun_is_over() => Verdict.IsKept(
        Rule,
        Scene.LockoutWhileRunning(),
        occasions: 2);

    [Fact]
    public void A_latched_valve_is_published_once_the_overrun_is_over() => Verdict.IsKept(
        Rule,
        Scene.LoftIsLatched(),
        occasions: 2);

    [Fact]
    public void Too_few_valves_comes_before_proof() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Hold(HoldReason.Proof)
            .At(16_000).Late(Shop).NoValve(Shop).Hold(HoldReason.TooFewValves)
            .End(20_000),
        occasions: 1);

    [Fact]
    public void A_later_reason_hides_no_earlier_one() => Verdict.IsBroken(
        Rule,
        16_000,
        "published \"valves opening\"; the first unmet condition is \"too few valves\": healthy valves reach 1 of 2",
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Hold(HoldReason.Proof)
            .At(16_000).Late(Shop).NoValve(Shop)
            .End(20_000));

    [Fact]
    public void No_reason_while_there_is_one_breaks_it() => Verdict.IsBroken(
        Rule,
        1_000,
        "published \"no hold\"; the first unmet condition is \"valves opening\": 0 of 2 proven",
        Scene.Quiet()
            .At(1_000).Call(Kiln).Valve(Kiln)
            .End(1_100));

    [Fact]
    public void A_reason_that_time_made_untrue_breaks_it_a_scan_later() => Verdict.IsBroken(
        Rule,
        11_100,
        "published \"valves opening\"; the first unmet condition is \"start delay\"",
        Scene.Quiet()
            .At(1_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
            .At(13_000).Pump().Heat().Hold(HoldReason.None)
            .End(14_000));

    [Fact]
    public void A_pump_held_by_nothing_breaks_it() => Verdict.IsBroken(
        Rule,
        13_100,
        "every condition is met, and the pump is off",
        Scene.KilnOpens()
            .End(14_000));

    [Fact]
    public void A_reason_with_the_pump_on_breaks_it() => Verdict.IsBroken(
        Rule,
        13_000,
        "published \"start delay\", though the pump is on",
        Scene.KilnOpens()
            .At(13_000).Pump().Heat()
            .End(14_000));

    [Fact]
    public void A_reason_with_nobody_calling_breaks_it() => Verdict.IsBroken(
        Rule,
        5_000,
        "published \"valves opening\", though nobody calls",
        Scene.Quiet()
            .At(5_000).Hold(HoldReason.Proof)
            .End(6_000));

    [Fact]
    public void A_call_in_lockout_without_the_word_breaks_it() => Verdict.IsBroken(
        Rule,
        2_000,
        "published \"no hold\"; the first unmet condition is \"season lockout\"",
        Scene.Quiet()
            .At(1_000).Lockout()
            .At(2_000).Call(Kiln)
            .End(3_000));

    [Fact]
    public void A_latched_caller_without_the_word_breaks_it() => Verdict.IsBroken(
        Rule,
        59_000,
        "published \"no hold\"; the first unmet condition is \"valve latched\"",
        Scene.LoftIsRetried()
            .At(39_000).Latched(Loft).NoValve(Loft).NoHeat()
            .At(59_000).NoPump()
            .End(60_000));

    [Fact]
    public void A_day_without_calls_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.Quiet()
            .End(60_000));
}
