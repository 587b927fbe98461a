using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class BootSafeTests
{
    private const string Rule = "BOOT-SAFE";

    [Fact]
    public void Two_power_ups_with_everything_off_keep_it() => Verdict.IsKept(
        Rule,
        Scene.PowerCutWhileRunning(),
        occasions: 2);

    [Fact]
    public void A_valve_on_in_the_first_scan_breaks_it() => Verdict.IsBroken(
        Rule,
        0,
        "on in the first scan after power-up: the valve of Kiln",
        new TraceBuilder()
            .At(0).PowerUp().Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
            .End(5_000));

    [Fact]
    public void Pump_and_heat_on_in_the_first_scan_break_it() => Verdict.IsBroken(
        Rule,
        32_000,
        "on in the first scan after power-up: the pump, heat demand",
        Scene.KilnRuns()
            .At(30_000).PowerCut()
            .At(32_000).PowerUp().Pump().Heat()
            .At(32_100).NoPump().NoHeat().Valve(Kiln).Hold(HoldReason.Proof)
            .End(33_000),
        "PUMP-PROOF", "PUMP-DELAY");

    [Fact]
    public void Supply_back_without_a_power_up_scan_breaks_it() => Verdict.IsBroken(
        Rule,
        32_000,
        "supply came back without a power-up scan",
        Scene.KilnRuns()
            .At(30_000).PowerCut()
            .At(32_000).PowerBackWithoutMark().Valve(Kiln).Hold(HoldReason.Proof)
            .End(33_000));

    [Fact]
    public void A_start_by_proof_from_before_the_power_up_breaks_it() => Verdict.IsBroken(
        Rule,
        44_000,
        "by the proof that Loft had before the power-up",
        Scene.LoftRuns()
            .At(30_000).PowerCut()
            .At(31_000).NoSwitch(Loft)
            .At(32_000).PowerUp().Hold(HoldReason.Proof)
            .At(32_100).Valve(Loft)
            .At(44_000).Pump().Hold(HoldReason.None)
            .End(44_100),
        "PUMP-PROOF");

    [Fact]
    public void Obligations_of_a_stop_end_at_a_power_up() => Verdict.IsKept(
        Rule,
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(45_000).PowerUp()
            .End(60_000),
        occasions: 2);

    [Fact]
    public void A_trace_that_begins_in_the_middle_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        new TraceBuilder()
            .At(0)
            .End(10_000));
}
