using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>
/// A controller and a plant joined in virtual time, driven from outside: contacts and faults are set, then time is moved
/// on scan by scan. Scans fall on multiples of the scan period; those at which nothing could change are left out.
/// </summary>
public sealed class BenchSession
{
    private const int SampleMs = 1000;

    private readonly PlantModel _plant;
    private readonly IController _controller;
    private readonly TraceRecorder _recorder;
    private readonly BenchWiring _wiring;
    private readonly BenchClock _clock = new();
    private readonly InputImage _inputs = new();
    private readonly OutputImage _outputs = new();
    private readonly int _periodMs;
    private long _deadlineMs;
    private long _sampleDueMs;
    private bool _contactsMoved = true;
    private int _sampledContacts;
    private int _sampledSwitches;

    /// <summary>Joins a freshly built plant and controller at time 0, before the first scan.</summary>
    /// <param name="settings">The controller's settings: which contacts there are and what they mean.</param>
    /// <param name="plant">The plant.</param>
    /// <param name="controller">Whatever is to be tried.</param>
    /// <param name="flowSwitchAtM3s">Flow at which a flow switch makes, m³/s; null for the pump's minimum flow.</param>
    public BenchSession(ControllerSettings settings, PlantModel plant, IController controller, double? flowSwitchAtM3s = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(plant);
        _plant = plant;
        _controller = controller;
        _periodMs = settings.ScanPeriodMs;
        _wiring = new BenchWiring(settings, plant)
        {
            FlowSwitchAtM3s = flowSwitchAtM3s ?? plant.Description.Pump.MinimumFlowM3s,
        };
        _recorder = new TraceRecorder(plant, _wiring, settings.ZoneCount);
    }

    /// <summary>When true every scan is made, even those that cannot change anything: slower, and the outputs are the same.</summary>
    public bool EveryScan { get; init; }

    /// <summary>Time of the last scan, ms; -1 before the first.</summary>
    public long NowMs { get; private set; } = -1;

    /// <summary>Thermostats asking for heat before debounce, one bit a zone.</summary>
    public int Calls => _wiring.Calls;

    /// <summary>What the controller showed at the last scan.</summary>
    public Frame Shown { get; private set; }

    /// <summary>Time that the plant has reached, ms.</summary>
    public long PlantMs => _plant.NowMs;

    /// <summary>A zone's thermostat asks or ceases to; a gated zone's moves the panel. Seen by the next scan.</summary>
    public void SetCall(int zone, bool asks)
    {
        int bit = 1 << zone;
        _wiring.Calls = asks ? _wiring.Calls | bit : _wiring.Calls & ~bit;
        _contactsMoved = true;
    }

    /// <summary>The season switch says lockout or heating; seen by the next scan.</summary>
    public void SetLockout(bool lockout) => SetContacts(Contact.Lockout, lockout);

    /// <summary>
    /// Asserts or releases contacts of <see cref="Contact"/>; seen by the next scan. Without <see cref="Contact.Supply"/> no
    /// valve is energised, whether that is sensed or not; <see cref="Contact.Flow"/> follows the water and cannot be set.
    /// </summary>
    public void SetContacts(int contacts, bool asserted)
    {
        _wiring.Assert(contacts & ~Contact.Flow, asserted);
        _contactsMoved = true;
    }

    /// <summary>Sets every hand switch; seen by the next scan.</summary>
    /// <param name="zones">Zones whose valves a hand asks for, one bit each.</param>
    /// <param name="pump">Whether a hand asks for the pump.</param>
    public void SetHands(int zones, bool pump)
    {
        _wiring.Hands = zones;
        SetContacts(Contact.ServicePump, pump);
    }

    /// <summary>Plants or repairs a fault of a zone's actuator, from the moment that the plant has reached.</summary>
    public void SetFault(int zone, ActuatorFault fault)
    {
        _plant.SetFault(zone, fault);
        _contactsMoved = true;
    }

    /// <summary>Plants or repairs a fault of the pump.</summary>
    public void SetPumpFault(PumpFault fault)
    {
        _wiring.PumpFault = fault;
        _contactsMoved = true;
    }

