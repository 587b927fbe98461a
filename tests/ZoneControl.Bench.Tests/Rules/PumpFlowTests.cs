using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpFlowTests
{
    private const string Rule = "PUMP-FLOW";

    private static readonly ControllerSettings _house = With(s =>
    {
        s.FittedContacts |= Contact.Flow;
        (s.FlowProofMs, s.FlowLossMs, s.FlowRetries) = (10_000, 5_000, 1);
        s.PumpMinOffMs = 5_000;
    });

    [Fact]
    public void Flow_soon_after_the_start_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnOpens()
            .At(13_000).Pump().Hold(HoldReason.None)
            .At(14_000).On(Contact.Flow).Heat()
            .End(40_000),
        occasions: 1,
        _house);

    [Fact]
    public void A_trip_a_retry_and_a_latch_keep_it() => Verdict.IsKept(
        Rule,
        TrippedTwice()
            .At(38_000).NoPump().Alarmed(Alarm.FlowLatched).Hold(HoldReason.FlowLatched)
            .End(60_000),
        occasions: 4,
        _house);

    [Fact]
    public void A_lost_flow_trips_sooner_than_a_dry_start() => Verdict.IsKept(
        Rule,
        Scene.KilnOpens()
            .At(13_000).Pump().Hold(HoldReason.None)
            .At(14_000).On(Contact.Flow).Heat()
            .At(20_000).Off(Contact.Flow).NoHeat()
            .At(25_000).NoPump().Alarmed(Alarm.FlowTrip).Hold(HoldReason.Rest)
            .End(29_000),
        occasions: 2,
        _house);

    [Fact]
    public void A_dry_pump_that_runs_on_breaks_it() => Verdict.IsBroken(
        Rule,
        23_200,
        "the pump has run without flow for 10 s, and two scans later is still on",
        Scene.KilnOpens()
            .At(13_000).Pump().Hold(HoldReason.None)
            .End(24_000),
        _house);

    [Fact]
    public void A_lost_flow_unheeded_breaks_it() => Verdict.IsBroken(
        Rule,
        25_200,
        "the pump has run without flow for 5 s",
        Scene.KilnOpens()
            .At(13_000).Pump().Hold(HoldReason.None)
            .At(14_000).On(Contact.Flow).Heat()
            .At(20_000).Off(Contact.Flow).NoHeat()
            .End(26_000),
        _house);

    [Fact]
    public void A_trip_too_many_that_is_not_latched_breaks_it() => Verdict.IsBroken(
        Rule,
        38_200,
        "after 1 retries, and that is not latched",
        TrippedTwice()
            .At(38_000).NoPump().Hold(HoldReason.Rest)
            .End(40_000),
        _house);

    [Fact]
    public void A_latch_before_the_retries_are_used_up_breaks_it() => Verdict.IsBroken(
        Rule,
        23_200,
        "want of flow is latched after 1 of 1 retries",
        Scene.KilnOpens()
            .At(13_000).Pump().Hold(HoldReason.None)
            .At(23_000).NoPump().Alarmed(Alarm.FlowTrip | Alarm.FlowLatched).Hold(HoldReason.FlowLatched)
            .End(30_000),
        _house);

    [Fact]
    public void A_house_without_flow_switch_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder TrippedTwice() => Scene.KilnOpens()
        .At(13_000).Pump().Hold(HoldReason.None)
        .At(23_000).NoPump().Alarmed(Alarm.FlowTrip).Hold(HoldReason.Rest)
        .At(28_000).Pump().Hold(HoldReason.None);
}
