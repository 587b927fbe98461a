using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Files;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Running;

/// <summary>
/// A controller broken on purpose fails the verdict of a whole run, and the rule that it breaks is named. The houses and
/// days are the examples'; the whole controller breaks no rule on any of them.
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
        { nameof(NeverAsksForHeat), "ANSWER-ON" },
        { nameof(NeverStops), "ANSWER-OFF" },
        { nameof(GivesOneReasonForAll), "ANSWER-WHY" },
        { nameof(NeverRests), "PUMP-REST" },
        { nameof(NeedsNoFlow), "PUMP-FLOW" },
        { nameof(HidesStrayFlow), "PUMP-STUCK" },
        { nameof(OverloadsTheTransformer), "VALVE-STAGGER" },
        { nameof(HidesStuckSwitches), "VALVE-STUCK" },
        { nameof(IgnoresTheSupply), "VALVE-SUPPLY" },
        { nameof(IgnoresTheLimit), "HEAT-LIMIT" },
        { nameof(NeverExercises), "SEASON-EXERCISE" },
        { nameof(IgnoresFrost), "FREEZE" },
        { nameof(IgnoresPriority), "PRIORITY" },
        { nameof(ResetsItself), "ALARM-LATCH" },
        { nameof(TrustsAnyClock), "TIME-FAULT" },
        { nameof(ServesForEver), "SERVICE" },
        { nameof(TrustsTheGate), "GATE" },
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
        Assert.Equal(RuleBook.Rules.Select(rule => rule.Id).Order(), Faults.Select(row => row.Data.Item2).Distinct().Order());
    }

    private static IEnumerable<string> Broken(Run run) =>
        run.Rules.Where(v => v.Judgement == Judgement.Broken).Select(v => $"{v.Rule} at {v.FirstMs} ms: {v.Why}");

    private static IController Build(string fault, ControllerSettings settings)
    {
        Type type = typeof(Tampered).Assembly.GetType($"{typeof(Tampered).Namespace}.{fault}", throwOnError: true)!;
        return (IController)Activator.CreateInstance(type, settings)!;
    }

    private static Run Play(string fault, Func<ControllerSettings, IController> build)
    {
        (House house, Script script) = Scene(fault);
        return Runner.Run(house, script, build, cancel: TestContext.Current.CancellationToken);
    }

    private static (House House, Script Script) Scene(string fault) => fault switch
    {
        nameof(MissesLostProof) => (_pottery, OneCall(new ScriptEvent(
            30 * 60_000, new FaultChange(LivingRoom, new ActuatorFault { Switch = SwitchFault.NeverMakes }, "the wire breaks")))),
        nameof(BelievesAnySwitch) => (_pottery, OneCall(new ScriptEvent(
            0, new FaultChange(LivingRoom, new ActuatorFault { Switch = SwitchFault.AlwaysMade }, "shorted")))),
        nameof(NeverRests) or nameof(NeedsNoFlow) => Example("toolworks", "no-flow"),
        nameof(HidesStrayFlow) => Example("toolworks", "runs-on"),
        nameof(OverloadsTheTransformer) or nameof(IgnoresTheSupply) => Example("toolworks", "supply"),
        nameof(HidesStuckSwitches) => Example("toolworks", "end-switches"),
        nameof(IgnoresTheLimit) or nameof(ResetsItself) => Example("toolworks", "high-limit"),
        nameof(NeverExercises) or nameof(IgnoresFrost) => Example("toolworks", "summer"),
        nameof(IgnoresPriority) => Example("toolworks", "hot-water"),
        nameof(TrustsAnyClock) => Example("toolworks", "clock"),
        nameof(ServesForEver) => Example("toolworks", "by-hand"),
        nameof(TrustsTheGate) => Example("retrofit", "evening"),
        _ => Example("pottery", "first-cold-morning"),
    };

    private static (House House, Script Script) Example(string house, string script)
    {
        House read = HouseFile.Read(Path.Combine(ExampleTests.Folder(), house + ".house.toml")).House!;
        return (read, ScriptFile.Read(Path.Combine(ExampleTests.Folder(), $"{house}-{script}.script.toml"), read).Script!);
    }

    /// <summary>The living room calls, alone enough for the pump, after three minutes, for an hour: no rest after power-up is in its way.</summary>
    private static Script OneCall(ScriptEvent fault) => new()
    {
        Title = "One call",
        DurationMs = 3_600_000,
        Conditions = new ScriptConditions(30, 18),
        Events = [.. new[] { fault, new ScriptEvent(180_000, new CallChange(1 << LivingRoom, true)) }.OrderBy(e => e.AtMs)],
    };
}
