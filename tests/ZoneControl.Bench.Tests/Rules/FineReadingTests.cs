using ZoneControl.Bench.Rules;
using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>Places where the rules' words leave room, and the reading that the monitors take.</summary>
public class FineReadingTests
{
    [Fact]
    public void A_proof_that_came_and_went_between_two_scans_does_not_begin_the_limit_afresh()
    {
        ControllerSettings house = Settings();
        house.OpeningMs[Loft] = 11_950;
        var trace = Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(2_000).Switch(Loft).Early(Loft)
            .At(13_000).NoSwitch(Loft)
            .At(16_000).Late(Loft).NoEarly(Loft).NoValve(Loft).Valve(Glaze).Valve(Shop)
            .End(20_000);
        Verdict.IsKept("VALVE-LATE", trace, 1, house);
    }

    [Fact]
    public void A_proof_that_stood_between_two_frames_does()
    {
        var trace = Scene.KilnRuns()
            .At(20_000).Call(Loft).Valve(Loft)
            .At(21_000).Switch(Loft).Early(Loft)
            .At(40_000).NoSwitch(Loft)
            .At(55_000).Late(Loft).NoEarly(Loft).NoValve(Loft)
            .End(60_000);
        Verdict.IsKept("VALVE-LATE", trace, 1);
    }

    [Fact]
    public void A_late_valve_that_proves_as_its_call_ends_has_all_its_retries_again()
    {
        var trace = Scene.LoftIsRetried()
            .At(28_000).Call(Kiln).Valve(Kiln)
            .At(38_000).NoValve(Glaze).NoValve(Shop)
            .At(38_500).Switch(Loft).NoLate(Loft).NoCall(Loft).NoValve(Loft)
            .At(40_000).NoSwitch(Shop)
            .At(46_000).NoSwitch(Loft)
            .At(50_000).Call(Loft).Valve(Loft)
            .At(65_000).Late(Loft).NoValve(Loft)
            .End(66_000);
        Verdict.IsKept("VALVE-LATE", trace, 2);
    }

    [Fact]
    public void A_switch_accepted_within_its_debounce_was_made_before_its_valve_was_energised()
    {
        var trace = Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(1_500).Switch(Loft)
            .End(3_000);
        RuleVerdict verdict = Verdict.All(trace, Debounced()).Single(v => v.Rule == "VALVE-EARLY");
        Assert.Equal(1_700, verdict.FirstMs);
        Assert.Contains("no alarm says so", verdict.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void One_accepted_a_scan_later_was_not()
    {
        var trace = Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(1_600).Switch(Loft).Hold(HoldReason.StartDelay)
            .End(3_000);
        Assert.Equal(
            Judgement.NotCalledUpon,
            Verdict.All(trace, Debounced()).Single(v => v.Rule == "VALVE-EARLY").Judgement);
    }

    [Fact]
    public void An_alarm_as_the_valve_is_energised_is_taken_at_its_word()
    {
        var trace = Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Early(Loft).Hold(HoldReason.Proof)
            .At(5_000).Switch(Loft)
            .At(13_000).Pump().Heat().Hold(HoldReason.None)
            .End(20_000);
        Verdict.IsKept("VALVE-EARLY", trace, 1, Debounced());
    }

    [Fact]
    public void Too_few_valves_are_no_reason_while_a_retained_zone_keeps_enough_proven()
    {
        ControllerSettings house = Settings();
        house.PumpStartDelayMs = 40_000;
        var trace = Scene.Quiet()
            .At(1_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
            .At(5_000).Call(Glaze).Call(Shop).Valve(Glaze).Valve(Shop)
            .At(11_000).Hold(HoldReason.StartDelay)
            .At(20_000).Late(Shop).NoValve(Shop)
            .At(22_000).NoCall(Kiln)
            .At(28_000).Valve(Shop)
            .End(30_000);
        Verdict.IsKept("ANSWER-WHY", trace, 1, house);
    }

    // No shortest time: only the debounce tells that a contact was made before.
    private static ControllerSettings Debounced()
    {
        ControllerSettings house = Settings();
        house.SwitchDebounceMs = 450;
        house.SwitchMinMs = new int[house.ZoneCount];
        return house;
    }
}
