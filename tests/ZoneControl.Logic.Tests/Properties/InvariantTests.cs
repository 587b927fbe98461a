using System.Collections.Concurrent;
using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>Every rule, judged in every scan of random runs, from contacts and outputs alone.</summary>
public class InvariantTests
{
    [Fact]
    public void No_rule_is_broken_in_random_runs() =>
        RandomRun.Any.Sample(run => Verdict.IsClean(FirstBroken(run, (_, _) => { })), iter: 3000, print: run => run.ToString());

    [Theory]
    [InlineData("PUMP-PROOF")]
    [InlineData("PUMP-DELAY")]
    [InlineData("PUMP-ORDER")]
    [InlineData("PUMP-OVERRUN")]
    [InlineData("HEAT-FLOW")]
    [InlineData("HEAT-FIRST-OFF")]
    [InlineData("SEASON-LOCKOUT")]
    [InlineData("BOOT-SAFE")]
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
        ["PUMP-ORDER"] = (before, o) => o.Valves = before.Pump && !o.Pump ? 0 : o.Valves,
        ["PUMP-OVERRUN"] = (before, o) => o.Pump |= before.Pump && o.AcceptedCalls == 0 && o.ProvenValves != 0,
        ["HEAT-FLOW"] = (before, o) => o.Heat |= before.Heat,
        ["HEAT-FIRST-OFF"] = (_, o) => o.Pump &= o.Heat,
        ["SEASON-LOCKOUT"] = (_, o) => o.Valves |= o.AcceptedLockout ? o.AcceptedCalls : 0,
        ["BOOT-SAFE"] = (_, o) => o.Valves |= o.PowerUp ? 1 : 0,
        ["ANSWER-WHY"] = (_, o) => o.Hold = HoldReason.None,
    };

    private static string? FirstBroken(RandomRun run, Action<Published, OutputImage> fault)
    {
        var controller = new ZoneController(run.Settings);
        var judge = new Judge(run.Settings);
        var contacts = new InputImage();
        var shown = new OutputImage();
        long now = 1000;
        foreach (Moment moment in run.Moments)
        {
            run.Apply(moment, contacts, shown.Valves);
            for (int i = 0; i < moment.Scans; i++)
            {
                Published before = Published.Of(shown);
                controller.Scan(now, contacts, shown);
                fault(before, shown);
                string? broken = judge.Look(now, contacts, shown);
                if (broken != null)
                    return broken;
                now += run.Settings.ScanPeriodMs;
            }
        }

        return null;
    }
}
