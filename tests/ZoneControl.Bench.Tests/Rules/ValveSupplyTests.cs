using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class ValveSupplyTests
{
    private const string Rule = "VALVE-SUPPLY";

    private static readonly ControllerSettings _house = With(s => s.FittedContacts |= Contact.Supply);

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
    public void A_house_whose_supply_nobody_senses_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Running() => Scene.Quiet().On(Contact.Supply)
        .At(1_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
        .At(11_000).Hold(HoldReason.StartDelay)
        .At(13_000).Pump().Heat().Hold(HoldReason.None);

    private static TraceBuilder Lost() => Running()
        .At(20_000).Off(Contact.Supply).Alarmed(Alarm.NoSupply).NoPump().NoHeat().Hold(HoldReason.Supply);
}
