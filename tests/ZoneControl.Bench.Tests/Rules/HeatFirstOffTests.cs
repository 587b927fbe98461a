using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class HeatFirstOffTests
{
    private const string Rule = "HEAT-FIRST-OFF";

    [Fact]
    public void Heat_off_at_the_start_of_the_overrun_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void Heat_off_with_the_pump_breaks_it() => Verdict.IsBroken(
        Rule,
        30_000,
        "stopped 0 s after heat demand went off; it must be at least 3 s",
        Scene.KilnRuns()
            .At(30_000).NoPump().NoHeat().Hold(HoldReason.Proof)
            .End(31_000),
        "ANSWER-WHY");

    [Fact]
    public void Heat_off_too_shortly_before_the_pump_breaks_it() => Verdict.IsBroken(
        Rule,
        60_000,
        "stopped 2.9 s after",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln)
            .At(57_100).NoHeat()
            .At(60_000).NoPump()
            .At(65_000).NoValve(Kiln)
            .End(70_000),
        "HEAT-FLOW");

    [Fact]
    public void Heat_left_on_breaks_it() => Verdict.IsBroken(
        Rule,
        60_000,
        "with heat demand still on",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln)
            .At(60_000).NoPump()
            .At(61_000).NoHeat()
            .At(65_000).NoValve(Kiln)
            .End(70_000),
        "HEAT-FLOW");

    [Fact]
    public void A_trip_is_no_orderly_stop() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.LoftTrips());

    [Fact]
    public void A_power_cut_is_no_orderly_stop() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.PowerCutWhileRunning());
}
