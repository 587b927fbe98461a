namespace ZoneControl.Logic;

/// <summary>
/// Which valves are energised.
/// <para>
/// PUMP-ORDER: while the pump is on, through its rundown, and until a flow switch has seen flow cease, no valve is released
/// unless those that stay prove minimum open. OPEN-HANDOVER: while demand remains, a zone no longer planned stays open until
/// the others prove minimum open, whether the pump runs already or not, so that a change of calls never sets the start
/// back: that is what ANSWER-ON needs. ANSWER-OFF: without demand nothing outlasts the rundown. PUMP-OVERRUN: when demand ends the zones that are proven then stay until the rundown is over, then all are
/// released. VALVE-SUPPLY: without the actuators' supply nothing is held, so all are released, and opened anew one after
/// the other when it is back. VALVE-STAGGER: what would overload the transformer waits its turn, those who ask first.
/// </para>
/// </summary>
internal static class ValveDrive
{
    /// <returns>ms until a valve that waits for the transformer may be tried again.</returns>
    public static int Step(ControllerSettings s, ControllerState x)
    {
        if (!x.Supplied)
        {
            ReleaseAll(s, x, x.Valves);
            return Wait.Forever;
        }

        int leaving = x.Valves & ~x.Planned;
        if (leaving != 0)
            ReleaseUnplanned(s, x, leaving);
        int opening = x.Planned & ~(x.Valves | x.Resting | x.Latched);
        return opening != 0 && !x.ResetNow ? Energise(s, x, opening) : Wait.Forever;
    }

    private static void ReleaseUnplanned(ControllerSettings s, ControllerState x, int leaving)
    {
        bool waterMayMove = x.WaterMayMove;
        if (!x.Demand || x.Service)
        {
            if (!waterMayMove)
                ReleaseAll(s, x, leaving);
            else if (x.Service)
                ReleaseWhatOthersReplace(s, x, leaving);
            else if (x.DemandAgeMs == 0)
                ReleaseWhatOthersReplace(s, x, leaving & ~x.Proven);
            return;
        }

        // A sick valve proves nothing, so it need not wait for others, unless water may be moving through it all the same.
        if (!waterMayMove)
        {
            ReleaseAll(s, x, leaving & x.Sick);
            leaving &= ~x.Sick;
        }

        ReleaseWhatOthersReplace(s, x, leaving);
    }

    private static void ReleaseAll(ControllerSettings s, ControllerState x, int leaving)
    {
        for (int zone = 0; leaving != 0; zone++, leaving >>= 1)
        {
            if ((leaving & 1) == 0)
                continue;
            if ((x.Proven & (1 << zone)) != 0)
                x.ProvenCapacity -= s.Capacity[zone];
            Release(x, zone);
        }
    }

    /// <summary>One by one, as long as those that stay prove minimum open.</summary>
    private static void ReleaseWhatOthersReplace(ControllerSettings s, ControllerState x, int leaving)
    {
        for (int zone = 0; leaving != 0; zone++, leaving >>= 1)
        {
            if ((leaving & 1) == 0)
                continue;
            int bit = 1 << zone;
            int rest = (x.Proven & bit) != 0 ? x.ProvenCapacity - s.Capacity[zone] : x.ProvenCapacity;
            if (rest < s.MinimumOpen)
                continue;
            x.ProvenCapacity = rest;
            Release(x, zone);
        }
    }

    /// <summary>Releases one valve; it proves nothing from now on.</summary>
    public static void Release(ControllerState x, int zone)
    {
        x.Valves &= ~(1 << zone);
        ValveProof.Closes(x, zone);
    }

    private static int Energise(ControllerSettings s, ControllerState x, int opening)
    {
        if (s.TransformerDeciVa == 0)
        {
            for (int zone = 0; zone < s.ZoneCount; zone++)
            {
                if ((opening & (1 << zone)) != 0)
                    Energise(x, zone);
            }

            return Wait.Forever;
        }

        // Those who ask, then companions, which must not take the room that one who asks waits for.
        EnergiseWhatFits(s, x, opening & x.Asked);
        if ((opening & x.Asked & ~x.Valves) == 0)
            EnergiseWhatFits(s, x, opening & ~x.Asked);
        return (opening & ~x.Valves) != 0 ? NextInrushEnd(s, x) : Wait.Forever;
    }

    private static void EnergiseWhatFits(ControllerSettings s, ControllerState x, int opening)
    {
        if (opening == 0)
            return;
        int load = LoadDeciVa(s, x);
        for (int zone = 0; opening != 0; zone++, opening >>= 1)
        {
            if ((opening & 1) == 0)
                continue;
            if (load + s.InrushDeciVa[zone] > s.TransformerDeciVa)
                return;
            Energise(x, zone);
            load += s.InrushMs[zone] > 0 ? s.InrushDeciVa[zone] : s.HoldDeciVa[zone];
        }
    }

    private static void Energise(ControllerState x, int zone)
    {
        x.Valves |= 1 << zone;
        ValveProof.Opens(x, zone);
    }

    /// <summary>What the energised valves draw, tenths of a VA.</summary>
    private static int LoadDeciVa(ControllerSettings s, ControllerState x)
    {
        int load = 0;
        int valves = x.Valves;
        for (int zone = 0; valves != 0; zone++, valves >>= 1)
        {
            if ((valves & 1) != 0)
                load += x.ValveAgeMs[zone] < s.InrushMs[zone] ? s.InrushDeciVa[zone] : s.HoldDeciVa[zone];
        }

        return load;
    }

    private static int NextInrushEnd(ControllerSettings s, ControllerState x)
    {
        int next = Wait.Forever;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if ((x.Valves & (1 << zone)) == 0)
                continue;
            int left = s.InrushMs[zone] - x.ValveAgeMs[zone];
            if (left > 0)
                next = Wait.Sooner(next, left);
        }

        return next;
    }
}
