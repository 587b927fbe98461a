namespace ZoneControl.Bench.Rules;

/// <summary>One duty a zone, each with its own age.</summary>
internal sealed class ZoneDuties(int zones)
{
    private readonly DutyClock[] _clocks = new DutyClock[zones];

    /// <summary>Says which zones owe from this moment on; duties that stand keep their age.</summary>
    public void Set(int owing)
    {
        for (int zone = 0; zone < _clocks.Length; zone++)
            _clocks[zone].Set((owing & (1 << zone)) != 0);
    }

    public void Clear() => Array.Clear(_clocks);

    /// <summary>How many zones there are.</summary>
    public int Count => _clocks.Length;

    /// <summary>Lets time pass for one zone's duty.</summary>
    /// <returns>How far into the span it ran out, ms; -1 when it did not, or had before.</returns>
    public int Pass(int zone, int ms, int limitMs) => _clocks[zone].Pass(ms, limitMs);

    public void Walk(StateWalk walk)
    {
        for (int zone = 0; zone < _clocks.Length; zone++)
            _clocks[zone].Walk(walk);
    }
}
