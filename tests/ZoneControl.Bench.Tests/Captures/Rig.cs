using System.Text;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Files;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Captures;

/// <summary>What the tests of captures share: houses, runs, and captures as text.</summary>
internal static class Rig
{
    public static readonly Func<ControllerSettings, IController> Library = settings => new LibraryController(settings);

    public static readonly Func<ControllerSettings, IController> Straight = settings => new StraightWiring(settings);

    public static House House(string file)
    {
        HouseReading reading = HouseFile.Read(Path.Combine(ExampleTests.Folder(), file));
        return reading.House!;
    }

    public static Run Run(string houseFile, string scriptFile, Func<ControllerSettings, IController> build)
    {
        House house = House(houseFile);
        Script script = ScriptFile.Read(Path.Combine(ExampleTests.Folder(), scriptFile), house).Script!;
        return Runner.Run(house, script, build, cancel: TestContext.Current.CancellationToken);
    }

    public static string Vcd(Run run) => Written(writer => TraceVcd.Write(writer, run.Trace, run.House));

    public static string Csv(Run run) => Written(writer => TraceCsv.Write(writer, run.Trace, [.. run.House.Zones.Select(zone => zone.Name)]));

    public static AuditResult Audit(House house, string capture, ChannelMap? map = null)
    {
        Audit audit = Try(house, Encoding.UTF8.GetBytes(capture), map);
        Assert.True(audit.Result is not null, string.Join("\n", audit.Mistakes));
        return audit.Result;
    }

    public static string Refused(House house, string capture, ChannelMap? map = null)
    {
        Audit audit = Try(house, Encoding.UTF8.GetBytes(capture), map);
        Assert.Null(audit.Result);
        return Assert.Single(audit.Mistakes).ToString();
    }

    public static Audit Try(House house, byte[] capture, ChannelMap? map = null) =>
        CaptureAudit.Run(house, new MemoryStream(capture), "capture", map ?? ChannelMap.None, cancel: TestContext.Current.CancellationToken);

    private static string Written(Action<TextWriter> write)
    {
        using var text = new StringWriter();
        write(text);
        return text.ToString();
    }
}
