namespace ZoneControl.Logic;

/// <summary>
/// A clock that cannot be trusted.
/// <para>
/// TIME-FAULT: a clock that jumps back, stands still for some scans with the pump on, or a scan much later than the
/// announced deadline. Pump and heat demand are off at once, valves are held for a fresh rundown, proofs and delays begin
/// again, latches stay. The alarm stands until reset.
/// </para>
/// </summary>
internal static class ClockWatch
{
    /// <summary>Looks at the time of this scan; true when it cannot be trusted.</summary>
    public static bool Step(ControllerSettings s, ControllerState x, long nowMs, long lastMs, long deadlineMs)
    {
        x.Stalled = nowMs == lastMs && x.Pump ? x.Stalled + 1 : 0;
        return nowMs < lastMs
            || x.Stalled >= s.StallScans
            || (nowMs > deadlineMs && nowMs - deadlineMs > s.StallLimitMs);
    }

    /// <summary>Everything off that can be, and every time begun again.</summary>
    public static void Fault(ControllerSettings s, ControllerState x)
    {
        x.TimeFault = true;
        x.Stalled = 0;
        x.Pump = false;
        x.Heat = false;
        x.RundownMs = 0;
        x.RestMs = 0;
        x.StartAgeMs = 0;
        x.HeatAgeMs = 0;
        x.NoFlowMs = 0;
        x.FlowSeen = false;
        x.QuietMs = 0;
        // What has run out stays so until it is let go.
        if (x.PriorityHolds)
            x.PriorityAgeMs = 0;
        if (x.Service)
            x.ServiceAgeMs = 0;
        if (x.SupplyWaitMs > 0)
            x.SupplyWaitMs = SupplyWatch.ToBeAccepted(s);
        x.Proven = 0;
        x.ProvenCapacity = s.StandingCapacity;
        x.Moving = x.MayMove;
        if (x.Demand)
            x.DemandAgeMs = 0;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            x.ValveAgeMs[zone] = 0;
            x.UnprovenMs[zone] = 0;
        }

        // Switches made by now were made before any time that can be trusted.
        x.Early = x.Open & (x.Switches.Accepted | x.Switches.Seen);
        x.Calls.Restart();
        x.Switches.Restart();
        x.Senses.Restart();
        x.Hands.Restart();
        x.Contacts.Restart();
    }
}
