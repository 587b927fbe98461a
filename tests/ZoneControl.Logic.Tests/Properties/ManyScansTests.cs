using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>
/// Sixteen zones of every kind, contacts and clock at random, for as many scans as somebody has the time for: every scan is
/// judged by the rules, and none may throw or allocate. `ZONECONTROL_SCANS=10000000` makes it ten million.
/// </summary>
public class ManyScansTests
{
    private const string ScansVariable = "ZONECONTROL_SCANS";
    private const int Few = 100_000;
    private const int RunsAtATime = 100;

    [Fact]
    public void No_scan_of_sixteen_zones_breaks_a_rule_throws_or_allocates()
    {
        long wanted = long.TryParse(Environment.GetEnvironmentVariable(ScansVariable), out long scans) ? scans : Few;
        Gen<RandomRun> sixteen = Gen.Select(
            RandomHouse.OfZones(Gen.Const(ControllerSettings.MostZones)), RandomRun.AnyMoments, (s, moments) => new RandomRun(s, moments));
        long done = 0;
        int pumpOn = 0;
        while (done < wanted)
        {
            sixteen.Sample(
                run =>
                {
                    (int made, int on) = Judged(run);
                    Interlocked.Add(ref done, made);
                    Interlocked.Add(ref pumpOn, on);
                },
                iter: RunsAtATime,
                print: run => run.ToString());
        }

        Assert.True(pumpOn > done / 20, $"the pump was on in only {pumpOn} of {done} scans");
        TestContext.Current.TestOutputHelper?.WriteLine($"{done} scans, {pumpOn} with the pump on");
    }

    private static (int Scans, int PumpOn) Judged(RandomRun run)
    {
        ZoneController controller = null!;
        Judge judge = null!;
        var world = new RandomWorld(run);
        var shown = new OutputImage();
        int scans = 0;
        int pumpOn = 0;
        foreach (Tick tick in world.Ticks(shown))
        {
            if (tick.PowerUp)
                (controller, judge) = (new ZoneController(run.Settings), new Judge(run.Settings));
            long before = GC.GetAllocatedBytesForCurrentThread();
            controller.Scan(tick.Now, world.Contacts, shown);
            Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
            Verdict.IsClean(judge.Look(tick.Now, world.Contacts, shown));
            scans++;
            pumpOn += shown.Pump ? 1 : 0;
        }

        return (scans, pumpOn);
    }
}
