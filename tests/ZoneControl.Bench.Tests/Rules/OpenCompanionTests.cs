using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class OpenCompanionTests
{
    private const string Rule = "OPEN-COMPANION";

    [Fact]
    public void A_companion_that_opens_with_the_call_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.GlazeRuns().End(20_000),
        occasions: 1);

    [Fact]
    public void A_retained_zone_is_lawful_until_the_companion_has_proven() => Verdict.IsKept(
        Rule,
        Scene.Handover(),
        occasions: 1);

    [Fact]
    public void Companions_take_the_place_of_a_late_valve() => Verdict.IsKept(
        Rule,
        Scene.LoftIsLatched(),
        occasions: 1);

    [Fact]
    public void A_late_companion_may_be_tried_again_where_no_other_helps() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Hold(HoldReason.Proof)
            .At(16_000).Late(Shop).NoValve(Shop).Hold(HoldReason.TooFewValves)
            .At(24_000).Valve(Shop)
            .End(30_000),
        occasions: 1);

    [Fact]
    public void A_companion_that_does_not_open_breaks_it() => Verdict.IsBroken(
        Rule,
        1_200,
        "Shop is not opened though it is the companion",
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Hold(HoldReason.Proof)
            .End(2_000));

    [Fact]
    public void A_calling_zone_that_does_not_open_breaks_it() => Verdict.IsBroken(
        Rule,
        1_200,
        "Kiln is not opened though it calls",
        Scene.Quiet()
            .At(1_000).Call(Kiln).Hold(HoldReason.Proof)
            .End(2_000));

    [Fact]
    public void A_valve_that_opens_without_cause_breaks_it_at_once() => Verdict.IsBroken(
        Rule,
        20_000,
        "Glaze opened without a call",
        Scene.KilnRuns()
            .At(20_000).Valve(Glaze)
            .End(20_100));

    [Fact]
    public void A_zone_outside_the_companion_order_is_no_companion() => Verdict.IsBroken(
        Rule,
        1_000,
        "Kiln opened without a call",
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Valve(Kiln).Hold(HoldReason.Proof)
            .End(1_100));

    [Fact]
    public void A_retained_zone_goes_within_two_scans_of_the_companions_proof() => Verdict.IsBroken(
        Rule,
        47_200,
        "Kiln stays open",
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).Valve(Shop)
            .At(47_000).Switch(Shop)
            .At(47_300).NoValve(Kiln)
            .End(50_000));

    [Fact]
    public void A_valve_goes_within_two_scans_of_the_end_of_the_rundown() => Verdict.IsBroken(
        Rule,
        65_200,
        "Kiln stays open",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(60_000).NoPump()
            .At(65_300).NoValve(Kiln)
            .End(70_000));

    [Fact]
    public void Calls_that_reach_minimum_open_do_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnDay());

    [Fact]
    public void A_latched_valve_is_no_companion() => Verdict.IsBroken(
        Rule,
        45_000,
        "Shop opened without a call",
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Hold(HoldReason.Proof)
            .At(16_000).Late(Shop).NoValve(Shop).Hold(HoldReason.TooFewValves)
            .At(24_000).Valve(Shop)
            .At(39_000).Latched(Shop).NoValve(Shop)
            .At(45_000).Valve(Shop)
            .End(45_100),
        "VALVE-LATE",
        "ALARM-LATCH");
}
