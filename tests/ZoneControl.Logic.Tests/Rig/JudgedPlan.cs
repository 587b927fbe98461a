namespace ZoneControl.Logic.Tests;

/// <summary>Which zones the rules let be open, worked out from who asks and from published alarms.</summary>
internal static class JudgedPlan
{
    /// <summary>
    /// OPEN-COMPANION: a healthy companion is wanted while standing capacity, healthy askers and the healthy companions
    /// before it fall short; late ones, while all healthy ones together do.
    /// </summary>
    public static int Wanted(ControllerSettings s, int asked, int sick, int latched, out bool tooFew)
    {
        int wanted = asked;
        int sum = s.StandingCapacity + Sum(s, asked & ~sick);
        int[] companions = s.CompanionOrder.Where(z => !Bits.Has(asked, z)).ToArray();
        foreach (int zone in companions.Where(z => !Bits.Has(sick, z)))
        {
            if (sum >= s.MinimumOpen)
                break;
            wanted |= 1 << zone;
            sum += s.Capacity[zone];
        }

        tooFew = sum < s.MinimumOpen;
        return (tooFew ? wanted | Bits.Of(companions) & ~latched : wanted) & ~s.GatedZones;
    }

    public static int Sum(ControllerSettings s, int zones)
    {
        int sum = 0;
        for (int zone = 0; zone < s.ZoneCount; zone++)
            sum += Bits.Has(zones, zone) ? s.Capacity[zone] : 0;
        return sum;
    }

    public static bool Enough(ControllerSettings s, int proven) => s.StandingCapacity + Sum(s, proven) >= s.MinimumOpen;
}
