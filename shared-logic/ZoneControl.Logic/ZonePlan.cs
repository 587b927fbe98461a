namespace ZoneControl.Logic;

/// <summary>
/// Which zones are to be open.
/// <para>
/// OPEN-COMPANION: zones that call, and, while the healthy ones among them do not reach minimum open, companions in the
/// house file's order. Late valves are not counted on. Only when all healthy companions together do not suffice are late
/// ones that still have retries opened as well, uncounted: that is how a companion gets its retry.
/// </para>
/// </summary>
internal static class ZonePlan
{
    public static void Step(ControllerSettings s, ControllerState x)
    {
        int asked = x.Asked;
        x.Planned = asked;
        x.TooFew = false;
        if (asked == 0)
            return;

        int capacity = s.StandingCapacity;
        int countedOn = asked & ~x.Late;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if ((countedOn & (1 << zone)) != 0)
                capacity += s.Capacity[zone];
        }

        int[] order = s.CompanionOrder;
        int spare = ~(asked | x.Late);
        for (int i = 0; i < order.Length && capacity < s.MinimumOpen; i++)
        {
            int zone = order[i];
            if ((spare & (1 << zone)) != 0)
            {
                x.Planned |= 1 << zone;
                capacity += s.Capacity[zone];
            }
        }

        if (capacity >= s.MinimumOpen)
            return;
        x.TooFew = true;
        for (int i = 0; i < order.Length; i++)
            x.Planned |= 1 << order[i] & ~x.Latched;
    }
}
