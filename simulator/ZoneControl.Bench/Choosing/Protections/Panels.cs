using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>The pump straight to the calls, with some zones' valves held open by hand day and night.</summary>
/// <param name="settings">The controller's settings: which contacts there are and what they mean.</param>
/// <param name="held">The zones held open, one bit each.</param>
public sealed class HeldOpen(ControllerSettings settings, int held) : IController
{
    private readonly StraightWiring _panel = new(settings);

    /// <inheritdoc/>
    public string Name => "valve held open";

    /// <inheritdoc/>
    public void PowerUp() => _panel.PowerUp();

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        _panel.Scan(nowMs, inputs, outputs);
        outputs.Valves |= held;
    }
}

/// <summary>A time relay between the calls and the pump: it and the heat source start so long after the first call.</summary>
/// <param name="settings">The controller's settings: which contacts there are and what they mean.</param>
/// <param name="delayMs">The relay's time, ms.</param>
public sealed class DelayedStart(ControllerSettings settings, int delayMs) : IController
{
    private readonly StraightWiring _panel = new(settings);
    private long _since = -1;

    /// <inheritdoc/>
    public string Name => "start delay";

    /// <inheritdoc/>
    public void PowerUp()
    {
        _panel.PowerUp();
        _since = -1;
    }

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        _panel.Scan(nowMs, inputs, outputs);
        if (!outputs.Pump)
        {
            _since = -1;
            return;
        }

        if (_since < 0)
            _since = nowMs;
        bool over = nowMs - _since >= delayMs;
        outputs.Pump = outputs.Heat = over;
        if (!over)
            outputs.NextDeadlineMs = _since + delayMs;
    }
}

/// <summary>
/// End switches side by side in the pump's circuit, as zone panels have it: the pump runs while any calling zone's switch is
/// made. A two-wire zone has none, so it starts the pump with its call.
/// </summary>
/// <param name="settings">The controller's settings: which contacts there are and what they mean.</param>
public sealed class EndSwitchInterlock(ControllerSettings settings) : IController
{
    private readonly StraightWiring _panel = new(settings);

    /// <inheritdoc/>
    public string Name => "end-switch interlock";

    /// <inheritdoc/>
    public void PowerUp() => _panel.PowerUp();

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        _panel.Scan(nowMs, inputs, outputs);
        int calls = outputs.AcceptedCalls | outputs.AcceptedSenses;
        bool open = (calls & (outputs.AcceptedSwitches | ~settings.SwitchedZones)) != 0;
        outputs.Pump = outputs.Heat = open;
    }
}
