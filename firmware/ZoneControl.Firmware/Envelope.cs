using ZoneControl.Board;

namespace ZoneControl.Firmware;

/// <summary>
/// Contacts that switch 24 V AC are seen through optocouplers as pulses, one or two a cycle. Between scans they are sampled
/// every few ms; a contact counts as closed while a pulse was seen in the last 50 ms, two and a half cycles of 50 Hz. A scan
/// goes by the samples before it: so that a contact is seen one scan later, closing or opening, as long as the scan period is
/// at least 80 ms.
/// </summary>
public sealed class Envelope
{
    /// <summary>Time between samples, ms: less than a half-wave of 60 Hz, so that none is missed.</summary>
    public const int SampleMs = 5;

    /// <summary>A contact without a pulse for so long is open, microseconds.</summary>
    public const long HoldUs = 50000;

    private readonly bool[] _ac; // inputs that are seen through it
    private readonly long[] _seenUs; // time of the last pulse of each
    private readonly bool[] _ever;

    /// <summary>For the inputs of a plan.</summary>
    public Envelope(BoardPlan plan)
    {
        int count = plan.InputRoles.Length;
        _ac = new bool[count];
        _seenUs = new long[count];
        _ever = new bool[count];
        for (int i = 0; i < count; i++)
        {
            _ac[i] = (plan.AcKinds & (1 << Role.Kind(plan.InputRoles[i]))) != 0;
            if (_ac[i])
                Any = true;
        }
    }

    /// <summary>Whether there are any such inputs.</summary>
    public bool Any { get; }

    /// <summary>Takes in a sample.</summary>
    public void Take(bool[] closed, long nowUs)
    {
        for (int i = 0; i < _ac.Length; i++)
        {
            if (!_ac[i] || !closed[i])
                continue;
            _seenUs[i] = nowUs;
            _ever[i] = true;
        }
    }

    /// <summary>Replaces what a scan read of such inputs by what their samples say.</summary>
    public void Apply(bool[] closed, long nowUs)
    {
        for (int i = 0; i < _ac.Length; i++)
        {
            if (_ac[i])
                closed[i] = _ever[i] && nowUs - _seenUs[i] <= HoldUs;
        }
    }
}
