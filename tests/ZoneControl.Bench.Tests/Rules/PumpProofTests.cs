using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpProofTests
{
    private const string Rule = "PUMP-PROOF";

    [Fact]
    public void A_start_after_proof_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void A_start_without_proof_breaks_it_at_once() => Verdict.IsBroken(
        Rule,
        14_000,
        "went on with proven capacity 0; 2 must",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(14_000).Pump().Heat().Hold(HoldReason.None)
            .End(15_000));

    [Fact]
    public void Half_of_minimum_open_is_not_enough() => Verdict.IsBroken(
        Rule,
        13_000,
        "went on with proven capacity 1; 2 must",
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Hold(HoldReason.Proof)
            .At(13_000).Pump().Heat().Hold(HoldReason.None)
            .End(13_100));

    [Fact]
    public void Running_on_after_a_lost_proof_breaks_it_two_scans_later() => Verdict.IsBroken(
        Rule,
        30_200,
        "stays on with proven capacity 0",
        Scene.LoftRuns()
            .At(30_000).NoSwitch(Loft)
            .End(30_201),
        "PUMP-TRIP");

    [Fact]
    public void A_stop_two_scans_after_a_lost_proof_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.LoftRuns()
            .At(30_000).NoSwitch(Loft)
            .At(30_200).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(31_000),
        occasions: 1);

    [Fact]
    public void A_pump_that_never_runs_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnOpens()
            .End(12_000));
}
