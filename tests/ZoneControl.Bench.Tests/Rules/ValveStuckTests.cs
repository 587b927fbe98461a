using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class ValveStuckTests
{
    private const string Rule = "VALVE-STUCK";

    [Fact]
    public void A_switch_that_stays_made_and_is_told_keeps_it() => Verdict.IsKept(
        Rule,
        Released()
            .At(73_000).Stuck(Loft)
            .At(90_000).NoSwitch(Loft).NoStuck(Loft)
            .End(100_000),
        occasions: 1);

    [Fact]
    public void One_that_nobody_is_told_of_breaks_it() => Verdict.IsBroken(
        Rule,
        73_200,
        "the end switch of Loft stays made with its valve shut, and no alarm says so",
        Released().End(80_000));

    [Fact]
    public void An_alarm_before_the_closing_time_breaks_it() => Verdict.IsBroken(
        Rule,
        70_200,
        "the alarm says that the end switch of Loft is stuck, and it is not",
        Released().At(70_000).Stuck(Loft).End(72_000));

    [Fact]
    public void A_pump_that_relies_on_one_breaks_it() => Verdict.IsBroken(
        Rule,
        22_000,
        "the pump runs on the end switch of Loft",
        Scene.Quiet()
            .At(500).Switch(Loft)
            .At(8_000).Stuck(Loft)
            .At(10_000).Call(Loft).Valve(Loft).Early(Loft).Valve(Glaze).Valve(Shop).Hold(HoldReason.Proof)
            .At(22_000).Pump().Heat().Hold(HoldReason.None)
            .End(22_100),
        "PUMP-PROOF");

    [Fact]
    public void A_switch_that_opens_in_time_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.LoftDay());

    private static TraceBuilder Released() => Scene.LoftRuns()
        .At(40_000).NoCall(Loft).NoHeat()
        .At(60_000).NoPump()
        .At(65_000).NoValve(Loft);
}
