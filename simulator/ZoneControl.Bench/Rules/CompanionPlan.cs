using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// Which zones OPEN-COMPANION opens, worked out from the house's settings and what the controller publishes. A zone is
/// healthy when it is published neither late nor latched, and its switch not as stuck. Masks have one bit a zone.
/// </summary>
/// <param name="Companions">Healthy zones taken in the companion order until minimum open is met, without asked ones.</param>
/// <param name="LateCompanions">
/// Late zones of the companion order that may be tried again, because the healthy ones do not suffice; else none.
/// </param>
/// <param name="Reach">Capacity of everything healthy that may open: standing, asked and companion zones.</param>
/// <param name="CallsSuffice">The healthy asked zones reach minimum open by themselves.</param>
internal readonly record struct CompanionPlan(int Companions, int LateCompanions, int Reach, bool CallsSuffice)
{
    /// <summary>Nothing opens that nobody asked for.</summary>
    public static CompanionPlan None(ControllerSettings house) => new(0, 0, house.StandingCapacity, true);

    /// <summary>The plan for the asked zones: none, where it is PUMP-STUCK that needs zones open.</summary>
    /// <param name="house">The house.</param>
    /// <param name="asked">Zones that demand asks for.</param>
    /// <param name="unhealthy">Zones that cannot be counted on, latched ones included.</param>
    /// <param name="latched">Zones that are no longer driven.</param>
    public static CompanionPlan For(ControllerSettings house, int asked, int unhealthy, int latched)
    {
        int met = house.StandingCapacity + Capacities.Of(house, asked & ~unhealthy);
        int reach = met;
        bool callsSuffice = met >= house.MinimumOpen;
        int taken = 0;
        int lateOnes = 0;
        foreach (int zone in house.CompanionOrder)
        {
            int bit = 1 << zone;
            if ((asked & bit) != 0)
                continue;
            if ((unhealthy & bit) != 0)
            {
                lateOnes |= bit & ~latched;
                continue;
            }

            reach += house.Capacity[zone];
            if (met >= house.MinimumOpen)
                continue;
            taken |= bit;
            met += house.Capacity[zone];
        }

        return new CompanionPlan(taken, met < house.MinimumOpen ? lateOnes : 0, reach, callsSuffice);
    }
}

/// <summary>Sums over zones.</summary>
internal static class Capacities
{
    /// <summary>Capacity of the zones in a mask, standing capacity not included.</summary>
    public static int Of(ControllerSettings house, int zones)
    {
        int sum = 0;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((zones & (1 << zone)) != 0)
                sum += house.Capacity[zone];
        }

        return sum;
    }
}
