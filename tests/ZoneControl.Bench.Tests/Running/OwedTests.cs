using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Files;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Running;

/// <summary>What every run owes besides the rules: contacts published as wired, and no deadhead while nothing is broken.</summary>
public class OwedTests
{
    private const int LivingRoom = 3;
    private const int Minute = 60_000;

    private static readonly House _pottery = HouseFile.Read(Path.Combine(ExampleTests.Folder(), "pottery.house.toml")).House!;

    public static TheoryData<string, string> Liars => new()
    {
        { nameof(HearsNoCall), "thermostat of Living room" },
        { nameof(HearsCallsForEver), "thermostat of Living room" },
        { nameof(DreamsOfSwitches), "end switch of Living room" },
        { nameof(HoldsOnToSwitches), "end switch of Living room" },
        { nameof(AlwaysSaysSummer), "season contact" },
        { nameof(NeverSaysSummer), "season contact" },
        { nameof(RestartsEveryMinute), "restarted" },
        { nameof(HearsCallsTooSoon), "thermostat of Living room: a change was published before" },
        { nameof(BelievesSwitchesTooSoon), "end switch of Living room: a change was published before" },
        { nameof(ChangesSeasonTooSoon), "season contact: a change was published before" },
    };

    [Theory]
    [MemberData(nameof(Liars))]
    public void A_controller_that_publishes_what_the_wires_do_not_say_fails(string liar, string named)
    {
        Type type = typeof(OwedTests).GetNestedType(liar, System.Reflection.BindingFlags.NonPublic)!;
        Run run = Play(settings => (IController)Activator.CreateInstance(type, settings)!, AnHour());

        ExpectationVerdict owed = Assert.Single(run.Expectations, e => e.Text == "contacts published as wired");
        Assert.False(owed.Met);
        Assert.Contains(named, owed.Why, StringComparison.Ordinal);
        Assert.NotNull(owed.Ms);
        Assert.False(run.Passed);
    }

    [Fact]
    public void The_whole_controller_publishes_what_the_wires_say()
    {
        Run run = Play(settings => new LibraryController(settings), AnHour());

        Assert.DoesNotContain(run.Expectations, e => e.Text == "contacts published as wired");
        Assert.True(run.Passed);
    }

    [Fact]
    public void A_power_cut_shorter_than_a_scan_is_no_restart_at_will()
    {
        Run run = Play(
            settings => new LibraryController(settings),
            [.. AnHour(), new(50 * Minute + 10, new PowerChange(false)), new(50 * Minute + 20, new PowerChange(true))]);

        Assert.Equal(2, run.Trace.Frames.Count(frame => frame.PowerUp));
        Assert.DoesNotContain(run.Expectations, e => e.Text == "contacts published as wired");
    }

    [Theory]
    [InlineData(50, false)]
    [InlineData(0, true)]
    public void A_late_fault_does_not_excuse_the_deadhead_before_it(int faultMinute, bool met)
    {
        var stuck = new ScriptEvent(faultMinute * Minute, new FaultChange(0, new ActuatorFault { Stuck = true }, "sticks"));
        Run run = Play(settings => new StraightWiring(settings), [.. AnHour().Append(stuck).OrderBy(e => e.AtMs)]);

        Assert.True(run.Totals.DeadheadS > 0);
        Assert.Equal(met, run.Expectations.All(e => e.Met));
    }

    private static Run Play(Func<ControllerSettings, IController> build, IReadOnlyList<ScriptEvent> events) => Runner.Run(
        _pottery,
        new Script { Title = "An hour", DurationMs = 60 * Minute, Conditions = new ScriptConditions(30, 18), Events = events },
        build,
        cancel: TestContext.Current.CancellationToken);

    private static IReadOnlyList<ScriptEvent> AnHour() =>
    [
        new(Minute, new CallChange(1 << LivingRoom, true)),
        new(20 * Minute, new CallChange(1 << LivingRoom, false)),
        new(40 * Minute, new SeasonChange(true)),
    ];

    private sealed class HearsNoCall(ControllerSettings settings) : Tampered(settings)
    {
        protected override void Read(long nowMs, InputImage inputs) => inputs.Calls = 0;
    }

    private sealed class HearsCallsForEver(ControllerSettings settings) : Tampered(settings)
    {
        private int _calls;

        protected override void Read(long nowMs, InputImage inputs) => inputs.Calls = _calls |= inputs.Calls;
    }

    private sealed class HearsCallsTooSoon(ControllerSettings settings) :
        Tampered(ForgetsTheDelay.With(settings, s => s.CallDebounceMs -= s.ScanPeriodMs));

    private sealed class BelievesSwitchesTooSoon(ControllerSettings settings) :
        Tampered(ForgetsTheDelay.With(settings, s => s.SwitchDebounceMs -= s.ScanPeriodMs));

    private sealed class ChangesSeasonTooSoon(ControllerSettings settings) :
        Tampered(ForgetsTheDelay.With(settings, s => s.SeasonDebounceMs -= s.ScanPeriodMs));

    private sealed class DreamsOfSwitches(ControllerSettings settings) : Tampered(settings)
    {
        private long _sinceMs = long.MaxValue;

        protected override void Read(long nowMs, InputImage inputs) => inputs.EndSwitches |= nowMs > _sinceMs + Minute ? 1 << LivingRoom : 0;

        protected override void Decide(long nowMs, OutputImage outputs) =>
            _sinceMs = outputs.Valves == 0 ? long.MaxValue : Math.Min(_sinceMs, nowMs);
    }

    private sealed class HoldsOnToSwitches(ControllerSettings settings) : Tampered(settings)
    {
        private int _made;

        protected override void Read(long nowMs, InputImage inputs) => inputs.EndSwitches = _made |= inputs.EndSwitches;
    }

    private sealed class AlwaysSaysSummer(ControllerSettings settings) : Tampered(settings)
    {
        protected override void Read(long nowMs, InputImage inputs) => inputs.Lockout = true;
    }

    private sealed class NeverSaysSummer(ControllerSettings settings) : Tampered(settings)
    {
        protected override void Read(long nowMs, InputImage inputs) => inputs.Lockout = false;
    }

    private sealed class RestartsEveryMinute(ControllerSettings settings) : Tampered(settings)
    {
        private long _nextMs = Minute;

        protected override void Read(long nowMs, InputImage inputs)
        {
            if (nowMs < _nextMs)
                return;
            _nextMs = nowMs + Minute;
            PowerUp();
        }
    }
}
