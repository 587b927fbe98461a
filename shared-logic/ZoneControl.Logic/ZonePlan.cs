namespace ZoneControl.Logic;

/// <summary>
/// Which zones are to be open.
/// <para>
/// OPEN-COMPANION: zones that ask, and, while the healthy ones among them do not reach minimum open, companions in the
/// house file's order. Late valves and stuck switches are not counted on. Only when all healthy companions together do not
/// suffice are late ones that still have retries opened as well, uncounted: that is how a companion gets its retry.
/// PUMP-STUCK: while the alarm stands zones are opened to minimum open even if nobody asks. SERVICE: a hand opens what it
/// opens, without companions.
/// </para>
/// </summary>
internal static class ZonePlan
{
    public static void Step(ControllerSettings s, ControllerState x)
    {
        x.TooFew = false;
        if (x.Service)
            x.Planned = x.Hands.Accepted & s.DrivenZones & ~x.Latched;
        else if (x.Asked != 0 || x.PumpStuck)
            x.Planned = (x.Asked | Companions(s, x)) & ~s.GatedZones;
        else
            x.Planned = 0;
    }

    private static int Companions(ControllerSettings s, ControllerState x)
    {
        int missing = s.MinimumOpen - s.StandingCapacity;
        int sick = x.Sick;
        int countedOn = x.Asked & ~sick;
        for (int zone = 0; countedOn != 0 && missing > 0; zone++, countedOn >>= 1)
        {
            if ((countedOn & 1) != 0)
                missing -= s.Capacity[zone];
        }

        if (missing <= 0)
            return 0;
        int companions = 0;
        int[] order = s.CompanionOrder;
        int taken = x.Asked | sick;
        for (int i = 0; i < order.Length && missing > 0; i++)
        {
            int zone = order[i];
            if ((taken & (1 << zone)) == 0)
            {
                companions |= 1 << zone;
                missing -= s.Capacity[zone];
            }
        }

        if (missing <= 0)
            return companions;
        x.TooFew = true;
        for (int i = 0; i < order.Length; i++)
            companions |= (1 << order[i]) & ~x.Latched;
        return companions;
    }
}
