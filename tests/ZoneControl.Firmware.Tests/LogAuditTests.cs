using System.Text;
using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Firmware.Tests;

/// <summary>What a real board would print is judged as the run that it printed it in.</summary>
public class LogAuditTests
{
    public static TheoryData<string> Scripts => [.. Examples.Scripts];

    [Theory]
    [MemberData(nameof(Scripts))]
    public void The_firmwares_log_and_the_runs_trace_get_the_same_judgements(string name)
    {
        (House house, Script script) = Examples.Script(name);
        FirmwareController? firmware = null;
        Run run = Runner.Run(
            house, script, _ => firmware = new FirmwareController(house), cancel: TestContext.Current.CancellationToken);
        using var trace = new StringWriter();
        TraceCsv.Write(trace, run.Trace, [.. house.Zones.Select(zone => zone.Name)]);

        (string, Judgement)[] ofLog = Judgements(house, string.Join('\n', firmware!.Log) + "\n");
        Assert.Equal(Judgements(house, trace.ToString()), ofLog);
        Assert.Equal(run.Rules.Select(rule => (rule.Rule, rule.Judgement)), ofLog);
        Assert.Contains(ofLog, rule => rule.Item2 == Judgement.Kept);
    }

    private static (string, Judgement)[] Judgements(House house, string capture)
    {
        using var bytes = new MemoryStream(Encoding.UTF8.GetBytes(capture));
        Audit audit = CaptureAudit.Run(house, bytes, "capture", ChannelMap.None, cancel: TestContext.Current.CancellationToken);
        Assert.Empty(audit.Mistakes);
        return [.. audit.Result!.Rules.Select(rule => (rule.Rule, rule.Judgement))];
    }
}
