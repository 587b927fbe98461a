using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class AnswerOffTests
{
    private const string Rule = "ANSWER-OFF";

    [Fact]
    public void Everything_off_after_overrun_and_rundown_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void A_valve_that_stays_on_breaks_it() => Verdict.IsBroken(
        Rule,
        68_300,
        "nothing has asked for 28.3 s, and still on: Kiln",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(60_000).NoPump()
            .End(70_000),
        "OPEN-COMPANION");

    [Fact]
    public void A_pump_that_stays_on_breaks_it() => Verdict.IsBroken(
        Rule,
        68_300,
        "still on: the pump",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .End(70_000),
        "PUMP-OVERRUN");

    [Fact]
    public void Something_that_goes_on_again_later_breaks_it_at_once() => Verdict.IsBroken(
        Rule,
        80_000,
        "still on: Glaze",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(60_000).NoPump()
            .At(65_000).NoValve(Kiln)
            .At(80_000).Valve(Glaze)
            .At(80_100).NoValve(Glaze)
            .End(90_000),
        "OPEN-COMPANION");

    [Fact]
    public void Demand_that_stands_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnRuns()
            .End(60_000));
}
