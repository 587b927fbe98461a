using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpOrderTests
{
    private const string Rule = "PUMP-ORDER";

    [Fact]
    public void Valves_that_wait_for_the_end_of_the_rundown_keep_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void A_release_that_leaves_enough_proven_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.Handover(),
        occasions: 1);

    [Fact]
    public void A_release_inside_the_rundown_breaks_it() => Verdict.IsBroken(
        Rule,
        64_900,
        "Kiln released while the pump runs down, leaving proven capacity 0 of the 2",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(60_000).NoPump()
            .At(64_900).NoValve(Kiln)
            .End(66_000),
        "PUMP-OVERRUN");

    [Fact]
    public void A_release_while_the_pump_runs_breaks_it() => Verdict.IsBroken(
        Rule,
        40_000,
        "Kiln released while the pump is on, leaving proven capacity 1 of the 2",
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).NoValve(Kiln).Valve(Shop)
            .At(40_100).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(41_000),
        "OPEN-HANDOVER");

    [Fact]
    public void A_release_in_the_rundown_after_a_trip_breaks_it_though_too_little_was_proven_already() => Verdict.IsBroken(
        Rule,
        32_000,
        "Glaze released while the pump runs down, leaving proven capacity 0",
        Scene.GlazeRuns()
            .At(30_000).NoSwitch(Shop).NoPump().NoHeat().Hold(HoldReason.Proof)
            .At(31_000).NoCall(Glaze).Hold(HoldReason.None)
            .At(32_000).NoValve(Glaze)
            .At(35_000).NoValve(Shop)
            .End(40_000));

    [Fact]
    public void A_release_without_a_run_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnOpens()
            .At(12_000).NoCall(Kiln).NoValve(Kiln).Hold(HoldReason.None)
            .End(20_000));
}
