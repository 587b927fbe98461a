namespace ZoneControl.Logic;

/// <summary>
/// When the pump runs.
/// <para>
/// PUMP-PROOF: only while proven capacity is at least minimum open. PUMP-TRIP: off in the very scan in which proof is
/// lost. PUMP-DELAY: on no sooner than the start delay after demand rose from none. PUMP-OVERRUN: on for the overrun after
/// demand ended, unless demand comes back or proof is lost; an overrun never starts a pump. HEAT-FIRST-OFF: an orderly
/// stop waits until heat demand has been off for its lead.
/// </para>
/// </summary>
internal static class PumpSequence
{
    /// <returns>ms until time alone starts or stops the pump, or ends its rundown.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        bool proven = x.ProvenCapacity >= s.MinimumOpen;
        if (!x.Pump)
        {
            x.PumpAgeMs = Wait.Age(x.PumpAgeMs, dt, s.PumpRundownMs);
            int toStart = s.PumpStartDelayMs - x.DemandAgeMs;
            if (x.Demand && proven && toStart <= 0)
            {
                x.Pump = true;
                x.PumpAgeMs = 0;
                return Wait.Forever;
            }

            int rundown = s.PumpRundownMs - x.PumpAgeMs;
            int next = rundown > 0 ? rundown : Wait.Forever;
            return x.Demand && toStart > 0 ? Wait.Sooner(next, toStart) : next;
        }

        if (!proven)
            return Stop(s, x);
        if (x.Demand)
            return Wait.Forever;
        int toStop = s.PumpOverrunMs - x.DemandAgeMs;
        int heatLead = x.Heat ? s.HeatLeadMs : s.HeatLeadMs - x.HeatAgeMs - dt;
        if (heatLead > toStop)
            toStop = heatLead;
        return toStop > 0 ? toStop : Stop(s, x);
    }

    private static int Stop(ControllerSettings s, ControllerState x)
    {
        x.Pump = false;
        x.PumpAgeMs = 0;
        return s.PumpRundownMs;
    }
}
