using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class HeatLimitTests
{
    private const string Rule = "HEAT-LIMIT";

    private static readonly ControllerSettings _house = With(s => s.FittedContacts |= Contact.Limit | Contact.Reset);

    [Fact]
    public void Off_latched_reset_and_on_again_keeps_it() => Verdict.IsKept(Rule, Reset(), occasions: 1, _house);

    [Fact]
    public void A_latch_that_is_reset_keeps_the_rule_of_latches_too() => Verdict.IsKept("ALARM-LATCH", Reset(), occasions: 2, _house);

    [Fact]
    public void A_pump_on_for_more_than_two_scans_breaks_it() => Verdict.IsBroken(
        Rule,
        20_200,
        "the high limit has tripped, and two scans later the pump is still on",
        Scene.KilnRuns()
            .At(20_000).On(Contact.Limit).NoHeat().Alarmed(Alarm.LimitLatched)
            .At(20_300).NoPump().Hold(HoldReason.Limit)
            .End(21_000),
        _house);

    [Fact]
    public void A_limit_that_is_forgotten_when_it_closes_breaks_it() => Verdict.IsBroken(
        Rule,
        30_000,
        "the pump was started though the high limit has tripped and nobody has reset it",
        Scene.KilnRuns()
            .At(20_000).On(Contact.Limit).NoPump().NoHeat().Alarmed(Alarm.LimitLatched).Hold(HoldReason.Limit)
            .At(30_000).Off(Contact.Limit).NoAlarm(Alarm.LimitLatched).Pump().Heat().Hold(HoldReason.None)
            .End(30_300),
        _house,
        "ALARM-LATCH");

    [Fact]
    public void A_house_without_limit_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Reset() => Scene.KilnRuns()
        .At(20_000).On(Contact.Limit).NoPump().NoHeat().Alarmed(Alarm.LimitLatched).Hold(HoldReason.Limit)
        .At(30_000).Off(Contact.Limit)
        .At(40_000).On(Contact.Reset).NoAlarm(Alarm.LimitLatched).Hold(HoldReason.StartDelay)
        .At(40_500).Off(Contact.Reset)
        .At(52_000).Pump().Heat().Hold(HoldReason.None)
        .End(60_000);
}
