namespace ZoneControl.Logic;

/// <summary>
/// Switched valves that do not prove in time.
/// <para>
/// VALVE-LATE: a switched valve not proven within its limit, counted from when it was energised or lost its proof, is
/// alarmed and no longer counted on. While demand remains it is released for its closing time and tried again, never inside
/// an overrun or a rundown, where water may be moving through it all the same; when the retries are used up it is latched
/// and not driven until reset. Proving clears the alarm and the count. Without the actuators' supply no valve is to blame.
/// A gated valve is alarmed and not counted on, no more: it is not ours to release.
/// </para>
/// </summary>
internal static class LateValves
{
    /// <returns>ms until time alone makes a valve late or lets it be tried again.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt, int provenBefore)
    {
        // Those that rest, lack proof, or have it only now.
        int watched = s.SwitchedZones & (x.Resting | (x.Open & ~x.Proven) | (x.Proven & ~provenBefore));
        if (watched == 0)
            return Wait.Forever;
        int next = Wait.Forever;
        int overdue = 0;
        bool supply = x.Supplied;
        // Time counts as long as there was supply, up to this scan.
        int counted = s.Has(Contact.Supply) && (x.Contacts.Before & Contact.Supply) == 0 ? 0 : dt;
        int proven = x.Proven;
        int[] unprovenMs = x.UnprovenMs;
        int justLost = provenBefore | x.SensesTurned;
        for (int zone = 0, bit = 1; bit <= watched; zone++, bit <<= 1)
        {
            if ((watched & bit) == 0)
                continue;
            if ((x.Resting & bit) != 0)
            {
                int rest = s.ClosingMs[zone] - x.ValveAgeMs[zone];
                if (rest <= 0)
                    x.Resting &= ~bit;
                else if (rest < next)
                    next = rest;
            }
            else if ((proven & bit) != 0)
            {
                unprovenMs[zone] = 0;
                x.Tries[zone] = 0;
                x.Late &= ~bit;
            }
            else
            {
                // Proof lost only now has been missing for no time yet, however long ago the last scan was that counted ages.
                int limit = s.SwitchLimitMs[zone];
                int unproven = (justLost & bit) != 0 ? 0 : unprovenMs[zone] + counted;
                if (unproven >= limit)
                {
                    unproven = limit;
                    overdue |= bit;
                }
                else if (supply && limit - unproven < next)
                {
                    next = limit - unproven;
                }

                unprovenMs[zone] = unproven;
            }
        }

        if (supply && overdue != 0)
            TakeForLate(s, x, overdue);
        return next;
    }

    private static void TakeForLate(ControllerSettings s, ControllerState x, int overdue)
    {
        x.Late |= overdue;
        bool mayRetry = x.Pump ? RunsOn(s, x) : (x.Demand || x.Service) && !x.WaterMayMove;
        int tried = mayRetry ? overdue & x.Valves : 0;
        for (int zone = 0; tried != 0; zone++, tried >>= 1)
        {
            if ((tried & 1) != 0)
                GiveUp(s, x, zone);
        }
    }

    /// <summary>The pump is on, somebody wants it, and nothing in this scan stops it.</summary>
    private static bool RunsOn(ControllerSettings s, ControllerState x)
    {
        if (x.ProvenCapacity < s.MinimumOpen || x.LimitLatched || x.FlowTrip)
            return false;
        return x.Service ? x.Is(Contact.ServicePump) : x.Demand && (!x.PriorityHolds || x.Is(Contact.Freeze));
    }

    private static void GiveUp(ControllerSettings s, ControllerState x, int zone)
    {
        int bit = 1 << zone;
        if (x.Tries[zone] >= s.ValveRetries)
        {
            x.Latched |= bit;
        }
        else
        {
            x.Tries[zone]++;
            x.Resting |= bit;
        }

        ValveDrive.Release(x, zone);
    }
}
