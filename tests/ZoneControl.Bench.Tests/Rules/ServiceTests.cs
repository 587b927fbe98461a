using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class ServiceTests
{
    private const string Rule = "SERVICE";

    private static readonly ControllerSettings _house = With(s =>
    {
        s.FittedContacts |= Contact.ServicePump;
        s.ServiceLimitMs = 60_000;
    });

    [Fact]
    public void What_a_hand_asks_for_and_no_more_keeps_it() => Verdict.IsKept(
        Rule,
        Pumped()
            .At(30_000).Off(Contact.ServicePump)
            .At(33_000).NoPump()
            .At(40_000).NoHand(Kiln).NoValve(Kiln)
            .End(60_000),
        occasions: 1,
        _house);

    [Fact]
    public void A_hand_that_governs_too_long_is_ignored() => Verdict.IsKept(
        Rule,
        Pumped()
            .At(61_000).Alarmed(Alarm.ServiceEnded).NoPump()
            .At(66_000).NoValve(Kiln)
            .At(70_000).NoHand(Kiln).Off(Contact.ServicePump).NoAlarm(Alarm.ServiceEnded)
            .End(80_000),
        occasions: 1,
        _house);

    [Fact]
    public void A_fault_of_the_clock_does_not_give_an_ignored_hand_its_power_back() => Verdict.IsKept(
        Rule,
        Pumped()
            .At(61_000).Alarmed(Alarm.ServiceEnded).NoPump()
            .At(66_000).NoValve(Kiln)
            .At(70_000)
            .At(70_100).Clock(-20_000).Alarmed(Alarm.TimeFault)
            .End(80_000),
        occasions: 1,
        _house);

    [Fact]
    public void Another_zone_breaks_it() => Verdict.IsBroken(
        Rule,
        12_000,
        "Glaze opened while a hand governs and does not ask for it",
        Pumped().At(12_000).Valve(Glaze).At(12_100).NoValve(Glaze).End(13_000),
        _house);

    [Fact]
    public void A_hand_that_is_not_heeded_breaks_it() => Verdict.IsBroken(
        Rule,
        1_200,
        "Kiln is not opened though a hand asks for it",
        Scene.Quiet().At(1_000).Hand(Kiln).End(3_000),
        _house);

    [Fact]
    public void A_pump_that_outlasts_the_hand_breaks_it() => Verdict.IsBroken(
        Rule,
        33_200,
        "no hand asks for the pump, and it is still on after the heat lead of 3 s",
        Pumped().At(30_000).Off(Contact.ServicePump).End(34_000),
        _house);

    [Fact]
    public void A_pump_that_starts_by_itself_breaks_it() => Verdict.IsBroken(
        Rule,
        11_000,
        "the pump was started while a hand governs and does not ask for it",
        Scene.Quiet().At(1_000).Hand(Kiln).Valve(Kiln).At(11_000).Pump().End(11_100),
        _house,
        "PUMP-OVERRUN");

    [Fact]
    public void A_hand_without_end_breaks_it() => Verdict.IsBroken(
        Rule,
        61_200,
        "a hand has governed for 60 s, and no alarm says so",
        Pumped().End(70_000),
        _house);

    [Fact]
    public void A_day_without_hands_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay(), _house);

    private static TraceBuilder Pumped() => Scene.Quiet()
        .At(1_000).Hand(Kiln).On(Contact.ServicePump).Valve(Kiln).Hold(HoldReason.Proof)
        .At(11_000).Pump().Hold(HoldReason.None);
}
