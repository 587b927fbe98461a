using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpTripTests
{
    private const string Rule = "PUMP-TRIP";

    [Fact]
    public void A_stop_in_the_same_scan_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.LoftTrips(),
        occasions: 1);

    [Fact]
    public void A_stop_two_scans_later_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.LoftRuns()
            .At(30_000).NoSwitch(Loft)
            .At(30_200).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(31_000),
        occasions: 1);

    [Fact]
    public void A_stop_later_than_that_breaks_it() => Verdict.IsBroken(
        Rule,
        30_200,
        "fell to 0 of 2, and two scans later the pump is still on",
        Scene.LoftRuns()
            .At(30_000).NoSwitch(Loft)
            .At(30_300).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(31_000),
        "PUMP-PROOF");

    [Fact]
    public void Heat_demand_left_on_breaks_it() => Verdict.IsBroken(
        Rule,
        30_200,
        "heat demand is still on",
        Scene.LoftRuns()
            .At(30_000).NoSwitch(Loft).NoPump().Hold(HoldReason.Proof)
            .At(31_000).NoHeat()
            .End(32_000),
        "HEAT-FLOW");

    [Fact]
    public void A_run_that_loses_no_proof_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnDay());
}
