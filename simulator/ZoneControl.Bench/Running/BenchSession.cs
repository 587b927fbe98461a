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
    private readonly InputImage _inputs = new();
    private readonly OutputImage _outputs = new();
    private readonly int _periodMs;
    private bool _powered = true;
    private bool _contactsMoved = true;

    /// <summary>Joins a freshly built plant and controller at time 0, before the first scan.</summary>
    public BenchSession(ControllerSettings settings, PlantModel plant, IController controller)
    {
        ArgumentNullException.ThrowIfNull(settings);
        _plant = plant;
        _controller = controller;
        _periodMs = settings.ScanPeriodMs;
        _recorder = new TraceRecorder(plant, settings.ZoneCount);
    }

    /// <summary>When true every scan is made, even those that cannot change anything: slower, and the outputs are the same.</summary>
    public bool EveryScan { get; init; }

    /// <summary>Time of the last scan, ms; -1 before the first.</summary>
    public long NowMs { get; private set; } = -1;

    /// <summary>Thermostats asking for heat before debounce, one bit a zone.</summary>
    public int Calls => _inputs.Calls;

    /// <summary>What the controller showed at the last scan.</summary>
    public Frame Shown { get; private set; }

    /// <summary>Time that the plant has reached, ms.</summary>
    public long PlantMs => _plant.NowMs;

    /// <summary>Sets a zone's thermostat contact; seen by the next scan.</summary>
    public void SetCall(int zone, bool asks)
    {
        int bit = 1 << zone;
        _inputs.Calls = asks ? _inputs.Calls | bit : _inputs.Calls & ~bit;
        _contactsMoved = true;
    }

    /// <summary>Sets the season contact; seen by the next scan.</summary>
    public void SetLockout(bool lockout)
    {
        _inputs.Lockout = lockout;
        _contactsMoved = true;
    }

    /// <summary>Plants or repairs a fault of a zone's actuator, from the moment that the plant has reached.</summary>
    public void SetFault(int zone, ActuatorFault fault)
    {
        _plant.SetFault(zone, fault);
        _contactsMoved = true;
    }

    /// <summary>Cuts or restores the supply of controller, valves and pump alike; thermostat contacts stay as they are.</summary>
    public void SetPower(bool on)
    {
        if (on && !_powered)
            _controller.PowerUp();
        _powered = on;
        _contactsMoved = true;
    }

    /// <summary>The next scan at which anything could change, ms; later ones up to <paramref name="limitMs"/> may be left out.</summary>
    public long NextScanMs(long limitMs)
    {
        long next = NowMs + _periodMs;
        if (NowMs < 0)
            return 0;
        if (EveryScan || _contactsMoved)
            return Math.Min(next, limitMs);
        long due = Math.Min(_outputs.NextDeadlineMs, _plant.NextSwitchChangeMs);
        if (_plant.IsMoving)
            due = Math.Min(due, NowMs + SampleMs);
        return Math.Min(Math.Max(next, OnGrid(Math.Min(due, limitMs))), limitMs);
    }

    /// <summary>The first scan time at or after a moment, ms.</summary>
    public long OnGrid(long ms) => (ms + _periodMs - 1) / _periodMs * _periodMs;

    /// <summary>Moves the plant on to a scan's time, where contacts and faults may be set before <see cref="Scan"/>.</summary>
    public void AdvanceTo(long ms) => _plant.AdvanceTo(ms);

    /// <summary>Scans at the moment that the plant has reached, and drives the plant with what came out.</summary>
    public void Scan()
    {
        long ms = _plant.NowMs;
        NowMs = ms;
        _recorder.Sample(_inputs);
        Frame before = Shown;
        _inputs.EndSwitches = _plant.EndSwitches;
        if (_powered)
        {
            _controller.Scan(ms, _inputs, _outputs);
            Shown = Frame.From(_outputs);
        }
        else
        {
            Shown = new Frame { Ms = ms, Unpowered = true, NextDeadlineMs = ZoneController.Never };
            _outputs.NextDeadlineMs = ZoneController.Never;
        }

        _contactsMoved = false;
        _plant.Drive(Shown.Valves, Shown.Pump, Shown.Heat);
        _recorder.Take(Shown);
        if (!Shown.ShowsTheSameAs(before))
            _recorder.Sample(_inputs);
    }

    /// <summary>Everything recorded so far.</summary>
    public Trace Finish(long endMs) => _recorder.Finish(endMs);
}
