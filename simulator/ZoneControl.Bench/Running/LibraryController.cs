using ZoneControl.Logic;

namespace ZoneControl.Bench.Running;

/// <summary>The compiled controller of shared-logic, as it is.</summary>
public sealed class LibraryController : IController
{
    private readonly ControllerSettings _settings;
    private ZoneController _controller;

    /// <summary>Builds it in its power-up state.</summary>
    /// <exception cref="ArgumentException">A setting is not lawful.</exception>
    public LibraryController(ControllerSettings settings)
    {
        _settings = settings;
        _controller = new ZoneController(settings);
    }

    /// <inheritdoc/>
    public string Name => "with the controller";

    /// <inheritdoc/>
    public void PowerUp() => _controller = new ZoneController(_settings);

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs) => _controller.Scan(nowMs, inputs, outputs);

    /// <summary>Lists the conditions between "wanted" and "on" for pump and heat demand, as of the last scan.</summary>
    public void Explain(ConditionList pump, ConditionList heat)
    {
        _controller.ExplainPump(pump);
        _controller.ExplainHeat(heat);
    }
}
