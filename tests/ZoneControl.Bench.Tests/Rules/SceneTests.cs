using ZoneControl.Bench.Rules;

namespace ZoneControl.Bench.Tests.Rules;

public class SceneTests
{
    public static TheoryData<string> Names =>
    [
        nameof(Scene.KilnDay), nameof(Scene.LoftDay), nameof(Scene.LoftTrips), nameof(Scene.GlazeRuns), nameof(Scene.Handover),
        nameof(Scene.LoftIsLatched), nameof(Scene.LoftIsEarly), nameof(Scene.LockoutWhileRunning),
        nameof(Scene.PowerCutWhileRunning),
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void Lawful_days_break_no_rule(string name)
    {
        var scene = (TraceBuilder)typeof(Scene).GetMethod(name)!.Invoke(null, null)!;
        Assert.Equal("", string.Join("; ", Verdict.All(scene).Where(v => v.Judgement == Judgement.Broken)));
    }
}
