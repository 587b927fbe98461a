using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Running;

/// <summary>The real controller with something done to what it reads or to what it decides: a controller broken on purpose.</summary>
internal abstract class Tampered(ControllerSettings settings) : IController
{
    private readonly InputImage _inputs = new();
    private LibraryController _inner = new(settings);

    protected ControllerSettings Settings { get; } = settings;

    public string Name => GetType().Name;

    public void PowerUp() => _inner = new LibraryController(Settings);

    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        _inputs.Calls = inputs.Calls;
        _inputs.EndSwitches = inputs.EndSwitches;
        _inputs.Senses = inputs.Senses;
        _inputs.ServiceValves = inputs.ServiceValves;
        _inputs.Contacts = inputs.Contacts;
        Read(nowMs, _inputs);
        _inner.Scan(nowMs, _inputs, outputs);
        Decide(nowMs, outputs);

        // What it breaks may hang on time, so it wants to be asked again.
        outputs.NextDeadlineMs = Math.Min(outputs.NextDeadlineMs, nowMs + 1000);
    }

    protected virtual void Read(long nowMs, InputImage inputs)
    {
    }

    protected virtual void Decide(long nowMs, OutputImage outputs)
    {
    }
}
