using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class SeasonLockoutTests
{
    private const string Rule = "SEASON-LOCKOUT";

    [Fact]
    public void Lockout_while_running_is_an_orderly_stop() => Verdict.IsKept(
        Rule,
        Scene.LockoutWhileRunning(),
        occasions: 1);

    [Fact]
    public void A_call_in_lockout_does_nothing() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(1_000).Lockout()
            .At(2_000).Call(Kiln).Hold(HoldReason.Lockout)
            .End(60_000),
        occasions: 1);

    [Fact]
    public void Each_summer_with_a_call_counts_once() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(1_000).Lockout()
            .At(2_000).Call(Kiln).Hold(HoldReason.Lockout)
            .At(3_000).NoCall(Kiln).Hold(HoldReason.None)
            .At(4_000).Call(Kiln).Hold(HoldReason.Lockout)
            .At(5_000).NoCall(Kiln).Hold(HoldReason.None)
            .At(6_000).NoLockout()
            .At(7_000).Lockout().Call(Kiln).Hold(HoldReason.Lockout)
            .End(60_000),
        occasions: 2);

    [Fact]
    public void A_valve_that_opens_in_lockout_breaks_it() => Verdict.IsBroken(
        Rule,
        2_000,
        "Kiln opened in lockout",
        Scene.Quiet()
            .At(1_000).Lockout()
            .At(2_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Lockout)
            .End(2_100),
        "OPEN-COMPANION");

    [Fact]
    public void A_start_in_lockout_breaks_it() => Verdict.IsBroken(
        Rule,
        12_100,
        "the pump was started in lockout",
        Scene.KilnOpens()
            .At(12_000).Lockout().Hold(HoldReason.Lockout)
            .At(12_100).Pump().Hold(HoldReason.None)
            .End(12_500),
        "PUMP-OVERRUN");

    [Fact]
    public void Heat_in_lockout_breaks_it_in_that_very_frame() => Verdict.IsBroken(
        Rule,
        40_000,
        "heat is asked for in lockout",
        Scene.KilnRuns()
            .At(40_000).Lockout()
            .At(40_100).NoHeat()
            .End(41_000),
        "HEAT-FLOW");

    [Fact]
    public void A_summer_without_calls_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.Quiet()
            .At(1_000).Lockout()
            .End(60_000));

    [Fact]
    public void A_winter_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnDay());
}
