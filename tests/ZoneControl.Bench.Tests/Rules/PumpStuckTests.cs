using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpStuckTests
{
    private const string Rule = "PUMP-STUCK";

    private static readonly ControllerSettings _house = With(s =>
    {
        s.FittedContacts |= Contact.Flow;
        (s.FlowProofMs, s.FlowLossMs) = (10_000, 5_000);
    });

    [Fact]
    public void Alarm_open_zones_and_a_quiet_rundown_keep_it() => Verdict.IsKept(
        Rule,
        Flows()
            .At(35_000).NoAlarm(Alarm.PumpStuck).NoValve(Glaze).NoValve(Shop)
            .At(37_000).NoSwitch(Shop)
            .End(60_000),
        occasions: 1,
        _house);

    [Fact]
    public void Flow_that_nobody_is_told_of_breaks_it() => Verdict.IsBroken(
        Rule,
        10_200,
        "flow is seen with the pump off for its rundown, and no alarm says so",
        Scene.Quiet().At(10_000).On(Contact.Flow).End(11_000),
        _house);

    [Fact]
    public void Zones_left_shut_break_it() => Verdict.IsBroken(
        Rule,
        10_200,
        "Glaze is not opened though water moves",
        Scene.Quiet().At(10_000).On(Contact.Flow).Alarmed(Alarm.PumpStuck).End(11_000),
        _house);

    [Fact]
    public void An_alarm_that_ends_before_the_quiet_rundown_breaks_it() => Verdict.IsBroken(
        Rule,
        34_200,
        "no alarm says so",
        Flows()
            .At(34_000).NoAlarm(Alarm.PumpStuck).NoValve(Glaze).NoValve(Shop)
            .End(34_900),
        _house);

    [Fact]
    public void A_start_meanwhile_breaks_it() => Verdict.IsBroken(
        Rule,
        24_000,
        "the pump was started while flow without it is unexplained",
        Scene.Quiet()
            .At(10_000).Call(Kiln).On(Contact.Flow).Alarmed(Alarm.PumpStuck).Valve(Kiln).Hold(HoldReason.PumpStuck)
            .At(24_000).Pump().Hold(HoldReason.None).NoAlarm(Alarm.PumpStuck)
            .End(24_100),
        _house);

    [Fact]
    public void A_house_without_flow_switch_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Flows() => Scene.Quiet()
        .At(10_000).On(Contact.Flow).Alarmed(Alarm.PumpStuck).Valve(Glaze).Valve(Shop)
        .At(18_000).Switch(Shop)
        .At(30_000).Off(Contact.Flow);
}
