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

    /// <summary>Lets time pass; <paramref name="ranOut"/> is told the zone and how far into the span its duty ran out, ms.</summary>
    public void Pass(int ms, int limitMs, Action<int, int> ranOut)
    {
        for (int zone = 0; zone < _clocks.Length; zone++)
        {
            int at = _clocks[zone].Pass(ms, limitMs);
            if (at >= 0)
                ranOut(zone, at);
        }
    }

    public void Walk(StateWalk walk)
    {
        for (int zone = 0; zone < _clocks.Length; zone++)
            _clocks[zone].Walk(walk);
    }
}
