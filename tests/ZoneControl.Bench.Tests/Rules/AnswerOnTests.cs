using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class AnswerOnTests
{
    private const string Rule = "ANSWER-ON";

    [Fact]
    public void A_pump_that_comes_on_in_time_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void A_pump_that_runs_for_a_call_and_no_heat_breaks_it() => Verdict.IsBroken(
        Rule,
        13_200,
        "the pump runs for a call, without an alarm, and heat is not asked for",
        Scene.KilnOpens()
            .At(13_000).Pump().Hold(HoldReason.None)
            .End(20_000));

    [Fact]
    public void Heat_that_is_let_go_while_a_call_asks_breaks_it() => Verdict.IsBroken(
        Rule,
        30_200,
        "the pump runs for a call, without an alarm, and heat is not asked for",
        Scene.KilnRuns()
            .At(30_000).NoHeat()
            .End(40_000));

    [Fact]
    public void Heat_that_waits_for_flow_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnOpens()
            .At(13_000).Pump().Hold(HoldReason.None)
            .At(14_500).On(Contact.Flow).Heat()
            .End(20_000),
        occasions: 1,
        With(s => (s.FittedContacts, s.FlowProofMs, s.FlowLossMs, s.PumpMinOffMs) = (s.FittedContacts | Contact.Flow, 3_000, 1_000, 100)));

    [Fact]
    public void An_alarm_stops_the_clock() => Verdict.IsKept(
        Rule,
        Scene.LoftIsLatched(),
        occasions: 1);

    [Fact]
    public void A_pump_that_never_comes_on_breaks_it() => Verdict.IsBroken(
        Rule,
        28_400,
        "demand has waited 27.4 s without an alarm",
        Scene.KilnOpens()
            .End(30_000),
        "ANSWER-WHY");

    [Fact]
    public void A_valve_let_go_again_and_again_breaks_it() => Verdict.IsBroken(
        Rule,
        28_400,
        "demand has waited 27.4 s without an alarm",
        Scene.Quiet()
            .At(1_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
            .At(10_000).NoValve(Kiln)
            .At(10_100).Valve(Kiln)
            .At(19_000).NoValve(Kiln)
            .At(19_100).Valve(Kiln)
            .At(28_000).NoValve(Kiln)
            .At(28_100).Valve(Kiln)
            .End(30_000));

    [Fact]
    public void After_a_trip_the_time_counts_afresh() => Verdict.IsBroken(
        Rule,
        57_400,
        "demand has waited 27.4 s",
        Scene.LoftRuns()
            .At(30_000).NoSwitch(Loft).NoPump().NoHeat().Hold(HoldReason.Proof)
            .At(44_000).Switch(Loft)
            .End(60_000),
        "ANSWER-WHY");

    [Fact]
    public void A_day_without_demand_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.Quiet()
            .End(60_000));

    [Fact]
    public void Lockout_is_no_demand() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.Quiet()
            .At(1_000).Lockout()
            .At(2_000).Call(Kiln).Hold(HoldReason.Lockout)
            .End(60_000));

    [Fact]
    public void So_it_does_after_a_proof_that_a_switch_took_back_with_the_pump_off() => Verdict.IsBroken(
        Rule,
        39_400,
        "demand has waited 27.4 s",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(9_000).Switch(Loft).Hold(HoldReason.StartDelay)
            .At(12_000).NoSwitch(Loft).Hold(HoldReason.Proof)
            .At(26_000).Switch(Loft)
            .End(40_000),
        "ANSWER-WHY");
}
