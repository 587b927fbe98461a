using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class AlarmLatchTests
{
    private const string Rule = "ALARM-LATCH";

    private static readonly ControllerSettings _house = With(s => s.FittedContacts |= Contact.Limit | Contact.Reset);

    [Fact]
    public void A_held_button_resets_nothing() => Verdict.IsBroken(
        Rule,
        40_000,
        "the latched alarm of the high limit is gone without a reset",
        Scene.KilnRuns()
            .At(15_000).On(Contact.Reset)
            .At(20_000).On(Contact.Limit).NoPump().NoHeat().Alarmed(Alarm.LimitLatched).Hold(HoldReason.Limit)
            .At(30_000).Off(Contact.Limit)
            .At(40_000).NoAlarm(Alarm.LimitLatched).Hold(HoldReason.None).Pump().Heat()
            .End(40_100),
        _house,
        "HEAT-LIMIT");

    [Fact]
    public void A_pump_that_goes_on_in_the_scan_of_the_reset_breaks_it() => Verdict.IsBroken(
        Rule,
        40_000,
        "something goes on in the scan of a reset",
        Limited().At(40_000).On(Contact.Reset).NoAlarm(Alarm.LimitLatched).Pump().Heat().Hold(HoldReason.None).End(40_100),
        _house,
        "PUMP-DELAY");

    [Fact]
    public void A_start_before_the_delay_from_the_reset_breaks_it() => Verdict.IsBroken(
        Rule,
        51_000,
        "the pump went on 11 s after a reset; the start delay is 12 s",
        Limited()
            .At(40_000).On(Contact.Reset).NoAlarm(Alarm.LimitLatched).Hold(HoldReason.StartDelay)
            .At(51_000).Pump().Heat().Hold(HoldReason.None)
            .End(52_000),
        _house,
        "PUMP-DELAY");

    [Fact]
    public void A_latch_that_outlives_the_reset_breaks_it() => Verdict.IsBroken(
        Rule,
        40_000,
        "the latched alarm of the high limit stands after a reset",
        Limited().At(40_000).On(Contact.Reset).End(40_100),
        _house);

    [Fact]
    public void A_limit_that_is_still_open_stays_latched() => Verdict.IsKept(
        Rule,
        Scene.KilnRuns()
            .At(20_000).On(Contact.Limit).NoPump().NoHeat().Alarmed(Alarm.LimitLatched).Hold(HoldReason.Limit)
            .At(40_000).On(Contact.Reset)
            .End(50_000),
        occasions: 2,
        _house);

    [Fact]
    public void A_valve_latched_and_reset_is_tried_again() => Verdict.IsKept(
        Rule,
        Scene.LoftIsLatched()
            .At(130_000).On(Contact.Reset).NoLatched(Loft).NoLate(Loft).Hold(HoldReason.Proof)
            .At(130_100).Valve(Loft)
            .End(140_000),
        occasions: 2,
        _house);

    [Fact]
    public void A_day_without_latches_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay(), _house);

    private static TraceBuilder Limited() => Scene.KilnRuns()
        .At(20_000).On(Contact.Limit).NoPump().NoHeat().Alarmed(Alarm.LimitLatched).Hold(HoldReason.Limit)
        .At(30_000).Off(Contact.Limit);
}
