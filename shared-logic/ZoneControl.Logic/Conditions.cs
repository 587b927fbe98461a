namespace ZoneControl.Logic;

/// <summary>
/// Works out the conditions between "wanted" and "on", all of them, with the time left where time will meet one. On
/// request and outside the scan: a page or a log asks, the controller does not need it. ANSWER-WHY publishes only the first.
/// </summary>
internal static class Conditions
{
    public static void OfPump(ControllerSettings s, ControllerState x, ConditionList list)
    {
        list.Clear();
        bool proven = x.ProvenCapacity >= s.MinimumOpen;
        list.Add(Condition.Wanted, PumpSequence.Wanted(x), ConditionList.Unknown);
        list.Add(Condition.NoLimit, !x.LimitLatched, ConditionList.Unknown);
        list.Add(Condition.NoFlowLatch, !x.FlowLatched, ConditionList.Unknown);
        list.Add(Condition.NoStrayFlow, !x.PumpStuck, StrayFlowLeft(s, x));
        list.Add(Condition.Supply, proven || x.Supplied, ConditionList.Unknown);
        list.Add(Condition.EnoughValves, proven || !x.TooFew, ConditionList.Unknown);
        list.Add(Condition.Proof, proven, ProofLeft(s, x));
        list.Add(Condition.StartDelay, x.Pump || PumpSequence.DelayLeft(s, x) <= 0,
            PumpSequence.Wanted(x) ? PumpSequence.DelayLeft(s, x) : ConditionList.Unknown);
        list.Add(Condition.Rested, x.Pump || PumpSequence.RestLeft(s, x) <= 0, PumpSequence.RestLeft(s, x));
    }

    public static void OfHeat(ControllerSettings s, ControllerState x, ConditionList list)
    {
        list.Clear();
        bool frostInLockout = x.AskedBy == AskedBy.Freeze && x.Is(Contact.Lockout);
        list.Add(Condition.PumpOn, x.Pump, ConditionList.Unknown);
        list.Add(Condition.Flow, !s.Has(Contact.Flow) || x.Is(Contact.Flow), ConditionList.Unknown);
        list.Add(Condition.LimitClosed, !x.Is(Contact.Limit), ConditionList.Unknown);
        list.Add(Condition.HeatAsked, x.AskedBy >= AskedBy.Calls, ConditionList.Unknown);
        list.Add(Condition.FrostTime, !frostInLockout || x.FrostHeatMs < s.FreezeHeatMaxMs, ConditionList.Unknown);
    }

    private static int StrayFlowLeft(ControllerSettings s, ControllerState x) =>
        x.Is(Contact.Flow) ? ConditionList.Unknown : s.PumpRundownMs - x.QuietMs;

    /// <summary>
    /// ms until time alone will have proven minimum open: the soonest moment at which the valves that time can prove, with
    /// those proven already, reach it. A switch that has not made is nothing that time can promise.
    /// </summary>
    private static int ProofLeft(ControllerSettings s, ControllerState x)
    {
        if (!x.Supplied)
            return ConditionList.Unknown;
        int best = ConditionList.Unknown;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int left = ProofLeft(s, x, zone);
            if (left == ConditionList.Unknown || (best != ConditionList.Unknown && left >= best))
                continue;
            if (CapacityBy(s, x, left) >= s.MinimumOpen)
                best = left;
        }

        return best;
    }

    private static int CapacityBy(ControllerSettings s, ControllerState x, int ms)
    {
        int capacity = x.ProvenCapacity;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int left = ProofLeft(s, x, zone);
            if (left != ConditionList.Unknown && left <= ms)
                capacity += s.Capacity[zone];
        }

        return capacity;
    }

    private static int ProofLeft(ControllerSettings s, ControllerState x, int zone)
    {
        int bit = 1 << zone;
        if ((x.Open & ~x.Proven & bit) == 0)
            return ConditionList.Unknown;
        bool switchNeeded = (s.SwitchedZones & bit) != 0;
        if (switchNeeded && (x.Switches.Accepted & x.Early & ~x.StuckSwitches & bit) == 0)
            return ConditionList.Unknown;
        return s.OpeningMs[zone] - x.ValveAgeMs[zone];
    }
}
