using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>A scan never throws and never allocates, whatever the contacts and the clock do.</summary>
public class AllocationTests
{
    [Fact]
    public void A_million_random_scans_throw_nothing_and_allocate_nothing()
    {
        ControllerSettings settings = House.OfZones(16).Minimum(3).Switched(1, 4, 9, 15).With(s => s.SwitchDebounceMs = 150).Settings();
        var controller = new ZoneController(settings);
        var contacts = new InputImage();
        var outputs = new OutputImage();
        int[] state = new int[controller.StateLength];
        var random = new Random(20240229);
        long now = 0;
        int pumpScans = 0;
        Run(1000); // lets the runtime compile what it will

        long before = GC.GetAllocatedBytesForCurrentThread();
        Run(1_000_000);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.InRange(pumpScans, 1, 1_000_000);

        void Run(int scans)
        {
            for (int i = 0; i < scans; i++)
            {
                int what = random.Next(200);
                if (what < 6)
                    contacts.Calls ^= 1 << random.Next(32);
                else if (what < 9)
                    contacts.EndSwitches ^= 1 << random.Next(32);
                else if (what < 12)
                    contacts.EndSwitches |= outputs.Valves;
                else if (what == 12)
                    contacts.Lockout = random.Next(4) == 0;
                now += what switch { 13 => 0, 14 => -random.Next(5000), 15 => random.NextInt64(1L << 33), _ => 100 };
                if ((i & 1) == 0)
                    controller.Scan(now, contacts, outputs);
                else
                    controller.ScanWhole(now, contacts, outputs);
                if (what == 16)
                    controller.Save(state);
                else if (what == 17)
                    controller.Load(state, now);
                pumpScans += outputs.Pump ? 1 : 0;
            }
        }
    }

    [Fact]
    public void A_clock_that_steps_back_is_counted_the_same_in_short_and_whole_scans() =>
        Gen.Int[-3, 12].Where(step => step != 0).Array[1, 200].Sample(
            steps =>
            {
                ControllerSettings settings = House.OfZones(2).Minimum(2).Switched(1).Settings();
                var brief = new ZoneController(settings);
                var whole = new ZoneController(settings);
                var contacts = new InputImage { Calls = 1 };
                var briefOut = new OutputImage();
                var wholeOut = new OutputImage();
                long now = 100_000;
                foreach (int step in steps)
                {
                    now += step * House.Scan;
                    brief.Scan(now, contacts, briefOut);
                    whole.ScanWhole(now, contacts, wholeOut);
                    Assert.Equal(Published.Of(wholeOut), Published.Of(briefOut));
                }
            },
            iter: 1000);
}
