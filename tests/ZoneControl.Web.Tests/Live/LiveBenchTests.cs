using CsCheck;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;
using ZoneControl.Web.Live;

namespace ZoneControl.Web.Tests.Live;

/// <summary>A bench that is worked by hand is a script in the making: replaying it gives what was seen.</summary>
public class LiveBenchTests
{
    private static readonly Gen<ScriptAction> _acts = Gen.OneOf<ScriptAction>(
        Gen.Select(Gen.Int[1, 15], Gen.Bool).Select(x => (ScriptAction)new CallChange(x.Item1, x.Item2)),
        Gen.Select(Gen.Int[0, 3], Gen.Bool).Select(x => (ScriptAction)new FaultChange(
            x.Item1, x.Item2 ? new ActuatorFault { Stuck = true } : new ActuatorFault { Slowness = 2 }, "")),
        Gen.Int[0, 3].Select(zone => (ScriptAction)new FaultChange(zone, ActuatorFault.None, "")),
        Gen.Bool.Select(broken => (ScriptAction)new FaultChange(
            0, new ActuatorFault { Switch = broken ? SwitchFault.AlwaysMade : SwitchFault.NeverMakes }, "")),
        Gen.Enum<PumpFault>().Select(fault => (ScriptAction)new PumpFaultChange(fault)),
        Gen.Bool.Select(on => (ScriptAction)new SeasonChange(on)),
        Gen.Bool.Select(on => (ScriptAction)new PowerChange(on)),
        Gen.Bool.Select(on => (ScriptAction)new ContactChange(ContactKind.Of(Contact.Supply), on)),
        Gen.Bool.Select(on => (ScriptAction)new ContactChange(ContactKind.Of(Contact.Priority), on)),
        Gen.Select(Gen.Int[0, 15], Gen.Bool).Select(x => (ScriptAction)new ServiceChange(x.Item1, x.Item2)));

    [Fact]
    public void What_a_hand_did_is_saved_read_and_run_to_the_same_frames_and_the_same_verdict()
    {
        House house = Examples.Toolworks;
        Script morning = Examples.Script("toolworks-end-switches", house);
        Gen.Select(_acts, Gen.Int[0, 400_000], Gen.Int[0, 3]).Array[1, 12].Sample(
            acts =>
            {
                var bench = new LiveBench(house, morning);
                foreach ((ScriptAction act, int waitMs, int back) in acts)
                {
                    if (back == 3)
                        bench.GoTo(bench.NowMs / 2);
                    bench.Do(act);
                    bench.AdvanceTo(bench.NowMs + waitMs);
                }

                Script recorded = bench.Recorded();
                ScriptReading reading = ScriptFile.Parse(ScriptWriter.Write(recorded, house), "saved.script.toml", house);
                Assert.Empty(reading.Mistakes);
                Run replayed = Runner.Run(house, reading.Script!, settings => new LibraryController(settings));

                Assert.Equal(bench.Guarded.Trace.Frames.Select(Plainly), replayed.Trace.Frames.Select(Plainly));
                Run direct = Runner.Run(house, recorded, settings => new LibraryController(settings));
                Assert.Equal(direct.Passed, replayed.Passed);
                Assert.Equal(Verdicts(direct), Verdicts(replayed));
            },
            iter: 60, threads: 1);
    }

    [Fact]
    public void Going_back_and_on_again_shows_the_same_as_going_there_at_once()
    {
        House house = Examples.Pottery;
        Script script = Examples.Script("pottery-first-cold-morning", house);
        var straight = new LiveBench(house, script, beside: true);
        straight.GoTo(2_000_000);
        var wandering = new LiveBench(house, script, beside: true);
        wandering.GoTo(3_000_000);
        wandering.GoTo(700_000);
        wandering.GoTo(2_000_000);

        Assert.Equal(straight.NowMs, wandering.NowMs);
        Assert.Equal(3_000_000, wandering.FurthestMs);
        Assert.Equal(Plainly(straight.Guarded.Shown), Plainly(wandering.Guarded.Shown));
        Assert.Equal(straight.Plain!.Plant.DeadheadS, wandering.Plain!.Plant.DeadheadS);
        Assert.True(straight.Plain.Plant.DeadheadS > 0);
    }

    [Fact]
    public void Both_houses_are_always_in_step()
    {
        var bench = new LiveBench(Examples.Pottery, null, beside: true);
        bench.Do(new CallChange(1, true));
        for (int i = 0; i < 40; i++)
        {
            bench.AdvanceToNext(3_600_000);
            Assert.Equal(bench.Guarded.NowMs, bench.Plain!.NowMs);
        }

        bench.AdvanceTo(bench.NowMs + 123_456, () => true);
        Assert.Equal(bench.Guarded.NowMs, bench.Plain!.NowMs);
    }

    [Fact]
    public void Switching_the_second_house_on_late_shows_it_as_if_it_had_been_there_all_along()
    {
        var late = new LiveBench(Examples.Pottery, null);
        var early = new LiveBench(Examples.Pottery, null, beside: true);
        foreach (LiveBench bench in (LiveBench[])[late, early])
        {
            bench.Do(new CallChange(0b100, true));
            bench.AdvanceTo(400_000);
        }

        late.Beside = true;

        Assert.Equal(early.Plain!.Plant.DeadheadS, late.Plain!.Plant.DeadheadS);
        Assert.True(late.Plain.Plant.DeadheadS > 0);
        Assert.Equal(Plainly(early.Plain.Shown), Plainly(late.Plain.Shown));
    }

    [Fact]
    public void An_act_after_going_back_gives_up_what_a_hand_did_later_but_not_what_the_script_plans()
    {
        House house = Examples.Pottery;
        Script script = Examples.Script("pottery-first-cold-morning", house);
        var bench = new LiveBench(house, script);
        bench.GoTo(500_000);
        bench.Do(new PowerChange(false));
        bench.GoTo(100_000);
        bench.Do(new CallChange(0b10, true));

        Assert.DoesNotContain(bench.Events, e => e.Action is PowerChange && e.AtMs > 400_000 && e.AtMs < 600_000 && !script.Events.Contains(e));
        Assert.Equal(script.Events.Count + 1, bench.Events.Count);
    }

    [Fact]
    public void A_script_that_nobody_touched_is_judged_whole_with_its_expectations()
    {
        House house = Examples.Pottery;
        Script script = Examples.Script("pottery-first-cold-morning", house);
        var bench = new LiveBench(house, script);
        bench.GoTo(long.MaxValue / 2);

        Assert.Equal(script.DurationMs, bench.NowMs);
        Assert.Same(script, bench.Recorded());
    }

    [Fact]
    public void Conditions_are_explained_in_the_order_of_the_reason_that_is_shown()
    {
        var bench = new LiveBench(Examples.Pottery, null);
        bench.Do(new CallChange(0b100000, true));
        bench.AdvanceTo(60_000);
        var pump = new ConditionList();
        Assert.True(bench.Guarded.Explain(pump, new ConditionList()));

        int first = Enumerable.Range(0, pump.Count).First(i => !pump.Met[i]);
        Assert.Equal(Condition.Proof, pump.Which[first]);
        Assert.Equal(HoldReason.Proof, bench.Guarded.Shown.Hold);
        Assert.True(pump.WaitMs[first] > 0);
    }

    private static Frame Plainly(Frame frame) => frame with { NextDeadlineMs = 0 };

    private static IEnumerable<(string, Judgement, long?)> Verdicts(Run run) =>
        run.Rules.Select(rule => (rule.Rule, rule.Judgement, rule.FirstMs));
}
