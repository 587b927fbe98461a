using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class PumpOverrunTests
{
    private const string Rule = "PUMP-OVERRUN";

    [Fact]
    public void Overrun_stop_rundown_release_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.KilnDay(),
        occasions: 1);

    [Fact]
    public void Lockout_while_running_gets_its_overrun() => Verdict.IsKept(
        Rule,
        Scene.LockoutWhileRunning(),
        occasions: 1);

    [Fact]
    public void New_demand_ends_the_overrun_and_the_pump_runs_on() => Verdict.IsKept(
        Rule,
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(50_000).Call(Kiln).Heat()
            .End(70_000),
        occasions: 1);

    [Fact]
    public void A_trip_ends_the_overrun() => Verdict.IsKept(
        Rule,
        Scene.LoftRuns()
            .At(40_000).NoCall(Loft).NoHeat()
            .At(45_000).NoSwitch(Loft).NoPump()
            .At(50_000).NoValve(Loft)
            .End(70_000),
        occasions: 1);

    [Fact]
    public void A_stop_too_soon_breaks_it() => Verdict.IsBroken(
        Rule,
        59_900,
        "stopped 19.9 s after demand ended; its overrun is 20 s",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(59_900).NoPump()
            .At(64_900).NoValve(Kiln)
            .End(70_000));

    [Fact]
    public void A_stop_too_late_breaks_it_two_scans_after_the_overrun() => Verdict.IsBroken(
        Rule,
        60_200,
        "still on two scans after its overrun of 20 s",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(60_300).NoPump()
            .At(65_300).NoValve(Kiln)
            .End(70_000));

    [Fact]
    public void A_zone_proven_at_the_end_of_demand_stays_though_others_suffice() => Verdict.IsBroken(
        Rule,
        50_000,
        "Glaze released during the overrun",
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).NoCall(Glaze).NoHeat()
            .At(50_000).NoValve(Glaze)
            .At(60_000).NoPump()
            .At(65_000).NoValve(Kiln)
            .End(70_000));

    [Fact]
    public void It_stays_until_the_rundown_is_over_too() => Verdict.IsBroken(
        Rule,
        62_000,
        "Glaze released before the rundown was over",
        Scene.KilnAndGlazeRun()
            .At(40_000).NoCall(Kiln).NoCall(Glaze).NoHeat()
            .At(60_000).NoPump()
            .At(62_000).NoValve(Glaze)
            .At(65_000).NoValve(Kiln)
            .End(70_000));

    [Fact]
    public void An_overrun_never_starts_a_pump() => Verdict.IsBroken(
        Rule,
        62_000,
        "went on though nothing asks",
        Scene.KilnRuns()
            .At(40_000).NoCall(Kiln).NoHeat()
            .At(60_000).NoPump()
            .At(62_000).Pump()
            .At(63_000).NoPump()
            .At(68_000).NoValve(Kiln)
            .End(70_000));

    [Fact]
    public void A_run_whose_demand_stands_does_not_call_on_it() => Verdict.IsNotCalledUpon(
        Rule,
        Scene.KilnRuns()
            .End(40_000));
}
