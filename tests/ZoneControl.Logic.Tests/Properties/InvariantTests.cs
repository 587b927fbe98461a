using System.Collections.Concurrent;
using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>Every rule, judged in every scan of random runs, from contacts and outputs alone.</summary>
public class InvariantTests
{
    [Fact]
    public void No_rule_is_broken_in_random_runs() =>
        RandomRun.Any.Sample(run => Verdict.IsClean(FirstBroken(run, (_, _) => { })), iter: 5000, print: run => run.ToString());

    [Theory]
    [InlineData("PUMP-PROOF")]
    [InlineData("PUMP-DELAY")]
    [InlineData("PUMP-REST")]
    [InlineData("PUMP-FLOW")]
    [InlineData("PUMP-STUCK")]
    [InlineData("PUMP-ORDER")]
    [InlineData("PUMP-OVERRUN")]
    [InlineData("HEAT-FLOW")]
    [InlineData("HEAT-FIRST-OFF")]
    [InlineData("HEAT-LIMIT")]
    [InlineData("VALVE-STAGGER")]
    [InlineData("VALVE-STUCK")]
    [InlineData("VALVE-SUPPLY")]
    [InlineData("SEASON-LOCKOUT")]
    [InlineData("PRIORITY")]
    [InlineData("SERVICE")]
    [InlineData("GATE")]
    [InlineData("ALARM-LATCH")]
    [InlineData("TIME-FAULT")]
    [InlineData("BOOT-SAFE")]
    [InlineData("ANSWER-ON")]
    [InlineData("ANSWER-OFF")]
    [InlineData("ANSWER-WHY")]
    public void A_fault_planted_behind_the_controller_is_found_and_named(string rule)
    {
        var found = new ConcurrentBag<string>();
        RandomRun.Any.Sample(run => found.Add(FirstBroken(run, _faults[rule]) ?? ""), iter: 1000);
        Assert.Contains(found, finding => finding.Contains(rule, StringComparison.Ordinal));
    }

    private static readonly Dictionary<string, Action<Published, OutputImage>> _faults = new()
    {
        ["PUMP-PROOF"] = (_, o) => o.Pump |= o.Hold == HoldReason.Proof,
        ["PUMP-DELAY"] = (_, o) => o.Pump |= o.Hold == HoldReason.StartDelay,
        ["PUMP-REST"] = (_, o) => o.Pump |= o.Hold == HoldReason.Rest,
        ["PUMP-FLOW"] = (_, o) => o.Pump |= o.Hold == HoldReason.FlowLatched,
        ["PUMP-STUCK"] = (_, o) => o.Pump |= o.Hold == HoldReason.PumpStuck,
        ["PUMP-ORDER"] = (before, o) => o.Valves = before.Pump && !o.Pump ? 0 : o.Valves,
        ["PUMP-OVERRUN"] = (before, o) => o.Pump |= before.Pump && o.AcceptedCalls == 0 && o.ProvenValves != 0,
        ["HEAT-FLOW"] = (before, o) => o.Heat |= before.Heat,
        ["HEAT-FIRST-OFF"] = (_, o) => o.Pump &= o.Heat,
        ["HEAT-LIMIT"] = (before, o) => o.Pump |= before.Pump && (o.Alarms & Alarm.LimitLatched) != 0,
        ["VALVE-STAGGER"] = (_, o) => o.Valves |= o.Pump ? 0 : o.AcceptedCalls,
        ["VALVE-STUCK"] = (_, o) => o.StuckSwitches = 0,
        ["VALVE-SUPPLY"] = (before, o) => o.Valves |= (o.Alarms & Alarm.NoSupply) != 0 ? before.Valves : 0,
        ["SEASON-LOCKOUT"] = (_, o) => o.Valves |= o.AcceptedLockout ? o.AcceptedCalls : 0,
        ["PRIORITY"] = (before, o) => o.Pump |= before.Pump && o.Hold == HoldReason.Priority,
        ["SERVICE"] = (before, o) => o.Pump |= before.Pump && o.Hold == HoldReason.Service,
        ["GATE"] = (_, o) => o.Valves |= o.AcceptedSenses,
        ["ALARM-LATCH"] = (_, o) => o.Alarms &= ~(Alarm.LimitLatched | Alarm.FlowLatched),
        ["TIME-FAULT"] = (before, o) => o.Pump |= before.Pump && (o.Alarms & ~before.Alarms & Alarm.TimeFault) != 0,
        ["BOOT-SAFE"] = (_, o) => o.Valves |= o.PowerUp ? 1 : 0,
        ["ANSWER-ON"] = (before, o) => o.Pump &= before.Pump,
        ["ANSWER-OFF"] = (before, o) => o.Valves |= before.Valves,
        ["ANSWER-WHY"] = (_, o) => o.Hold = HoldReason.None,
    };

    private static string? FirstBroken(RandomRun run, Action<Published, OutputImage> fault)
    {
        ZoneController controller = null!;
        Judge judge = null!;
        var world = new RandomWorld(run);
        var shown = new OutputImage();
        foreach (Tick tick in world.Ticks(shown))
        {
            if (tick.PowerUp)
                (controller, judge) = (new ZoneController(run.Settings), new Judge(run.Settings));
            Published before = Published.Of(shown);
            controller.Scan(tick.Now, world.Contacts, shown);
            fault(before, shown);
            string? broken = judge.Look(tick.Now, world.Contacts, shown);
            if (broken != null)
                return broken;
        }

        return null;
    }
}
