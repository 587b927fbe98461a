namespace ZoneControl.Logic;

/// <summary>
/// Which valves are energised.
/// <para>
/// PUMP-ORDER: while the pump is on and through its rundown no valve is released unless those that stay prove minimum
/// open. OPEN-HANDOVER: while demand remains, a zone no longer planned stays open until the others prove minimum open,
/// whether the pump runs already or not, so that a change of calls never sets the start back. PUMP-OVERRUN: when demand
/// ends the zones that are proven then stay until the rundown is over, then all are released.
/// </para>
/// </summary>
internal static class ValveDrive
{
    public static void Step(ControllerSettings s, ControllerState x)
    {
        int leaving = x.Valves & ~x.Planned;
        if (leaving != 0)
            ReleaseUnplanned(s, x, leaving);
        int opening = x.Planned & ~(x.Valves | x.Resting | x.Latched);
        if (opening != 0)
            Energise(s, x, opening);
    }

    private static void ReleaseUnplanned(ControllerSettings s, ControllerState x, int leaving)
    {
        bool waterMayMove = x.Pump || x.RunningDown(s);
        if (!x.Demand)
        {
            if (!waterMayMove)
                ReleaseAll(s, x, leaving);
            else if (x.DemandAgeMs == 0)
                ReleaseWhatOthersReplace(s, x, leaving & ~x.Proven);
            return;
        }

        // A late valve proves nothing, so it need not wait for others, unless water may be moving through it all the same.
        if (!waterMayMove)
        {
            ReleaseAll(s, x, leaving & x.Late);
            leaving &= ~x.Late;
        }

        ReleaseWhatOthersReplace(s, x, leaving);
    }

    private static void ReleaseAll(ControllerSettings s, ControllerState x, int leaving)
    {
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if ((leaving & (1 << zone)) != 0)
                Release(x, zone);
        }
    }

    /// <summary>One by one, as long as those that stay prove minimum open.</summary>
    private static void ReleaseWhatOthersReplace(ControllerSettings s, ControllerState x, int leaving)
    {
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((leaving & bit) == 0)
                continue;
            int rest = (x.Proven & bit) != 0 ? x.ProvenCapacity - s.Capacity[zone] : x.ProvenCapacity;
            if (rest < s.MinimumOpen)
                continue;
            x.ProvenCapacity = rest;
            Release(x, zone);
        }
    }

    private static void Energise(ControllerSettings s, ControllerState x, int opening)
    {
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((opening & bit) == 0)
                continue;
            x.Valves |= bit;
            x.ValveAgeMs[zone] = 0;
            x.UnprovenMs[zone] = 0;
            // Seen as well: a switch made before now may be accepted only after its least time has passed.
            x.Early |= (x.Switches.Accepted | x.Switches.Seen) & bit;
        }
    }

    /// <summary>Releases one valve; it proves nothing from now on.</summary>
    public static void Release(ControllerState x, int zone)
    {
        int bit = 1 << zone;
        x.Valves &= ~bit;
        x.Proven &= ~bit;
        x.Early &= ~bit;
        x.ValveAgeMs[zone] = 0;
        x.UnprovenMs[zone] = 0;
    }
}
