using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

public class RuleBookTests
{
    [Fact]
    public void Every_verdict_comes_in_the_rule_books_order()
    {
        var verdicts = Verdict.All(Scene.KilnDay());
        Assert.Equal(RuleBook.Rules.Select(r => r.Id), verdicts.Select(v => v.Rule));
        Assert.Equal(30, verdicts.Select(v => v.Rule).Distinct().Count());
    }

    [Fact]
    public void A_trace_without_frames_calls_on_nothing()
    {
        var verdicts = Judge.Verdicts(Workshop.Settings(), new Trace([], [], 1_000), Workshop.NameOf);
        Assert.All(verdicts, v => Assert.Equal(Judgement.NotCalledUpon, v.Judgement));
    }

    [Fact]
    public void A_trace_that_ends_before_its_last_frame_is_refused_with_both_moments()
    {
        var trace = new TraceBuilder().At(500).PowerUp().Trace() with { EndMs = 400 };
        var mistake = Assert.Throws<ArgumentException>(
            () => Judge.Verdicts(Workshop.Settings(), trace, Workshop.NameOf));
        Assert.Contains("from 500 ms to 400 ms", mistake.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_season_between_two_frames_overflows_nothing()
    {
        const long Season = 210L * 24 * 3600 * 1000;
        var trace = Scene.KilnDay().At(Season).Call(Workshop.Kiln).Hold(HoldReason.Proof).End(Season + 1_000);
        Verdict.IsBroken("OPEN-COMPANION", Season + 200, "Kiln is not opened though it calls", trace);
    }

    [Fact]
    public void The_house_of_these_tests_is_lawful() => Assert.Null(SettingsCheck.FirstMistake(Workshop.Settings()));
}
