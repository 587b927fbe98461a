using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class GateTests
{
    private const string Rule = "GATE";

    private static readonly ControllerSettings _house = With(s =>
    {
        s.GatedZones = 1 << Loft;
        s.SwitchedZones = 1 << Shop;
    });

    [Fact]
    public void A_sensed_valve_that_is_proven_runs_the_pump_and_its_loss_trips_it() => Verdict.IsKept(
        Rule,
        Sensed().At(30_000).NoSense(Loft).NoPump().NoHeat().End(60_000),
        occasions: 2,
        _house);

    [Fact]
    public void A_sense_of_less_than_the_opening_time_proves_nothing() => Verdict.IsBroken(
        Rule,
        13_000,
        "the pump runs on Loft, which the sense inputs do not prove: 0 of 2 proven",
        Sensed().End(13_100),
        With(s =>
        {
            (s.GatedZones, s.SwitchedZones) = (1 << Loft, 1 << Shop);
            s.OpeningMs[Loft] = 14_000;
        }),
        "PUMP-PROOF");

    [Fact]
    public void A_pump_that_outlasts_the_sense_breaks_it() => Verdict.IsBroken(
        Rule,
        30_200,
        "the pump runs on Loft",
        Sensed().At(30_000).NoSense(Loft).NoHeat().At(30_300).NoPump().End(31_000),
        _house,
        "PUMP-PROOF",
        "PUMP-TRIP");

    [Fact]
    public void A_gated_valve_that_is_driven_breaks_it() => Verdict.IsBroken(
        Rule,
        1_000,
        "an output drives Loft, which an existing panel drives",
        Scene.Quiet().At(1_000).Sense(Loft).Valve(Loft).Hold(HoldReason.Proof).End(1_100),
        _house,
        "OPEN-COMPANION");

    [Fact]
    public void A_house_without_gated_zones_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Sensed() => Scene.Quiet()
        .At(1_000).Sense(Loft).Hold(HoldReason.Proof)
        .At(13_000).Pump().Heat().Hold(HoldReason.None);
}
