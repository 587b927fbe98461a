using ZoneControl.Bench.Rules;
using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>A house whose standing capacity is enough, or half of what is asked.</summary>
public class StandingCapacityTests
{
    [Fact]
    public void Standing_capacity_counts_towards_minimum_open()
    {
        // One always open and Glaze's one make two: no companion, and the pump may go on.
        var trace = Scene.Quiet()
            .At(1_000).Call(Glaze).Valve(Glaze).Hold(HoldReason.Proof)
            .At(11_000).Hold(HoldReason.StartDelay)
            .At(13_000).Pump().Heat().Hold(HoldReason.None)
            .End(20_000);
        Verdict.IsKept("PUMP-PROOF", trace, 1, With(standing: 1, delayMs: 12_000));
    }

    [Fact]
    public void Where_standing_capacity_suffices_no_companion_is_lawful()
    {
        var trace = Scene.Quiet().At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Hold(HoldReason.StartDelay).End(2_000);
        RuleVerdict verdict = Verdict.All(trace, With(standing: 2, delayMs: 12_000)).Single(v => v.Rule == "OPEN-COMPANION");
        Assert.Equal(1_000, verdict.FirstMs);
        Assert.Contains("Shop opened without a call", verdict.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void In_the_power_up_frame_no_reason_need_be_true_where_only_the_power_up_holds_the_pump()
    {
        var trace = new TraceBuilder()
            .At(0).PowerUp().Call(Glaze)
            .At(100).Valve(Glaze).Pump().Heat()
            .End(1_000);
        Verdict.IsKept("ANSWER-WHY", trace, 1, With(standing: 2, delayMs: 0));
    }

    [Fact]
    public void But_the_next_scan_must_start_the_pump()
    {
        var trace = new TraceBuilder()
            .At(0).PowerUp().Call(Glaze)
            .At(100).Valve(Glaze)
            .End(1_000);
        RuleVerdict verdict = Verdict.All(trace, With(standing: 2, delayMs: 0)).Single(v => v.Rule == "ANSWER-WHY");
        Assert.Equal(100, verdict.FirstMs);
    }

    private static ControllerSettings With(int standing, int delayMs)
    {
        ControllerSettings house = Settings();
        house.StandingCapacity = standing;
        house.PumpStartDelayMs = delayMs;
        return house;
    }
}
