namespace ZoneControl.Logic;

/// <summary>
/// Which valves count as open, and how much capacity they make.
/// <para>
/// PUMP-PROOF rests on this. <i>Timed</i>: energised for the opening time without a break. <i>Switched</i>: energised and
/// its end switch made. VALVE-EARLY: a switch that was already made when its valve was energised, or makes sooner than
/// its least time, is not believed during this opening; the valve then proves when the opening time has passed as well.
/// VALVE-STUCK: a switch still made when its valve has been released for its closing time proves nothing, until it has
/// been seen open. VALVE-SUPPLY: without the actuators' supply nothing that we drive is proven. GATE: a valve that a panel
/// drives is energised while its sense says so.
/// </para>
/// </summary>
internal static class ValveProof
{
    /// <returns>ms until time alone proves another valve, or shows a switch to be stuck.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        TakeSenses(s, x); // what turns now has been so for no time yet, however long ago the last whole scan was
        int turned = x.SensesTurned;
        int next = Wait.Forever;
        int switches = x.Switches.Accepted;
        int made = x.Switches.Rose;
        bool supply = !s.Has(Contact.Supply) || x.Is(Contact.Supply);
        int unsupplied = supply ? 0 : s.DrivenZones;
        int proven = 0;
        int capacity = s.StandingCapacity;
        x.StuckSwitches &= switches;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((x.Open & bit) == 0)
            {
                int closing = s.ClosingMs[zone];
                int released = Wait.Age(x.ValveAgeMs[zone], (turned & bit) != 0 ? 0 : dt, closing);
                x.ValveAgeMs[zone] = released;
                if ((switches & bit) == 0)
                    continue;
                if (released >= closing)
                    x.StuckSwitches |= bit;
                else
                    next = Wait.Sooner(next, closing - released);
                continue;
            }

            int opening = s.OpeningMs[zone];
            int age = Wait.Age(x.ValveAgeMs[zone], (turned & bit) != 0 ? 0 : dt, opening);
            x.ValveAgeMs[zone] = age;
            bool byTime = true;
            if ((s.SwitchedZones & bit) != 0)
            {
                if ((made & bit) != 0 && age < s.SwitchMinMs[zone])
                    x.Early |= bit;
                if ((switches & ~x.StuckSwitches & bit) == 0)
                    continue;
                byTime = (x.Early & bit) != 0;
            }

            if ((unsupplied & bit) != 0)
                continue;
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

    private static void TakeSenses(ControllerSettings s, ControllerState x)
    {
        int changed = (x.Open ^ x.Senses.Accepted) & s.GatedZones;
        x.SensesTurned = changed;
        if (changed == 0)
            return;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((changed & bit) == 0)
                continue;
            if ((x.Open & bit) == 0)
                Opens(x, zone);
            else
                Closes(x, zone);
        }
    }

    /// <summary>A zone's valves are energised from this scan on; what they prove has yet to come.</summary>
    public static void Opens(ControllerState x, int zone)
    {
        int bit = 1 << zone;
        x.Open |= bit;
        x.ValveAgeMs[zone] = 0;
        x.UnprovenMs[zone] = 0;
        // Seen as well: a switch made before now may be accepted only after its least time has passed.
        x.Early |= (x.Switches.Accepted | x.Switches.Seen) & bit;
    }

    /// <summary>A zone's valves are released from this scan on; they prove nothing.</summary>
    public static void Closes(ControllerState x, int zone)
    {
        int bit = ~(1 << zone);
        x.Open &= bit;
        x.Proven &= bit;
        x.Early &= bit;
        x.ValveAgeMs[zone] = 0;
        x.UnprovenMs[zone] = 0;
    }
}
