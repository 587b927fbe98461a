using System.ComponentModel;
using System.Diagnostics;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Tests.Captures;

/// <summary>Our dumps open in a program that is not ours: the converters of GTKWave, package gtkwave of Debian.</summary>
public sealed class IndependentReaderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("two-rooms.house.toml", "two-rooms-evening.script.toml")]
    [InlineData("toolworks.house.toml", "toolworks-clock.script.toml")]
    [InlineData("retrofit.house.toml", "retrofit-evening.script.toml")]
    public void A_dump_goes_through_another_s_format_and_back_and_is_judged_the_same(string houseFile, string scriptFile)
    {
        Run run = Rig.Run(houseFile, scriptFile, Rig.Library);
        string vcd = Path.Combine(_folder, "a.vcd");
        string fst = Path.Combine(_folder, "a.fst");
        File.WriteAllText(vcd, Rig.Vcd(run));
        Convert("vcd2fst", vcd, fst);
        string back = Convert("fst2vcd", fst);
        AuditResult audit = Rig.Audit(run.House, back);
        Assert.Equal(run.Rules, audit.Rules);
        Assert.Equal(run.Trace.EndMs, audit.EndMs);
    }

    private static string Convert(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process process = Process.Start(start)!;
            Task<string> error = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, error.Result);
            return output;
        }
        catch (Win32Exception) when (Environment.GetEnvironmentVariable("CI") is null)
        {
            Assert.Skip($"{program} is not installed; it comes with the package gtkwave");
            throw;
        }
    }
}
