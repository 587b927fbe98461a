using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>A scan never throws and never allocates, whatever contacts and clock do.</summary>
public class AllocationTests
{
    /// <summary>How many scans, where a million do not suffice somebody.</summary>
    private const string ScansVariable = "ZONECONTROL_SCANS";

    [Fact]
    public void A_million_random_scans_throw_nothing_and_allocate_nothing() =>
        Run(int.TryParse(Environment.GetEnvironmentVariable(ScansVariable), out int scans) ? scans : 1_000_000);

    private static void Run(int scans)
    {
        var crowd = new Crowd();
        crowd.Run(100_000); // lets the runtime compile what it will
        long before = GC.GetAllocatedBytesForCurrentThread();
        crowd.Run(scans);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        crowd.AssertEverythingHappened();
    }

    /// <summary>Sixteen zones of every kind with every contact, and somebody who presses everything.</summary>
    private sealed class Crowd
    {
        private readonly ZoneController _controller = new(Settings());
        private readonly InputImage _contacts = new();
        private readonly OutputImage _outputs = new();
        private readonly int[] _state;
        private readonly int[] _holds = new int[14];
        private readonly Random _random = new(20240229);
        private long _now;
        private int _alarms;
        private int _heatScans;
        private int _stuck;
        private int _latched;

        public Crowd() => _state = new int[_controller.StateLength];

        private static ControllerSettings Settings() => House.OfZones(16).Minimum(3).Switched(1, 4, 9, 14, 15).Gated(14, 15).Companions(0, 1, 4)
            .Fit((1 << Contact.Count) - 1)
            .Transformer(deciVa: 250, hold: 10, inrush: 60, inrushMs: 700)
            .Exercised(intervalS: 60, retryS: 60, runMs: 2000, limitMs: 9000)
            .With(s => (s.SwitchDebounceMs, s.PumpMinOffMs, s.PumpStartIntervalMs, s.PriorityMaxMs) = (150, 500, 2500, 5000)).Settings();

        public void Run(int scans)
        {
            for (int i = 0; i < scans; i++)
            {
                int what = _random.Next(300);
                Press(what);
                _now += what switch { 43 => 0, 44 => -_random.Next(5000), 45 => _random.NextInt64(1L << 33), _ => 100 };
                if ((i & 1) == 0)
                    _controller.Scan(_now, _contacts, _outputs);
                else
                    _controller.ScanWhole(_now, _contacts, _outputs);
                if (what == 46)
                    _controller.Save(_state);
                else if (what == 47)
                    _controller.Load(_state, _now);
                Note();
            }
        }

        private void Press(int what)
        {
            switch (what)
            {
                case < 8: _contacts.Calls ^= 1 << _random.Next(32); break;
                case < 12: _contacts.EndSwitches ^= 1 << _random.Next(32); break;
                case < 18: _contacts.EndSwitches |= _outputs.Valves; break;
                case < 20: _contacts.EndSwitches &= _outputs.Valves; break;
                case < 22: _contacts.Senses ^= 1 << _random.Next(32); break;
                case 22: _contacts.ServiceValves ^= 1 << _random.Next(32); break;
                case 23: _contacts.ServiceValves = 0; break;
                case < 26: _contacts.Contacts ^= 1 << _random.Next(32); break;
                case < 30: _contacts.Contacts = Contact.AssertedOpen | Contact.Supply | (_contacts.Contacts & Contact.Lockout); break;
                case 30: _contacts.Contacts ^= Contact.Reset; break;
                case < 40: _contacts.Set(Contact.Flow, _outputs.Pump); break;
                case 40: _contacts.Calls = _contacts.EndSwitches = _contacts.Senses = _contacts.ServiceValves = _contacts.Contacts = -1; break;
                case 41: _contacts.Calls = _contacts.EndSwitches = _contacts.Senses = _contacts.ServiceValves = _contacts.Contacts = 0; break;
                case 42: _contacts.Calls = 0; break;
            }
        }

        private void Note()
        {
            _holds[(int)_outputs.Hold]++;
            _alarms |= _outputs.Alarms;
            _heatScans += _outputs.Heat ? 1 : 0;
            _stuck |= _outputs.StuckSwitches;
            _latched |= _outputs.LatchedValves;
        }

        public void AssertEverythingHappened()
        {
            Assert.Equal([], Enumerable.Range(0, _holds.Length).Where(hold => _holds[hold] == 0).Select(hold => (HoldReason)hold));
            Assert.Equal((1 << 10) - 1, _alarms);
            Assert.Equal(Bits.Of(1, 4, 9, 14, 15), _stuck);
            Assert.Equal(Bits.Of(1, 4, 9), _latched);
            Assert.InRange(_heatScans, 1000, int.MaxValue);
            Assert.InRange(_controller.Counters.Exercises, 1, int.MaxValue);
            Assert.InRange(_controller.Counters.Trips, 1, int.MaxValue);
        }
    }
}
