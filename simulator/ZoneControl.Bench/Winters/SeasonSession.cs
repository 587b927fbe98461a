using ZoneControl.Bench.Running;
using ZoneControl.Logic;
using ZoneControl.Plant;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Winters;

/// <summary>
/// A controller and a heated house joined in virtual time. From one scan it goes straight to the next at which something could
/// change: the controller's deadline, a thermostat's change of mind, an end switch, a contact; on the way the house changes by
/// itself with strokes, heat source and weather. Scans fall on multiples of the scan period.
/// </summary>
internal sealed class SeasonSession
{
    private readonly HeatedHouse _house;
    private readonly IController _controller;
    private readonly BenchWiring _wiring;
    private readonly InputImage _inputs = new();
    private readonly OutputImage _outputs = new();
    private readonly Action<Frame>? _watch;
    private readonly bool _everyScan;
    private readonly long _periodMs;

    private long _scanMs = -1;
    private long _deadlineMs;
    private bool _moved = true;
    private Frame _shown;

    public SeasonSession(
        ControllerSettings settings, HeatedHouse house, IController controller, double flowSwitchAtM3s, SeasonOptions options)
    {
        _house = house;
        _controller = controller;
        _periodMs = settings.ScanPeriodMs;
        _everyScan = options.EveryScan;
        _watch = options.Watch;
        _wiring = new BenchWiring(settings, house.Water) { FlowSwitchAtM3s = flowSwitchAtM3s };
    }

    /// <summary>Scans made.</summary>
    public long Scans { get; private set; }

    /// <summary>Contacts, faults and supplies, to be moved between <see cref="RunBefore"/> and <see cref="Scan"/>.</summary>
    public BenchWiring Wiring => _wiring;

    /// <summary>Something outside was moved: the next scan sees it.</summary>
    public void Moved() => _moved = true;

    /// <summary>The first scan time at or after a moment, ms.</summary>
    public long OnGrid(long ms) => (ms + _periodMs - 1) / _periodMs * _periodMs;

    /// <summary>Runs until the house stands at a scan time that is the given one or the last needed before; true if at the given one.</summary>
    public bool RunBefore(long untilMs)
    {
        while (true)
        {
            long next = Walk(Math.Min(NextScan(), untilMs));
            if (next >= untilMs)
                return true;
            Scan();
        }
    }

    /// <summary>Scans at the moment that the house has reached.</summary>
    public void Scan()
    {
        long ms = _scanMs = _house.NowMs;
        Scans++;
        int contacts = _wiring.Contacts;
        int switches = _wiring.Switches;
        int calls = _wiring.Calls = _house.Heat.Calls;
        Frame shown = Decide(ms);
        _wiring.Drive(shown);
        _house.Follow();
        if (_watch is not null && (Scans == 1 || !shown.ShowsTheSameAs(_shown)))
            _watch(shown);
        _shown = shown;
        _moved = _wiring.Contacts != contacts || _wiring.Switches != switches || _wiring.Calls != calls;
    }

    /// <summary>Power comes back: the controller begins anew.</summary>
    public void SetPower(bool on)
    {
        if (on && !_wiring.Powered)
            _controller.PowerUp();
        _wiring.Powered = on;
    }

    private long NextScan()
    {
        if (_scanMs < 0)
            return 0;
        long soonest = _scanMs + _periodMs;
        if (_everyScan || _moved)
            return soonest;
        long due = Math.Min(_deadlineMs, _house.Water.NextSwitchChangeMs);
        return due >= PlantModel.Never - _periodMs ? due : Math.Max(soonest, OnGrid(due));
    }

    /// <summary>Moves the house on to a scan time, or to an earlier one if a contact changes on the way.</summary>
    private long Walk(long scanMs)
    {
        int contacts = _wiring.Contacts;
        while (true)
        {
            long next = Math.Min(_house.NextEventMs, scanMs);
            bool asked = _house.AdvanceTo(next);
            if (asked || _wiring.Contacts != contacts)
                scanMs = Math.Min(scanMs, Math.Max(_scanMs + _periodMs, OnGrid(next)));
            if (next >= scanMs)
                return scanMs;
        }
    }

    private Frame Decide(long ms)
    {
        if (!_wiring.Powered)
        {
            _deadlineMs = ZoneController.Never;
            return new Frame { Ms = ms, Unpowered = true, NextDeadlineMs = ZoneController.Never };
        }

        _wiring.Read(_inputs);
        _controller.Scan(ms, _inputs, _outputs);
        _deadlineMs = _outputs.NextDeadlineMs;
        return Frame.From(_outputs);
    }
}
