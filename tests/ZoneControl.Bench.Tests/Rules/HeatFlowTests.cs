using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class HeatFlowTests
{
    private const string Rule = "HEAT-FLOW";

    [Fact]
    public void Heat_before_flow_breaks_it() => Verdict.IsBroken(
        Rule,
        13_000,
        "heat demand is on without flow",
        Scene.KilnRuns().End(13_100),
        With(s =>
        {
            s.FittedContacts |= Contact.Flow;
            (s.FlowProofMs, s.FlowLossMs) = (10_000, 5_000);
        }));

    [Fact]
    public void Heat_with_the_high_limit_open_breaks_it() => Verdict.IsBroken(
        Rule,
        20_000,
        "heat demand is on though the high limit is open",
        Scene.KilnRuns().At(20_000).On(Contact.Limit).Alarmed(Alarm.LimitLatched).End(20_100),
        With(s => s.FittedContacts |= Contact.Limit));

    [Fact]
    public void Heat_while_the_pump_runs_and_a_call_asks_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void Heat_before_the_pump_breaks_it() => Verdict.IsBroken(
        Rule,
        12_000,
        "heat demand is on while the pump is off",
        Scene.KilnOpens()
            .At(12_000).Heat()
            .End(12_900));

    [Fact]
    public void Heat_during_the_overrun_breaks_it() => Verdict.IsBroken(
        Rule,
        40_000,
        "though no call asks",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln)
            .At(40_100).NoHeat()
            .End(50_000));

    [Fact]
    public void Heat_for_a_latched_zone_breaks_it() => Verdict.IsBroken(
        Rule,
        39_000,
        "though no call asks",
        Scene.LoftIsRetried()
            .At(39_000).Latched(Loft).NoValve(Loft)
            .At(39_100).NoHeat()
            .End(40_000));

    [Fact]
    public void A_day_without_heat_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnOpens()
            .End(12_000));
}
