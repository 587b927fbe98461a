using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class ValveSupplyTests
{
    private const string Rule = "VALVE-SUPPLY";

    private static readonly ControllerSettings _house = With(s => s.FittedContacts |= Contact.Supply);

    private static readonly ControllerSettings _slow =
        With(s => (s.FittedContacts, s.ContactDebounceMs[Contact.Place(Contact.Supply)]) = (s.FittedContacts | Contact.Supply, 300));

    [Fact]
    public void Lost_supply_releases_and_the_valves_open_anew() => Verdict.IsKept(
        Rule,
        Lost().NoValve(Kiln)
            .At(25_000).On(Contact.Supply).NoAlarm(Alarm.NoSupply).Valve(Kiln).Hold(HoldReason.Proof)
            .At(35_000).Pump().Heat().Hold(HoldReason.None)
            .End(40_000),
        occasions: 1,
        _house);

    [Fact]
    public void A_valve_that_stays_energised_breaks_it() => Verdict.IsBroken(
        Rule,
        20_200,
        "the actuators have no supply, and Kiln stay energised",
        Lost().End(21_000),
        _house);

    [Fact]
    public void A_valve_that_opens_without_supply_breaks_it() => Verdict.IsBroken(
        Rule,
        22_000,
        "Kiln opened though the actuators have no supply",
        Lost().NoValve(Kiln)
            .At(22_000).Valve(Kiln)
            .At(22_100).NoValve(Kiln)
            .End(23_000),
        _house);

    [Fact]
    public void A_pump_that_runs_on_breaks_it() => Verdict.IsBroken(
        Rule,
        20_200,
        "the pump runs on Kiln, Glaze, Shop and Loft, whose actuators have no supply",
        Running()
            .At(20_000).Off(Contact.Supply).Alarmed(Alarm.NoSupply).NoValve(Kiln)
            .End(20_300),
        _house,
        "PUMP-PROOF",
        "PUMP-TRIP");

    [Fact]
    public void Opening_time_from_before_the_loss_does_not_count() => Verdict.IsBroken(
        "PUMP-PROOF",
        31_000,
        "the pump went on with proven capacity 0",
        Lost().NoValve(Kiln)
            .At(25_000).On(Contact.Supply).NoAlarm(Alarm.NoSupply).Valve(Kiln).Hold(HoldReason.Proof)
            .At(31_000).Pump().Heat().Hold(HoldReason.None)
            .End(31_100),
        _house);

    [Fact]
    public void After_power_up_its_lack_is_told_when_a_closed_contact_could_have_been_accepted() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(300).Alarmed(Alarm.NoSupply)
            .At(2_000).On(Contact.Supply).NoAlarm(Alarm.NoSupply)
            .At(2_500).Off(Contact.Supply).Alarmed(Alarm.NoSupply)
            .End(3_000),
        occasions: 1,
        _slow);

    [Fact]
    public void An_alarm_before_that_breaks_it() => Verdict.IsBroken(
        Rule,
        200,
        "the alarm says that the actuators have no supply, and a closed contact could not have been accepted yet",
        Scene.Quiet()
            .At(200).Alarmed(Alarm.NoSupply)
            .End(1_000),
        _slow);

    [Fact]
    public void No_alarm_after_that_breaks_it() => Verdict.IsBroken(
        Rule,
        500,
        "the actuators have no supply, and no alarm says so",
        Scene.Quiet().End(1_000),
        _slow);

    [Fact]
    public void Once_accepted_a_lack_that_nobody_tells_breaks_it_without_more_ado() => Verdict.IsBroken(
        Rule,
        2_200,
        "the actuators have no supply, and no alarm says so",
        Scene.Quiet()
            .At(300).On(Contact.Supply)
            .At(2_000).Off(Contact.Supply)
            .End(3_000),
        _slow);

    [Fact]
    public void A_house_whose_supply_nobody_senses_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Running() => Scene.Quiet().On(Contact.Supply)
        .At(1_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
        .At(11_000).Hold(HoldReason.StartDelay)
        .At(13_000).Pump().Heat().Hold(HoldReason.None);

    private static TraceBuilder Lost() => Running()
        .At(20_000).Off(Contact.Supply).Alarmed(Alarm.NoSupply).NoPump().NoHeat().Hold(HoldReason.Supply);
}
