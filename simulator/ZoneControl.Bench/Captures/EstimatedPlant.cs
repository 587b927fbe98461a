using System.Numerics;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// What the captured outputs would do to the water of the house that the file describes: sound actuators, a sound pump, and
/// one steady water temperature. An estimate, never a measurement.
/// </summary>
internal sealed class EstimatedPlant
{
    /// <summary>Changes of valves and pump after which no more is estimated: each one has the water solved anew.</summary>
    public const int MostChanges = 500_000;

    private const int SampleMs = 1000;

    private readonly PlantModel _plant;
    private readonly House _house;
    private readonly double[] _zeros;
    private long _offsetMs;
    private long _lastMs;
    private int _valves;
    private bool _pump;
    private bool _heat;
    private bool _begun;
    private int _changes;
    private long? _firstCallMs;
    private int _strokes;

    public EstimatedPlant(House house, ScriptConditions conditions)
    {
        _house = house;
        _plant = new PlantModel(house.ToPlant(conditions));
        _zeros = new double[house.Zones.Count];
    }

    /// <summary>When estimating ended because of too many changes, ms; null while it goes on.</summary>
    public long? GaveUpMs { get; private set; }

    /// <summary>Begins with what is on; what was open before has been so for long.</summary>
    public void Begin(long ms, in Frame shown, bool inTheMiddle)
    {
        if (_begun)
            return;
        _begun = true;
        _lastMs = ms;
        _offsetMs = ms;
        if (inTheMiddle)
        {
            long settledMs = _house.Zones.Max(zone => (long)zone.ProofTime.Value.TotalMilliseconds);
            _plant.Drive(Valves(shown), false, shown.Heat);
            _plant.AdvanceTo(settledMs);
            _offsetMs = ms - settledMs;
        }

        Drive(shown);
    }

    /// <summary>Moves on to a moment and lets samples be taken on the way, at most one a second and only while anything moves.</summary>
    public void PassTo(long ms, Action<long>? sample)
    {
        if (!_begun || GaveUpMs is not null)
            return;
        for (long next = _lastMs + SampleMs; sample is not null && next < ms && _plant.IsMoving; next += SampleMs)
        {
            _plant.AdvanceTo(next - _offsetMs);
            _lastMs = next;
            sample(next);
        }

        _plant.AdvanceTo(ms - _offsetMs);
        _lastMs = ms;
    }

    /// <summary>The captured outputs from this moment on.</summary>
    public void Drive(in Frame shown)
    {
        int valves = Valves(shown);
        _strokes += BitOperations.PopCount((uint)(valves & ~_valves));
        if (valves != 0)
            _firstCallMs ??= _plant.NowMs;
        if (GaveUpMs is null && (valves != _valves || shown.Pump != _pump || shown.Heat != _heat))
        {
            _plant.Drive(valves, shown.Pump, shown.Heat);
            if (++_changes >= MostChanges)
                GaveUpMs = _lastMs;
        }

        (_valves, _pump, _heat) = (valves, shown.Pump, shown.Heat);
    }

    /// <summary>Nobody knows what the outputs are: the pump is taken to be off, so that nothing is blamed on it.</summary>
    public void Pause()
    {
        if (_begun && GaveUpMs is null)
            _plant.Drive(_valves, false, false);
        (_pump, _heat) = (false, false);
    }

    /// <summary>What it is like now.</summary>
    public PlantSample Sample(long ms, in WireMasks wires) => PlantReadings.Sample(_plant, ms, wires, _zeros.Length);

    /// <summary>What it adds up to.</summary>
    public RunTotals Totals => PlantReadings.Totals(_plant, _firstCallMs, _strokes);

    private int Valves(in Frame shown)
    {
        int gated = _house.GatedZones;
        int all = (1 << _house.Zones.Count) - 1;
        bool supplied = !shown.Unpowered && (!_house.Contacts.Has(Logic.Contact.Supply) || (shown.Contacts & Logic.Contact.Supply) != 0);
        return (((supplied ? shown.Valves : 0) & ~gated) | (shown.Senses & gated)) & all;
    }
}
