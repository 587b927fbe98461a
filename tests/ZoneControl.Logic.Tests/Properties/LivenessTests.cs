using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>
/// ANSWER-ON in random houses with healthy valves: after any history, a call that then stands has the pump on in time, and
/// with no call left everything is off in time.
/// </summary>
public class LivenessTests
{
    [Fact]
    [Trait("Rule", "ANSWER-ON")]
    [Trait("Rule", "ANSWER-OFF")]
    public void Steady_calls_have_the_pump_on_in_time_and_none_has_everything_off_in_time() =>
        RandomRun.Any.Sample(run => Verdict.IsClean(FirstLate(run)), iter: 3000, print: run => run.ToString());

    private static string? FirstLate(RandomRun run)
    {
        ControllerSettings s = run.Settings;
        int period = s.ScanPeriodMs;
        // A flow switch that is accepted after the pump should have been tripped, or has run down, is a mistake of the house.
        s.ContactDebounceMs[Contact.Place(Contact.Flow)] = 0;
        s.FlowProofMs = Math.Max(s.FlowProofMs, 3 * period);
        s.PumpRundownMs = Math.Max(s.PumpRundownMs, 3 * period);
        // So is a closing time in which a switch's opening cannot be accepted.
        for (int zone = 0; zone < s.ZoneCount; zone++)
            s.ClosingMs[zone] = Math.Max(s.ClosingMs[zone], s.SwitchDebounceMs + 2 * period);
        var house = new HealthyHouse(s);
        var world = new RandomWorld(run);
        foreach (Tick tick in world.Ticks(house.Out))
            house.Step(tick, world.Contacts);

        // Everything is put right, and what waits for its time gets it.
        house.Quieten();
        int slowest = s.OpeningMs.Max() + s.ClosingMs.Max();
        int settle = s.CallDebounceMs + s.ContactDebounceMs.Max() + 2 * (s.PumpOverrunMs + s.PumpRundownMs) + slowest;
        house.Run(settle / period + 20);
        // A button that is not there resets nothing: then what has latched stays, and ANSWER-ON asks nothing.
        house.Press(Contact.Reset);
        if ((house.Out.Alarms & (Alarm.LimitLatched | Alarm.FlowLatched)) != 0 || house.Out.LatchedValves != 0)
            return s.Has(Contact.Reset) ? $"the reset let a latch stand: {Published.Of(house.Out)}" : null;
        house.Call(run.Moments[0].Number % s.ZoneCount);
        int opening = s.OpeningMs.Max() + s.InrushMs.Sum();
        int rest = Math.Max(s.PumpMinOffMs, s.PumpStartIntervalMs);
        int on = s.CallDebounceMs + s.SwitchDebounceMs + Math.Max(Math.Max(opening, s.PumpStartDelayMs), rest);
        if (!house.RunUntil(o => o.Pump, on + 8 * period))
            return $"the pump is not on after {on} ms: {Published.Of(house.Out)}";
        house.Run(opening / period + 20);
        if (!house.Out.Pump || !house.Out.Heat)
            return $"the pump does not stay on: {Published.Of(house.Out)}";
        house.Quieten();
        int off = s.CallDebounceMs + s.SwitchDebounceMs + s.PumpOverrunMs + s.PumpRundownMs;
        return house.RunUntil(o => !o.Pump && o.Valves == 0, off + 6 * period)
            ? null
            : $"not all is off after {off} ms: {Published.Of(house.Out)}";
    }

    /// <summary>Valves whose switches make when they are open and break when they are released, and a pump that moves water.</summary>
    private sealed class HealthyHouse(ControllerSettings s)
    {
        private readonly int[] _open = new int[s.ZoneCount];
        private readonly InputImage _contacts = new();
        private ZoneController _controller = new(s);
        private long _now;

        public OutputImage Out { get; } = new();

        /// <summary>A scan of the history that went before.</summary>
        public void Step(Tick tick, InputImage contacts)
        {
            if (tick.PowerUp)
                _controller = new ZoneController(s);
            _now = tick.Now;
            _controller.Scan(_now, contacts, Out);
        }

        public void Quieten() => Quiet.Fill(s, _contacts);

        public void Call(int zone)
        {
            if (Bits.Has(s.GatedZones, zone))
                _contacts.Senses ^= 1 << zone;
            else
                _contacts.Calls ^= 1 << zone;
        }

        public void Press(int contact)
        {
            _contacts.Contacts ^= contact;
            Run(s.ContactDebounceMs[Contact.Place(contact)] / s.ScanPeriodMs + 3);
            _contacts.Contacts ^= contact;
            Run(s.ContactDebounceMs[Contact.Place(contact)] / s.ScanPeriodMs + 3);
        }

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
            int made = 0;
            for (int zone = 0; zone < s.ZoneCount; zone++)
            {
                bool on = Bits.Has(Out.Valves | Out.AcceptedSenses, zone);
                _open[zone] = on ? _open[zone] + s.ScanPeriodMs : 0;
                if (on && _open[zone] >= s.OpeningMs[zone])
                    made |= 1 << zone;
            }

            _contacts.EndSwitches = made ^ s.InvertedSwitches;
            _contacts.Set(Contact.Flow, Out.Pump ^ ((Quiet.Inverted(s) & Contact.Flow) != 0));
            _now += s.ScanPeriodMs;
            _controller.Scan(_now, _contacts, Out);
        }
    }
}
