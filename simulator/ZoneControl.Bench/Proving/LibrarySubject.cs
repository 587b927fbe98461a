using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>The compiled controller of shared-logic, as it is, with its memory in reach.</summary>
public sealed class LibrarySubject : IProvable
{
    private readonly int[] _fresh;
    private readonly ZoneController _controller;

    /// <summary>Builds it in its power-up state.</summary>
    /// <exception cref="ArgumentException">A setting is not lawful.</exception>
    public LibrarySubject(ControllerSettings settings)
    {
        _controller = new ZoneController(settings);
        _fresh = new int[_controller.StateLength];
        _controller.Save(_fresh);
    }

    /// <inheritdoc/>
    public string Name => "with the controller";

    /// <inheritdoc/>
    public int StateLength => _controller.StateLength;

    /// <inheritdoc/>
    public int IdlePlace => _controller.IdlePlace;

    /// <inheritdoc/>
    public void PowerUp() => _controller.Load(_fresh, 0);

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs) => _controller.Scan(nowMs, inputs, outputs);

    /// <inheritdoc/>
    public void Save(int[] state) => _controller.Save(state);

    /// <inheritdoc/>
    public void Load(int[] state, long nowMs) => _controller.Load(state, nowMs);
}
