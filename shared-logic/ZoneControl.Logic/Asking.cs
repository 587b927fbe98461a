namespace ZoneControl.Logic;

/// <summary>
/// Who asks for the pump, and for which zones.
/// <para>
/// In order of precedence. SERVICE: hand commands govern valves and pump until they are let go or their limit has passed;
/// then they are ignored until all are let go. FREEZE: the freeze contact asks for every zone, whatever season and
/// priority say. PRIORITY: while its contact is made, and no longer than its limit, calls are withheld. SEASON-LOCKOUT: in
/// lockout no call asks; entering it while the pump runs ends demand, and so is an orderly stop with overrun. GATE: a
/// sensed valve is its zone's call. A zone whose valve is latched asks for nothing that it could get (VALVE-LATE).
/// SEASON-EXERCISE comes last (<see cref="Exercise"/>).
/// </para>
/// </summary>
internal static class Asking
{
    /// <summary>Whether a hand governs, and whether priority withholds calls.</summary>
    /// <returns>ms until time alone ends either.</returns>
    public static int Govern(ControllerSettings s, ControllerState x, int dt) =>
        Wait.Sooner(Hands(s, x, dt), Priority(s, x, dt));

    /// <summary>Who asks, and for which zones; after <see cref="Govern"/> and when late valves are known.</summary>
    public static void Step(ControllerSettings s, ControllerState x)
    {
        int asked = 0;
        AskedBy by = AskedBy.Nobody;
        if (!x.Service)
        {
            int contacts = x.Contacts.Accepted;
            int calls = (x.Calls.Accepted | x.Senses.Accepted) & ~x.Latched;
            if ((contacts & Contact.Freeze) != 0)
            {
                asked = calls | (s.DrivenZones & ~x.Latched);
                by = AskedBy.Freeze;
            }
            else if (!x.PriorityHolds && (contacts & Contact.Lockout) == 0)
            {
                asked = calls;
                by = AskedBy.Calls;
            }
        }

        x.Asked = asked;
        x.AskedBy = asked != 0 ? by : AskedBy.Nobody;
    }

    private static int Hands(ControllerSettings s, ControllerState x, int dt)
    {
        x.Service = false;
        if ((x.Hands.Accepted | (x.Contacts.Accepted & Contact.ServicePump)) == 0)
        {
            x.ServiceAgeMs = 0;
            return Wait.Forever;
        }

        bool before = (x.Hands.Before | (x.Contacts.Before & Contact.ServicePump)) != 0;
        x.ServiceAgeMs = before ? Wait.Age(x.ServiceAgeMs, dt, s.ServiceLimitMs) : 0;
        int left = s.ServiceLimitMs - x.ServiceAgeMs;
        x.Service = left > 0;
        return left > 0 ? left : Wait.Forever;
    }

    private static int Priority(ControllerSettings s, ControllerState x, int dt)
    {
        x.PriorityHolds = false;
        if (!x.Is(Contact.Priority))
        {
            x.PriorityAgeMs = 0;
            return Wait.Forever;
        }

        bool before = (x.Contacts.Before & Contact.Priority) != 0;
        x.PriorityAgeMs = before ? Wait.Age(x.PriorityAgeMs, dt, s.PriorityMaxMs) : 0;
        int left = s.PriorityMaxMs - x.PriorityAgeMs;
        x.PriorityHolds = left > 0;
        return left > 0 ? left : Wait.Forever;
    }

    /// <summary>Demand, and since when it is there or not; after <see cref="Exercise"/> has had its say.</summary>
    public static void CountDemand(ControllerSettings s, ControllerState x, int dt)
    {
        bool demand = x.Asked != 0;
        if (demand != x.Demand)
        {
            x.Demand = demand;
            x.DemandAgeMs = 0;
        }
        else if (x.ResetNow && demand && !x.Pump)
        {
            // ALARM-LATCH: what stood before the reset goes through every delay again.
            x.DemandAgeMs = 0;
        }
        else
        {
            x.DemandAgeMs = Wait.Age(x.DemandAgeMs, dt, demand ? s.PumpStartDelayMs : s.PumpOverrunMs);
        }
    }
}
