namespace ZoneControl.Logic.Tests;

/// <summary>VALVE-LATE's retries and latches as the judge sees them: from releases of overdue valves.</summary>
internal sealed class JudgedLate(ControllerSettings s, JudgedValves valves)
{
    private readonly int[] _tries = new int[s.ZoneCount];
    private int _latched;

    /// <summary>Zones released for a retry whose closing time has not passed.</summary>
    public int Resting { get; private set; }

    /// <param name="o">What the scan showed.</param>
    /// <param name="reset">The reset button went down.</param>
    /// <param name="mayRetry">Somebody asked, and no water may be moving but what other valves let pass.</param>
    public string? Look(OutputImage o, bool reset, bool mayRetry)
    {
        if (reset)
        {
            valves.Forget(_latched);
            _latched = 0;
            Array.Clear(_tries);
        }

        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if (valves.Age(zone) >= s.ClosingMs[zone])
                Resting &= ~bit;
            if ((valves.ProvenBefore & bit) != 0)
                _tries[zone] = 0;
            if ((valves.Overdue & valves.OnBefore & bit) == 0 || !mayRetry)
                continue;
            if ((o.Valves & bit) != 0)
                return $"VALVE-LATE: late zone {zone} is not tried again";
            if (_tries[zone]++ >= s.ValveRetries)
                _latched |= bit;
            else
                Resting |= bit;
        }

        return o.LatchedValves == _latched ? null : $"VALVE-LATE, ALARM-LATCH: latched should be {_latched}";
    }
}
