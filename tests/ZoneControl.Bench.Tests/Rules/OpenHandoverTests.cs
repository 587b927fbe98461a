using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class OpenHandoverTests
{
    private const string Rule = "OPEN-HANDOVER";

    [Fact]
    public void A_zone_that_waits_for_the_companions_proof_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.Handover(),
        occasions: 1);

    [Fact]
    public void A_trip_during_a_handover_is_lawful() => Verdict.IsKept(
        Rule,
        Scene.LoftRuns()
            .At(20_000).Call(Glaze).Valve(Glaze)
            .At(40_000).NoCall(Loft).Valve(Shop)
            .At(43_000).NoSwitch(Loft).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(44_000),
        occasions: 1);

    [Fact]
    public void The_end_of_demand_ends_a_handover() => Verdict.IsKept(
        Rule,
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).Valve(Shop)
            .At(43_000).NoCall(Glaze).NoHeat()
            .At(47_000).Switch(Shop)
            .At(63_000).NoPump()
            .At(68_000).NoValve(Kiln).NoValve(Glaze).NoValve(Shop)
            .At(70_000).NoSwitch(Shop)
            .End(80_000),
        occasions: 1);

    [Fact]
    public void A_release_with_the_call_breaks_it() => Verdict.IsBroken(
        Rule,
        40_000,
        "Kiln released after its call with proven capacity 1; a companion must first bring it to 2",
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).NoValve(Kiln).Valve(Shop)
            .At(40_100).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(41_000),
        "PUMP-ORDER");

    [Fact]
    public void A_release_a_scan_before_the_companions_proof_breaks_it() => Verdict.IsBroken(
        Rule,
        46_900,
        "Kiln released after its call",
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).Valve(Shop)
            .At(46_900).NoValve(Kiln)
            .At(47_000).Switch(Shop)
            .End(50_000),
        "PUMP-ORDER");

    [Fact]
    public void A_pump_that_stops_because_a_call_ended_breaks_it() => Verdict.IsBroken(
        Rule,
        40_000,
        "the pump stopped because the call of Kiln ended",
        Scene.KilnAndGlazeRun()
            .At(36_000).NoHeat()
            .At(40_000).NoCall(Kiln).Valve(Shop).NoPump().Hold(HoldReason.Proof)
            .End(41_000),
        "ANSWER-ON",
        "ANSWER-WHY");

    [Fact]
    public void A_pump_that_stops_during_a_handover_breaks_it() => Verdict.IsBroken(
        Rule,
        44_000,
        "the pump stopped because the call of Kiln ended",
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).NoHeat().Valve(Shop)
            .At(44_000).NoPump().Hold(HoldReason.Proof)
            .End(45_000),
        "ANSWER-ON",
        "ANSWER-WHY");

    [Fact]
    public void Two_zones_that_could_each_go_alone_may_not_go_one_after_the_other() => Verdict.IsBroken(
        Rule,
        41_000,
        "Kiln released after its call",
        Scene.KilnAndGlazeRun()
            .At(31_000).Call(Loft).Valve(Loft)
            .At(38_000).Switch(Loft)
            .At(40_000).NoCall(Kiln).NoCall(Loft).Valve(Shop)
            .At(40_100).NoValve(Loft)
            .At(41_000).NoValve(Kiln)
            .At(41_100).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(41_300),
        "PUMP-ORDER");

    [Fact]
    public void A_call_that_ends_as_the_last_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnDay());

    [Fact]
    public void A_call_that_ends_where_the_rest_suffices_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Glaze).NoValve(Glaze)
            .End(50_000));
}
