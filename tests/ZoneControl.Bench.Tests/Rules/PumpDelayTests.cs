using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpDelayTests
{
    private const string Rule = "PUMP-DELAY";

    [Fact]
    public void A_start_exactly_at_the_delay_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void A_start_a_scan_too_soon_breaks_it() => Verdict.IsBroken(
        Rule,
        12_900,
        "11.9 s after demand rose; the start delay is 12 s",
        Scene.KilnOpens()
            .At(12_900).Pump().Heat().Hold(HoldReason.None)
            .End(20_000));

    [Fact]
    public void The_delay_counts_from_the_last_rise_of_demand() => Verdict.IsBroken(
        Rule,
        21_000,
        "9 s after demand rose",
        Scene.Quiet()
            .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(9_000).Switch(Loft).Hold(HoldReason.StartDelay)
            .At(10_000).NoCall(Loft).NoValve(Loft).Hold(HoldReason.None)
            .At(11_000).NoSwitch(Loft)
            .At(12_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
            .At(20_000).Switch(Loft).Hold(HoldReason.StartDelay)
            .At(21_000).Pump().Heat().Hold(HoldReason.None)
            .End(30_000));

    [Fact]
    public void A_second_call_does_not_begin_the_delay_afresh() => Verdict.IsKept(
        Rule,
        Scene.KilnOpens()
            .At(12_000).Call(Glaze).Valve(Glaze)
            .At(13_000).Pump().Heat().Hold(HoldReason.None)
            .End(20_000),
        occasions: 1);

    [Fact]
    public void A_restart_after_a_trip_has_its_delay_behind_it() => Verdict.IsKept(
        Rule,
        Scene.LoftTrips(),
        occasions: 2);

    [Fact]
    public void Demand_without_a_start_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnOpens()
            .End(12_000));

    [Fact]
    public void One_millisecond_too_soon_is_too_soon() => Verdict.IsBroken(
        Rule,
        12_999,
        "11.999 s after demand rose",
        Scene.KilnOpens()
            .At(12_999).Pump().Heat().Hold(HoldReason.None)
            .End(20_000));
}
