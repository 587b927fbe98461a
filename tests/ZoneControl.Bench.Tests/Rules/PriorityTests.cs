using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PriorityTests
{
    private const string Rule = "PRIORITY";

    private static readonly ControllerSettings _house = With(s =>
    {
        s.FittedContacts |= Contact.Priority;
        s.PriorityMaxMs = 60_000;
    });

    [Fact]
    public void Heat_off_then_the_pump_then_the_valves_keeps_it() => Verdict.IsKept(
        Rule,
        Stopped()
            .At(50_000).Off(Contact.Priority).Valve(Kiln).Hold(HoldReason.Proof)
            .End(55_000),
        occasions: 1,
        _house);

    [Fact]
    public void Priority_that_lasts_too_long_is_ignored() => Verdict.IsKept(
        Rule,
        Stopped()
            .At(80_000).Alarmed(Alarm.PriorityLong).Valve(Kiln).Hold(HoldReason.Proof)
            .At(90_000).Hold(HoldReason.StartDelay)
            .At(92_000).Pump().Heat().Hold(HoldReason.None)
            .End(95_000),
        occasions: 1,
        _house);

    [Fact]
    public void An_overrun_breaks_it() => Verdict.IsBroken(
        Rule,
        23_200,
        "hot water has priority, and the pump is still on after the heat lead of 3 s",
        Scene.KilnRuns()
            .At(20_000).On(Contact.Priority).NoHeat()
            .At(24_000).NoPump().Hold(HoldReason.Priority)
            .At(29_000).NoValve(Kiln)
            .End(40_000),
        _house);

    [Fact]
    public void Heat_that_stays_on_breaks_it() => Verdict.IsBroken(
        Rule,
        20_200,
        "hot water has priority, and heat demand stays on",
        Scene.KilnRuns().At(20_000).On(Contact.Priority).At(20_300).NoHeat().End(21_000),
        _house,
        "HEAT-FLOW");

    [Fact]
    public void Priority_without_end_breaks_it() => Verdict.IsBroken(
        Rule,
        80_200,
        "priority has lasted for 60 s, and no alarm says so",
        Stopped().End(90_000),
        _house);

    [Fact]
    public void Priority_that_is_ignored_too_soon_breaks_it() => Verdict.IsBroken(
        Rule,
        70_000,
        "priority is ignored after 50 s of 60 s",
        Stopped().At(70_000).Alarmed(Alarm.PriorityLong).Valve(Kiln).Hold(HoldReason.Proof).End(71_000),
        _house);

    [Fact]
    public void Priority_that_is_alarmed_and_still_withholds_the_pump_breaks_it() => Verdict.IsBroken(
        Rule,
        80_000,
        "priority has lasted too long and is to be ignored, and the pump is still held for it",
        Stopped().At(80_000).Alarmed(Alarm.PriorityLong).End(81_000),
        _house,
        "ANSWER-WHY", "OPEN-COMPANION");

    [Fact]
    public void A_house_without_the_contact_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Stopped() => Scene.KilnRuns()
        .At(20_000).On(Contact.Priority).NoHeat()
        .At(23_000).NoPump().Hold(HoldReason.Priority)
        .At(28_000).NoValve(Kiln);
}
