using ZoneControl.Bench.Running;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Seasons;

/// <summary>What the person at the manifold says after a zone was told to open. Null: was not looked at.</summary>
/// <param name="Moved">Zones whose valve stems moved, one bit each.</param>
/// <param name="Warmed">Zones whose actuators got warm, or whose motors were heard, one bit each.</param>
/// <param name="OpenedAfterMs">How long the stem took to its end, by a watch, ms.</param>
/// <param name="PumpHeard">The pump was heard or felt to run.</param>
public sealed record StrokeSighting(int? Moved, int? Warmed, long? OpenedAfterMs, bool? PumpHeard)
{
    /// <summary>Nobody looked.</summary>
    public static StrokeSighting None { get; } = new(null, null, null, null);
}

/// <summary>What the person says while the pump is told to run. Null: was not looked at.</summary>
/// <param name="PumpHeard">The pump was heard or felt to run.</param>
/// <param name="Passing">Zones whose loops pass water, by their flow glasses or their warmth, one bit each.</param>
public sealed record FlowSighting(bool? PumpHeard, int? Passing)
{
    /// <summary>Nobody looked.</summary>
    public static FlowSighting None { get; } = new(null, null);
}

/// <summary>The person at the manifold during a commissioning run.</summary>
public interface IWitness
{
    /// <summary>A zone is told to open from now on.</summary>
    void Begin(int zone, long ms);

    /// <summary>Time has moved on; outputs are the controller's own.</summary>
    void Watch(long ms, in Frame shown);

    /// <summary>What was seen since <see cref="Begin"/>.</summary>
    StrokeSighting Stroke(int zone);

    /// <summary>What is seen now that the pump is told to run with these zones open.</summary>
    FlowSighting Flow(int zones);

    /// <summary>Whether the pump is heard now; null when nobody listens.</summary>
    bool? PumpHeard();
}

/// <summary>Nobody is there: only contacts speak.</summary>
public sealed class NobodyThere : IWitness
{
    /// <inheritdoc/>
    public void Begin(int zone, long ms)
    {
    }

    /// <inheritdoc/>
    public void Watch(long ms, in Frame shown)
    {
    }

    /// <inheritdoc/>
    public StrokeSighting Stroke(int zone) => StrokeSighting.None;

    /// <inheritdoc/>
    public FlowSighting Flow(int zones) => FlowSighting.None;

    /// <inheritdoc/>
    public bool? PumpHeard() => null;
}

/// <summary>
/// A person who sees what a person can see: stems, flow glasses, the warmth of actuators, the sound of the pump. For runs on
/// virtual pins; it looks at the water's side and never at the wiring.
/// </summary>
public sealed class VirtualPerson(PlantModel plant, Installation installation) : IWitness
{
    private const double Moves = 0.1; // of its travel: less nobody sees
    private long _beganMs;
    private int _zone;
    private int _warmed;
    private int _moved;
    private bool _heard;
    private bool _runs;
    private long? _openedMs;
    private double[] _before = [];

    /// <inheritdoc/>
    public void Begin(int zone, long ms)
    {
        (_zone, _beganMs, _warmed, _moved, _heard, _openedMs) = (zone, ms, 0, 0, false, null);
        _before = [.. Zones().Select(plant.Travel)];
    }

    /// <inheritdoc/>
    public void Watch(long ms, in Frame shown)
    {
        _runs = installation.PumpRuns(shown.Pump, shown.Heat, shown.Valves);
        _heard |= _runs;
        int supplied = installation.ActuatorsOf(shown.Valves);
        foreach (int zone in Zones())
        {
            int bit = 1 << zone;
            bool dead = installation.Actuators.TryGetValue(zone, out ActuatorFault? fault) && fault.Dead;
            if ((supplied & bit) != 0 && !dead)
                _warmed |= bit;
            if (_before.Length > 0 && Math.Abs(plant.Travel(zone) - _before[zone]) > Moves)
                _moved |= bit;
        }

        if (_openedMs is null && plant.Travel(_zone) >= 0.999)
            _openedMs = ms - _beganMs;
    }

    /// <inheritdoc/>
    public StrokeSighting Stroke(int zone) => new(_moved, _warmed, _openedMs, _heard);

    /// <inheritdoc/>
    public FlowSighting Flow(int zones) =>
        new(_runs, Zones().Sum(zone => plant.ZoneFlowM3s(zone) > 0 ? 1 << zone : 0));

    /// <inheritdoc/>
    public bool? PumpHeard() => _runs;

    private IEnumerable<int> Zones() => Enumerable.Range(0, plant.Description.Actuators.Count);
}
