using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class SeasonExerciseTests
{
    private const string Rule = "SEASON-EXERCISE";

    private static readonly ControllerSettings _house = With(s =>
    {
        (s.ExerciseIntervalS, s.ExerciseRetryS) = (60, 60);
        (s.ExerciseRunMs, s.ExerciseLimitMs) = (10_000, 60_000);
    });

    [Fact]
    public void A_run_of_all_zones_without_heat_keeps_it() => Verdict.IsKept(
        Rule,
        Exercised()
            .At(102_000).NoPump()
            .At(107_000).NoValves()
            .At(109_000).NoSwitch(Shop).NoSwitch(Loft)
            .End(150_000),
        occasions: 1,
        _house);

    [Fact]
    public void One_that_is_put_off_and_reported_keeps_it() => Verdict.IsKept(
        Rule,
        Scene.Quiet().At(60_000).Alarmed(Alarm.ExercisePutOff).End(120_000),
        occasions: 1,
        _house);

    [Fact]
    public void None_after_the_interval_breaks_it() => Verdict.IsBroken(
        Rule,
        60_200,
        "the pump has not run for 60 s, and there is neither an exercise nor an alarm",
        Scene.Quiet().End(70_000),
        _house);

    [Fact]
    public void One_that_is_put_off_for_ever_breaks_it() => Verdict.IsBroken(
        Rule,
        120_200,
        "a put-off exercise has not come within 60 s",
        Scene.Quiet().At(60_000).Alarmed(Alarm.ExercisePutOff).End(130_000),
        _house);

    [Fact]
    public void A_run_cut_short_breaks_it() => Verdict.IsBroken(
        Rule,
        75_000,
        "the exercise ran the pump for 3 s of 10 s and was not reported as put off",
        Exercised()
            .At(75_000).NoPump()
            .At(80_000).NoValves()
            .At(82_000).NoSwitch(Shop).NoSwitch(Loft)
            .End(90_000),
        _house);

    [Fact]
    public void Heat_in_it_breaks_it() => Verdict.IsBroken(
        Rule,
        73_000,
        "heat is asked for in an exercise",
        Exercised().At(73_000).Heat().End(74_000),
        _house,
        "HEAT-FLOW");

    [Fact]
    public void One_without_end_breaks_it() => Verdict.IsBroken(
        Rule,
        143_200,
        "an exercise has lasted for 83.2 s",
        Exercised().End(150_000),
        _house);

    [Fact]
    public void One_too_soon_is_none() => Verdict.IsBroken(
        "OPEN-COMPANION",
        50_000,
        "opened without a call",
        Scene.Quiet().At(50_000).AllValves().At(50_100).NoValves().End(51_000),
        _house,
        "ANSWER-OFF");

    [Fact]
    public void A_house_without_exercises_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Exercised() => Scene.Quiet()
        .At(60_000).AllValves().Hold(HoldReason.Proof)
        .At(68_000).Switch(Shop).Switch(Loft).Hold(HoldReason.StartDelay)
        .At(72_000).Pump().Hold(HoldReason.None);
}
