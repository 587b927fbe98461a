using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Seasons;

/// <summary>
/// A controller as it is wired into a house: between its terminals and the plant lies an <see cref="Installation"/>. What it
/// shows at its own terminals is kept, because that is all a commissioning run may see.
/// </summary>
internal sealed class InstalledController(IController inner, Installation installation) : IController
{
    private readonly InputImage _inputs = new();

    /// <summary>What the controller itself shows.</summary>
    public Frame Shown { get; private set; }

    /// <inheritdoc/>
    public string Name => inner.Name;

    /// <inheritdoc/>
    public void PowerUp() => inner.PowerUp();

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        _inputs.Calls = inputs.Calls;
        _inputs.EndSwitches = installation.TerminalsOf(inputs.EndSwitches);
        _inputs.Senses = inputs.Senses;
        _inputs.ServiceValves = inputs.ServiceValves;
        _inputs.Contacts = inputs.Contacts;
        inner.Scan(nowMs, _inputs, outputs);
        Shown = Frame.From(outputs);
        bool pump = installation.PumpRuns(outputs.Pump, outputs.Heat, outputs.Valves);
        outputs.Valves = installation.ActuatorsOf(outputs.Valves);
        outputs.Pump = pump;
    }
}