    /// <summary>Plants or repairs a fault of the flow switch.</summary>
    public void SetFlowSwitchFault(FlowSwitchFault fault)
    {
        _wiring.FlowSwitchFault = fault;
        _contactsMoved = true;
    }

    /// <summary>The controller's clock jumps ahead, or back for a negative time, ms.</summary>
    public void JumpClock(long ms)
    {
        _clock.Jump(ms);
        _contactsMoved = true;
    }

    /// <summary>The controller's clock stands still for so long, ms, from the moment that the plant has reached.</summary>
    public void StopClock(long forMs)
    {
        _clock.Stop(_plant.NowMs, forMs);
        _contactsMoved = true;
    }

    /// <summary>Cuts or restores the power of the whole house; thermostat contacts stay as they are.</summary>
    public void SetPower(bool on)
    {
        if (on && !_wiring.Powered)
            _controller.PowerUp();
        _wiring.Powered = on;
        _contactsMoved = true;
    }

    /// <summary>The next scan at which anything could change, ms; later ones up to <paramref name="limitMs"/> may be left out.</summary>
    public long NextScanMs(long limitMs)
    {
        long next = NowMs + _periodMs;
        _sampleDueMs = next;
        if (NowMs < 0)
            return 0;
        if (EveryScan || _contactsMoved || _clock.Stands)
            return Math.Min(next, limitMs);
        long due = Math.Min(_deadlineMs, _plant.NextSwitchChangeMs);
        if (_plant.IsMoving)
            due = Math.Min(due, NowMs + SampleMs);
        _sampleDueMs = Math.Max(next, OnGrid(Math.Min(due, limitMs)));

        // The plant does not say when flow will pass the switch's point, so it is looked at in every scan.
        if (_wiring.WatchesFlow && _plant.IsMoving)
            due = next;
        return Math.Min(Math.Max(next, OnGrid(Math.Min(due, limitMs))), limitMs);
    }

    /// <summary>The first scan time at or after a moment, ms.</summary>
    public long OnGrid(long ms) => (ms + _periodMs - 1) / _periodMs * _periodMs;

    /// <summary>The scan time before that one, ms.</summary>
    public long BeforeMs(long ms) => OnGrid(ms) - _periodMs;

    /// <summary>Moves the plant on to a scan's time, where contacts and faults may be set before <see cref="Scan"/>.</summary>
    public void AdvanceTo(long ms) => _plant.AdvanceTo(ms);

    /// <summary>Scans at the moment that the plant has reached, and drives the plant with what came out.</summary>
    /// <param name="keep">Record a frame even when it shows nothing new.</param>
    public void Scan(bool keep = false)
    {
        long ms = _plant.NowMs;
        NowMs = ms;
        int contacts = _wiring.Contacts;
        int switches = _wiring.Switches;
        bool worthASample = EveryScan || _contactsMoved || ms >= _sampleDueMs
            || contacts != _sampledContacts || switches != _sampledSwitches;
        Frame before = Shown;
        Shown = Decide(ms);
        bool showsMore = !Shown.ShowsTheSameAs(before);
        if (worthASample || showsMore)
            _recorder.Sample();
        _sampledContacts = contacts;
        _sampledSwitches = switches;
        _wiring.Drive(Shown);
        _recorder.Take(Shown, keep);
        if (showsMore)
            _recorder.Sample();

        // What the outputs moved at once, such as flow, is for the next scan to see.
        _contactsMoved = _wiring.Contacts != contacts || _wiring.Switches != switches;
    }

    /// <summary>Everything recorded so far.</summary>
    public Trace Finish(long endMs) => _recorder.Finish(endMs);

    private Frame Decide(long ms)
    {
        if (!_wiring.Powered)
        {
            _deadlineMs = ZoneController.Never;
            return new Frame { Ms = ms, Unpowered = true, NextDeadlineMs = ZoneController.Never };
        }

        long clock = _clock.Read(ms);
        _wiring.Read(_inputs);
        _controller.Scan(clock, _inputs, _outputs);
        _deadlineMs = _outputs.NextDeadlineMs == ZoneController.Never
            ? ZoneController.Never
            : _outputs.NextDeadlineMs - (clock - ms);
        return Frame.From(_outputs) with { Ms = ms, ClockAheadMs = clock - ms, NextDeadlineMs = _deadlineMs };
    }
}
