using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>
/// The announced deadline: a scan before it with the same contacts changes nothing. So deciding in every scan, taking the
/// short way, and skipping to the first scan tick at or after the deadline must show the same outputs and the same state.
/// </summary>
public class SkippingTests
{
    private const int Cases = 3000;

    [Fact]
    public void Skipping_to_the_deadline_shows_what_deciding_every_scan_shows() =>
        RandomRun.Any.Sample(run => Verdict.IsClean(Difference(run, period => 0)), iter: Cases, print: run => run.ToString());

    [Fact]
    public void A_deadline_one_scan_too_late_is_found_by_the_same_comparison() =>
        Assert.Throws<CsCheckException>(() =>
            RandomRun.Any.Sample(run => Verdict.IsClean(Difference(run, period => period)), iter: Cases, print: run => run.ToString()));

    /// <summary>The first difference between the three ways of stepping, or null.</summary>
    private static string? Difference(RandomRun run, Func<int, int> lateBy)
    {
        ControllerSettings s = run.Settings;
        var whole = new Stepper(s);
        var brief = new Stepper(s);
        var skipping = new Stepper(s);
        var contacts = new InputImage();
        int late = lateBy(s.ScanPeriodMs);
        long now = 1000;
        long skipTo = now;
        foreach (Moment moment in run.Moments)
        {
            for (int i = 0; i < moment.Scans; i++)
            {
                bool change = i == 0;
                if (change)
                    run.Apply(moment, contacts, whole.Out.Valves);
                whole.Controller.ScanWhole(now, contacts, whole.Out);
                brief.Controller.Scan(now, contacts, brief.Out);
                bool scanned = change || now >= skipTo;
                if (scanned)
                {
                    skipping.Controller.Scan(now, contacts, skipping.Out);
                    skipTo = skipping.Out.NextDeadlineMs == ZoneController.Never ? long.MaxValue : skipping.Out.NextDeadlineMs + late;
                }

                Published expected = Published.Of(whole.Out);
                if (expected != Published.Of(brief.Out))
                    return $"at {now} the short way shows {Published.Of(brief.Out)}, not {expected}";
                if (expected != Published.Of(skipping.Out))
                    return $"at {now} skipping shows {Published.Of(skipping.Out)}, not {expected}";
                if (change && !(whole.Same(brief) && whole.Same(skipping)))
                    return $"at {now} the states differ: {whole}; {brief}; {skipping}";
                now += s.ScanPeriodMs;
            }
        }

        return null;
    }

    private sealed class Stepper(ControllerSettings settings)
    {
        private readonly int[] _state = new int[new ZoneController(settings).StateLength];

        public ZoneController Controller { get; } = new(settings);

        public OutputImage Out { get; } = new();

        public bool Same(Stepper other)
        {
            Controller.Save(_state);
            other.Controller.Save(other._state);
            return _state.AsSpan().SequenceEqual(other._state);
        }

        public override string ToString() => string.Join(' ', _state);
    }
}
