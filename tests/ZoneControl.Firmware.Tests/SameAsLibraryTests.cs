using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Board;

namespace ZoneControl.Firmware.Tests;

/// <summary>What was tested is what runs on the board: the compiled firmware does on its pins what the library does.</summary>
public class SameAsLibraryTests
{
    public static TheoryData<string, int> Everything
    {
        get
        {
            var all = new TheoryData<string, int>();
            foreach (string script in Examples.Scripts)
            {
                all.Add(script, BoardPlan.Direct);
                all.Add(script, BoardPlan.Chains);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Every_example_script_gives_the_same_frames_and_verdict(string name, int arrangement)
    {
        (House house, Script script) = Examples.Script(name);

        Run library = Runner.Run(house, script, settings => new LibraryController(settings), cancel: TestContext.Current.CancellationToken);
        Run firmware = Runner.Run(
            house, script, _ => new FirmwareController(house, PinPlanner.For(house, arrangement)), cancel: TestContext.Current.CancellationToken);

        Assert.Equal(library.Trace.Frames, firmware.Trace.Frames);
        Assert.Equal(library.Passed, firmware.Passed);
        Assert.Equal(library.Rules.Select(Verdict), firmware.Rules.Select(Verdict));
        Assert.Contains(firmware.Trace.Frames, frame => frame.Pump);
    }

    [Fact]
    public void Both_arrangements_were_really_tried()
    {
        Assert.Contains(Everything, row => PinPlanner.For(Examples.Script(row.Data.Item1).House, row.Data.Item2).Module == BoardPlan.Esp32
            && row.Data.Item2 == BoardPlan.Direct);
        Assert.All(Everything, row =>
            Assert.Equal(row.Data.Item2, PinPlanner.For(Examples.Script(row.Data.Item1).House, row.Data.Item2).Arrangement));
    }

    private static (string, Judgement) Verdict(RuleVerdict verdict) => (verdict.Rule, verdict.Judgement);
}
