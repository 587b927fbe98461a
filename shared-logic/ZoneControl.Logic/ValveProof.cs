namespace ZoneControl.Logic;

/// <summary>
/// Which valves count as open, and how much capacity they make.
/// <para>
/// PUMP-PROOF rests on this. <i>Timed</i>: energised for the opening time without a break. <i>Switched</i>: energised and
/// its end switch made. VALVE-EARLY: a switch that was already made when its valve was energised, or makes sooner than
/// its least time, is not believed during this opening; the valve then proves when the opening time has passed as well.
/// </para>
/// </summary>
internal static class ValveProof
{
    /// <returns>ms until time alone proves another valve.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt, int switchesBefore)
    {
        int next = Wait.Forever;
        int switches = x.Switches.Accepted;
        int proven = 0;
        int capacity = s.StandingCapacity;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((x.Valves & bit) == 0)
            {
                x.ValveAgeMs[zone] = Wait.Age(x.ValveAgeMs[zone], dt, s.ClosingMs[zone]);
                continue;
            }

            int opening = s.OpeningMs[zone];
            int age = Wait.Age(x.ValveAgeMs[zone], dt, opening);
            x.ValveAgeMs[zone] = age;
            bool byTime = true;
            if ((s.SwitchedZones & bit) != 0)
            {
                if ((switches & bit) == 0)
                    continue;
                if ((switchesBefore & bit) == 0 && age < s.SwitchMinMs[zone])
                    x.Early |= bit;
                byTime = (x.Early & bit) != 0;
            }

            if (!byTime || age >= opening)
            {
                proven |= bit;
                capacity += s.Capacity[zone];
            }
            else
            {
                next = Wait.Sooner(next, opening - age);
            }
        }

        x.Proven = proven;
        x.ProvenCapacity = capacity;
        return next;
    }
}
