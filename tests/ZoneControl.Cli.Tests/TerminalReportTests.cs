using Spectre.Console.Testing;
using ZoneControl.Cli.Terminal;
using ZoneControl.Web.Tests;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Tests;

public class TerminalReportTests
{
    private static string Shown(ReportView report)
    {
        using var console = new TestConsole();
        console.Profile.Width = 80;
        TerminalReport.Write(console, report);
        return console.Output;
    }

    [Fact]
    public void Shot()
    {
        if (Environment.GetEnvironmentVariable("SHOT") is { } p) File.WriteAllText(p, Shown(Morning.Report()) + "\n#####\n" + Shown(Morning.Report(passed: false)));
    }
}
