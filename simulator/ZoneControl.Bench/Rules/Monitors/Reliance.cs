namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// A pump that runs on zones which prove nothing: proven capacity falls short without them and would not with them. A start
/// so is a breach at once, running on so after two scans, as in PUMP-TRIP.
/// </summary>
internal struct Reliance
{
    private DutyClock _relying;

    public void Clear() => _relying.Clear();

    /// <summary>True when the pump is started so in this frame.</summary>
    public bool Judge(Evidence seen, int zones)
    {
        bool relies = seen.Capacity < seen.MinimumOpen && seen.CapacityOf(seen.Proven | zones) >= seen.MinimumOpen;
        _relying.Set(seen.Now.Pump && relies);
        return seen.PumpWentOn && relies;
    }

    /// <summary>How far into the span it ran out, ms; -1 when it did not.</summary>
    public int Pass(int ms, int limitMs) => _relying.Pass(ms, limitMs);

    public void Walk(StateWalk walk) => _relying.Walk(walk);
}
