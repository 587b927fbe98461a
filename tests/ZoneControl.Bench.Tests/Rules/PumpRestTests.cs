using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpRestTests
{
    private const string Rule = "PUMP-REST";

    private static readonly ControllerSettings _house = With(s => (s.PumpMinOffMs, s.PumpStartIntervalMs) = (30_000, 60_000));

    [Fact]
    public void A_start_after_both_rests_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(50_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
            .At(60_000).Hold(HoldReason.StartDelay)
            .At(62_000).Pump().Heat().Hold(HoldReason.None)
            .End(70_000),
        occasions: 1,
        _house);

    [Fact]
    public void Power_up_counts_as_a_stop() => Verdict.IsBroken(
        Rule,
        13_000,
        "the pump went on 13 s after its last stop; it rests 30 s",
        Scene.KilnRuns().End(20_000),
        _house);

    [Fact]
    public void Power_up_counts_as_a_start_too() => Verdict.IsBroken(
        Rule,
        13_000,
        "the pump went on 13 s after its last start; starts come 60 s apart",
        Scene.KilnRuns().End(20_000),
        With(s => s.PumpStartIntervalMs = 60_000));

    [Fact]
    public void A_restart_too_soon_after_the_last_start_breaks_it() => Verdict.IsBroken(
        Rule,
        25_000,
        "the pump went on 12 s after its last start; starts come 13 s apart",
        Scene.LoftRuns()
            .At(20_000).NoSwitch(Loft).NoPump().NoHeat().Hold(HoldReason.Proof)
            .At(21_000).Switch(Loft).Hold(HoldReason.Rest)
            .At(25_000).Pump().Heat().Hold(HoldReason.None)
            .End(39_000),
        With(s => s.PumpStartIntervalMs = 13_000));

    [Fact]
    public void A_house_without_rests_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());
}
