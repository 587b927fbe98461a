using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>
/// ANSWER-ON in random houses with healthy valves: after any history, calls that then stand have the pump on in time, and
/// with no call left everything is off in time.
/// </summary>
public class LivenessTests
{
    [Fact]
    [Trait("Rule", "ANSWER-ON")]
    public void Steady_calls_have_the_pump_on_in_time_and_none_has_everything_off_in_time() =>
        RandomRun.Any.Sample(run => Verdict.IsClean(FirstLate(run)), iter: 2000, print: run => run.ToString());

    private static string? FirstLate(RandomRun run)
    {
        ControllerSettings s = run.Settings;
        var house = new HealthyHouse(s);
        foreach (Moment moment in run.Moments)
        {
            // Only calls and season: the switches are the valves' own.
            run.Apply(moment, house.Contacts, 0);
            house.Run(moment.Scans);
        }

        house.Contacts.Lockout = false;
        house.Contacts.Calls = 1 << run.Moments[0].Zone % s.ZoneCount;
        house.Run((s.SeasonDebounceMs + s.CallDebounceMs) / s.ScanPeriodMs + 3); // until then a pump may still overrun
        int longestOpening = s.OpeningMs.Max();
        int on = s.SwitchDebounceMs + Math.Max(longestOpening, s.PumpStartDelayMs);
        if (!house.RunUntil(o => o.Pump, on + 6 * s.ScanPeriodMs))
            return $"the pump is not on after {on} ms: {Published.Of(house.Out)}";
        house.Run(longestOpening / s.ScanPeriodMs + 20);
        if (!house.Out.Pump || !house.Out.Heat)
            return $"the pump does not stay on: {Published.Of(house.Out)}";
        house.Contacts.Calls = 0;
        int off = s.CallDebounceMs + s.PumpOverrunMs + s.PumpRundownMs;
        return house.RunUntil(o => !o.Pump && o.Valves == 0, off + 4 * s.ScanPeriodMs)
            ? null
            : $"not all is off after {off} ms: {Published.Of(house.Out)}";
    }

    /// <summary>Valves whose switches make when they are open, and break when they are released.</summary>
    private sealed class HealthyHouse(ControllerSettings s)
    {
        private readonly ZoneController _controller = new(s);
        private readonly int[] _open = new int[s.ZoneCount];
        private long _now = 1000;

        public InputImage Contacts { get; } = new();

        public OutputImage Out { get; } = new();

        public void Run(int scans)
        {
            for (int i = 0; i < scans; i++)
                Step();
        }

        public bool RunUntil(Func<OutputImage, bool> reached, int withinMs)
        {
            for (int i = 0; i * s.ScanPeriodMs <= withinMs && !reached(Out); i++)
                Step();
            return reached(Out);
        }

        private void Step()
        {
            Contacts.EndSwitches = 0;
            for (int zone = 0; zone < s.ZoneCount; zone++)
            {
                _open[zone] = Bits.Has(Out.Valves, zone) ? _open[zone] + s.ScanPeriodMs : 0;
                if (_open[zone] > 0 && _open[zone] >= s.OpeningMs[zone])
                    Contacts.EndSwitches |= 1 << zone;
            }

            _controller.Scan(_now, Contacts, Out);
            _now += s.ScanPeriodMs;
        }
    }
}
