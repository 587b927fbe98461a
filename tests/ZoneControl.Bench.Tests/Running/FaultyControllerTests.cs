using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Files;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Running;

/// <summary>
/// A controller broken on purpose fails the verdict of a whole run, and the rule that it breaks is named. The house is the
/// pottery; a day on which nothing goes wrong is passed by the whole controller.
/// </summary>
public class FaultyControllerTests
{
    private const int LivingRoom = 3;

    private static readonly House _pottery = HouseFile.Read(Path.Combine(ExampleTests.Folder(), "pottery.house.toml")).House!;

    public static TheoryData<string, string> Faults => new()
    {
        { nameof(PumpsBeforeProof), "PUMP-PROOF" },
        { nameof(ForgetsTheDelay), "PUMP-DELAY" },
        { nameof(ReleasesUnderway), "PUMP-ORDER" },
        { nameof(MissesLostProof), "PUMP-TRIP" },
        { nameof(CutsTheOverrun), "PUMP-OVERRUN" },
        { nameof(OpensNoCompanion), "OPEN-COMPANION" },
        { nameof(HandsNothingOver), "OPEN-HANDOVER" },
        { nameof(HidesLateValves), "VALVE-LATE" },
        { nameof(BelievesAnySwitch), "VALVE-EARLY" },
        { nameof(HeatsWithoutPump), "HEAT-FLOW" },
        { nameof(HeatsToTheEnd), "HEAT-FIRST-OFF" },
        { nameof(IgnoresLockout), "SEASON-LOCKOUT" },
        { nameof(WakesUpOpen), "BOOT-SAFE" },
        { nameof(NeverStarts), "ANSWER-ON" },
        { nameof(NeverStops), "ANSWER-OFF" },
        { nameof(GivesOneReasonForAll), "ANSWER-WHY" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void A_controller_broken_on_purpose_fails_and_the_rule_is_named(string fault, string rule)
    {
        Run whole = Play(fault, settings => new LibraryController(settings));
        Run broken = Play(fault, settings => Build(fault, settings));

        Assert.Empty(Broken(whole));
        Assert.False(broken.Passed);
        RuleVerdict verdict = broken.Rules.Single(v => v.Rule == rule);
        Assert.Equal(Judgement.Broken, verdict.Judgement);
        Assert.NotEqual("", verdict.Why);
        Assert.NotNull(verdict.FirstMs);
    }

    [Fact]
    public void Every_rule_of_the_book_is_broken_by_some_controller()
    {
        Assert.Equal(RuleBook.Rules.Select(rule => rule.Id).Order(), Faults.Select(row => row.Data.Item2).Order());
    }

    private static IEnumerable<string> Broken(Run run) =>
        run.Rules.Where(v => v.Judgement == Judgement.Broken).Select(v => $"{v.Rule} at {v.FirstMs} ms: {v.Why}");

    private static IController Build(string fault, ControllerSettings settings)
    {
        Type type = typeof(Tampered).Assembly.GetType($"{typeof(Tampered).Namespace}.{fault}", throwOnError: true)!;
        return (IController)Activator.CreateInstance(type, settings)!;
    }

    private static Run Play(string fault, Func<ControllerSettings, IController> build) =>
        Runner.Run(_pottery, Script(fault), build, cancel: TestContext.Current.CancellationToken);

    private static Script Script(string fault) => fault switch
    {
        nameof(MissesLostProof) => OneCall(new ScriptEvent(
            30 * 60_000, new FaultChange(LivingRoom, new ActuatorFault { Switch = SwitchFault.NeverMakes }, "the wire breaks"))),
        nameof(BelievesAnySwitch) => OneCall(new ScriptEvent(
            0, new FaultChange(LivingRoom, new ActuatorFault { Switch = SwitchFault.AlwaysMade }, "shorted"))),
        _ => ScriptFile.Read(Path.Combine(ExampleTests.Folder(), "pottery-first-cold-morning.script.toml"), _pottery).Script!,
    };

    /// <summary>The living room calls, alone enough for the pump, after three minutes, for an hour: no rest after power-up is in its way.</summary>
    private static Script OneCall(ScriptEvent fault) => new()
    {
        Title = "One call",
        DurationMs = 3_600_000,
        Conditions = new ScriptConditions(30, 18),
        Events = [.. new[] { fault, new ScriptEvent(180_000, new CallChange(1 << LivingRoom, true)) }.OrderBy(e => e.AtMs)],
    };
}
