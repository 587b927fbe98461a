using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>
/// The announced deadline: a scan before it with the same contacts changes nothing. So deciding in every scan, taking the
/// short way, and skipping to the first scan tick at or after the deadline must show the same outputs and the same state.
/// </summary>
public class SkippingTests
{
    private const int Cases = 10_000;

    [Fact]
    public void Skipping_to_the_deadline_shows_what_deciding_every_scan_shows() =>
        RandomRun.Any.Sample(run => Verdict.IsClean(Difference(run, 0)), iter: Cases, print: run => run.ToString());

    [Fact]
    public void A_deadline_one_scan_too_late_is_found_by_the_same_comparison() =>
        Assert.Throws<CsCheckException>(() =>
            RandomRun.Any.Sample(run => Verdict.IsClean(Difference(run, 1)), iter: Cases, print: run => run.ToString()));

    public static TheoryData<string> Settled => ["priority that lasts too long", "a hand that is ignored", "frost without heat", "a long delay that nobody waits for"];

    [Theory]
    [MemberData(nameof(Settled))]
    public void Where_only_a_contact_can_change_anything_no_deadline_is_announced(string settled)
    {
        Rig rig = settled switch
        {
            "priority that lasts too long" => Rig.InSeason(House.OfZones(1).Fit(Contact.Priority)).On(Contact.Priority).RunFor(2 * House.PriorityMax),
            "a hand that is ignored" => Rig.InSeason(House.OfZones(1)).Hand(0).RunFor(2 * House.ServiceLimit),
            "frost without heat" => Rig.InSeason(House.OfZones(1).Fit(Contact.Freeze | Contact.Lockout)).Lockout().RunFor(1000).On(Contact.Freeze)
                .RunFor(House.Opening + 2 * House.FreezeHeatMax),
            _ => Rig.InSeason(House.OfZones(1).With(s => s.PumpStartDelayMs = 3 * House.Overrun)).RunFor(60_000),
        };

        rig.Always(o => o.NextDeadlineMs == ZoneController.Never, 5000);
    }

    [Fact]
    public void A_scan_that_decides_nothing_fills_a_fresh_image_like_any_other()
    {
        Rig rig = Rig.Running(House.OfZones(2).Switched(1), 0, 1).RunFor(5000);
        var controller = new ZoneController(House.OfZones(2).Switched(1).Settings());
        controller.Load(rig.State, rig.Now);
        controller.Scan(rig.Now + 100, rig.Contacts, new OutputImage());
        var fresh = new OutputImage { PowerUp = true };
        controller.Scan(rig.Now + 200, rig.Contacts, fresh);

        Assert.Equal(Published.Of(rig.Out), Published.Of(fresh));
        Assert.Equal((rig.Now + 200, ZoneController.Never), (fresh.ScanMs, fresh.NextDeadlineMs));
    }

    /// <summary>The first difference between the three ways of stepping, or null. Skipping may be made so many scans late.</summary>
    private static string? Difference(RandomRun run, int lateScans)
    {
        ControllerSettings s = run.Settings;
        var whole = new Stepper(s);
        var brief = new Stepper(s);
        var skipping = new Stepper(s);
        var world = new RandomWorld(run);
        long skipTo = 0;
        foreach (Tick tick in world.Ticks(whole.Out))
        {
            long now = tick.Now;
            if (tick.PowerUp)
            {
                whole.PowerUp();
                brief.PowerUp();
                skipping.PowerUp();
            }

            whole.Controller.ScanWhole(now, world.Contacts, whole.Out);
            brief.Controller.Scan(now, world.Contacts, brief.Out);
            // Whoever skips looks at a clock that does not run as it should, and at the scan before.
            if (tick.First || tick.Changed || tick.PowerUp || !tick.Regular || now >= skipTo)
            {
                skipping.Controller.Scan(now, world.Contacts, skipping.Out);
                skipTo = skipping.Out.NextDeadlineMs == ZoneController.Never
                    ? long.MaxValue
                    : skipping.Out.NextDeadlineMs + lateScans * s.ScanPeriodMs;
            }

            Published expected = Published.Of(whole.Out);
            if (expected != Published.Of(brief.Out))
                return $"at {now} the short way shows {Published.Of(brief.Out)}, not {expected}";
            if (expected != Published.Of(skipping.Out))
                return $"at {now} skipping shows {Published.Of(skipping.Out)}, not {expected}";
            if (tick.First && !(whole.Same(brief) && whole.Same(skipping)))
                return $"at {now} the states differ: {whole}; {brief}; {skipping}";
        }

        return null;
    }

    private sealed class Stepper(ControllerSettings settings)
    {
        private readonly int[] _state = new int[new ZoneController(settings).StateLength];

        public ZoneController Controller { get; private set; } = new(settings);

        public OutputImage Out { get; } = new();

        public void PowerUp() => Controller = new ZoneController(settings);

        public bool Same(Stepper other)
        {
            Controller.Save(_state);
            other.Controller.Save(other._state);
            return _state.AsSpan().SequenceEqual(other._state);
        }

        public override string ToString() => string.Join(' ', _state);
    }
}
