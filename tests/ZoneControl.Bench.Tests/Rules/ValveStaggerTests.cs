using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class ValveStaggerTests
{
    private const string Rule = "VALVE-STAGGER";

    private static readonly ControllerSettings _house = With(s =>
    {
        s.TransformerDeciVa = 160;
        s.HoldDeciVa = [20, 20, 20, 20];
        s.InrushDeciVa = [100, 100, 100, 100];
        s.InrushMs = [5_000, 5_000, 5_000, 5_000];
    });

    [Fact]
    public void One_valve_after_the_other_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Hold(HoldReason.Proof)
            .At(6_000).Valve(Shop)
            .At(13_000).Switch(Shop).Pump().Heat().Hold(HoldReason.None)
            .End(20_000),
        occasions: 2,
        _house);

    [Fact]
    public void Two_at_once_break_it() => Verdict.IsBroken(
        Rule,
        1_000,
        "with Glaze and Shop opened the valves draw 20 VA; the transformer gives 16 VA",
        Scene.GlazeRuns().End(20_000),
        _house);

    [Fact]
    public void A_second_within_the_inrush_of_the_first_breaks_it() => Verdict.IsBroken(
        Rule,
        5_900,
        "with Shop opened the valves draw 20 VA",
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Hold(HoldReason.Proof)
            .At(5_900).Valve(Shop)
            .End(8_000),
        _house);

    [Fact]
    public void A_valve_for_which_there_is_room_again_is_opened() => Verdict.IsBroken(
        "OPEN-COMPANION",
        6_200,
        "Shop is not opened",
        Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Hold(HoldReason.Proof)
            .End(8_000),
        _house);

    [Fact]
    public void A_house_whose_transformer_nobody_knows_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());
}
