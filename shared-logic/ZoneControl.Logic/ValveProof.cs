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
    /// <remarks>Only valves that are on their way are looked at one by one; the rest is settled for all at once, in masks.</remarks>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        TakeSenses(s, x);
        int switches = x.Switches.Accepted;
        int unsupplied = x.Supplied ? 0 : s.DrivenZones;
        x.StuckSwitches &= switches;

        int next = Move(s, x, dt, unsupplied);
        int moving = x.Moving;
        int open = x.Open & ~unsupplied;
        x.StuckSwitches |= switches & ~(x.Open | moving);
        int believed = switches & ~x.StuckSwitches;
        int proven = open & ((believed & ~x.Early) | (~moving & (~s.SwitchedZones | (believed & x.Early))));
        if (proven != x.Proven || x.SensesTurned != 0)
            x.ProvenCapacity = s.StandingCapacity + Capacity(s, proven);
        x.Proven = proven;
        return next;
    }

    /// <summary>
    /// Counts the times of valves that open or close, and doubts switches that make too soon. A sensed valve that turns now
    /// has been so for no time yet, however long ago the last whole scan was.
    /// </summary>
    private static int Move(ControllerSettings s, ControllerState x, int dt, int unsupplied)
    {
        int moving = x.Moving & ~x.SensesTurned;
        if (moving == 0)
            return Wait.Forever;
        int made = x.Switches.Rose & x.Open & moving;
        if (made != 0)
            Doubt(s, x, dt, made);
        int switches = x.Switches.Accepted;
        int open = x.Open;
        // Only time can settle these: switches that should have opened, valves without one, and switches that made too soon.
        int timed = (~open & switches) | (open & ~unsupplied & (~s.SwitchedZones | (switches & ~x.StuckSwitches & x.Early)));
        int next = Wait.Forever;
        int[] ages = x.ValveAgeMs;
        for (int zone = 0, bit = 1; bit <= moving; zone++, bit <<= 1)
        {
            if ((moving & bit) == 0)
                continue;
            int age = ages[zone] + dt;
            int time = (open & bit) != 0 ? s.OpeningMs[zone] : s.ClosingMs[zone];
            if (age >= time)
            {
                age = time; // counted no further
                x.Moving &= ~bit;
            }
            else if ((timed & bit) != 0 && time - age < next)
            {
                next = time - age;
            }

            ages[zone] = age;
        }

        return next;
    }

    private static void Doubt(ControllerSettings s, ControllerState x, int dt, int made)
    {
        for (int zone = 0; made != 0; zone++, made >>= 1)
        {
            if ((made & 1) != 0 && x.ValveAgeMs[zone] + dt < s.SwitchMinMs[zone])
                x.Early |= 1 << zone;
        }
    }

    private static int Capacity(ControllerSettings s, int zones)
    {
        int capacity = 0;
        for (int zone = 0; zones != 0; zone++, zones >>= 1)
        {
            if ((zones & 1) != 0)
                capacity += s.Capacity[zone];
        }

        return capacity;
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
        x.Moving |= bit;
        x.ValveAgeMs[zone] = 0;
        x.UnprovenMs[zone] = 0;
        // Seen as well: a switch made before now may be accepted only after its least time has passed.
        x.Early |= (x.Switches.Accepted | x.Switches.Seen) & bit;
    }

    /// <summary>A zone's valves are released from this scan on; they prove nothing.</summary>
    public static void Closes(ControllerState x, int zone)
    {
        int bit = 1 << zone;
        x.Open &= ~bit;
        x.Proven &= ~bit;
        x.Early &= ~bit;
        x.Moving = (x.Moving | bit) & x.MayMove;
        x.ValveAgeMs[zone] = 0;
        x.UnprovenMs[zone] = 0;
    }
}
