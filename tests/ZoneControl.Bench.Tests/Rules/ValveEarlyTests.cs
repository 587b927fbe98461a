using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class ValveEarlyTests
{
    private const string Rule = "VALVE-EARLY";

    [Fact]
    public void An_end_switch_that_makes_too_soon_proves_only_after_full_opening_time() => Verdict.IsKept(
        Rule,
        Scene.LoftIsEarly(),
        occasions: 1);

    [Fact]
    public void So_does_one_that_is_made_before_its_valve_is_energised() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(500).Switch(Loft)
            .At(1_000).Call(Loft).Valve(Loft).Early(Loft).Hold(HoldReason.Proof)
            .At(13_000).Pump().Heat().Hold(HoldReason.None)
            .End(40_000),
        occasions: 1);

    [Fact]
    public void A_start_on_an_early_switch_breaks_it() => Verdict.IsBroken(
        Rule,
        13_000,
        "runs on the end switch of Loft",
        Scene.Quiet()
            .At(1_000).Call(Loft).Hold(HoldReason.Proof)
            .At(1_200).Valve(Loft)
            .At(2_000).Switch(Loft).Early(Loft)
            .At(13_000).Pump().Hold(HoldReason.None)
            .End(13_100),
        "PUMP-PROOF");

    [Fact]
    public void Running_on_by_an_early_switch_breaks_it_two_scans_later() => Verdict.IsBroken(
        Rule,
        25_200,
        "runs on the end switch of Loft",
        Scene.KilnRuns()
            .At(20_000).Call(Loft).Valve(Loft)
            .At(21_000).Switch(Loft).Early(Loft)
            .At(25_000).NoCall(Kiln).NoValve(Kiln)
            .End(26_000),
        "PUMP-PROOF", "PUMP-TRIP", "PUMP-ORDER", "OPEN-HANDOVER");

    [Fact]
    public void An_early_switch_without_alarm_breaks_it() => Verdict.IsBroken(
        Rule,
        2_200,
        "made too soon, and no alarm says so",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(2_000).Switch(Loft)
            .End(3_000));

    [Fact]
    public void An_alarm_without_an_early_switch_breaks_it() => Verdict.IsBroken(
        Rule,
        20_200,
        "made too soon, and it did not",
        Scene.LoftRuns()
            .At(20_000).Early(Loft)
            .End(21_000));

    [Fact]
    public void A_switch_that_made_exactly_at_the_shortest_time_is_not_early() => Verdict.IsBroken(
        Rule,
        3_200,
        "made too soon, and it did not",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(3_000).Switch(Loft).Early(Loft).Hold(HoldReason.StartDelay)
            .End(4_000));

    [Fact]
    public void A_switch_that_makes_in_good_time_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.LoftDay());
}
