namespace ZoneControl.Logic;

/// <summary>
/// Why the pump is off.
/// <para>
/// ANSWER-WHY: with demand and the pump off exactly one reason, the first unmet condition in the order of
/// <see cref="HoldReason"/>. Calls that ask for nothing are explained too: by a hand, priority, lockout or latched valves.
/// </para>
/// </summary>
internal static class HoldReasons
{
    public static HoldReason FirstUnmet(ControllerSettings s, ControllerState x)
    {
        if (x.Pump)
            return HoldReason.None;
        if (!PumpSequence.Wanted(x))
            return Withheld(x);
        if (x.LimitLatched)
            return HoldReason.Limit;
        if (x.FlowLatched)
            return HoldReason.FlowLatched;
        if (x.PumpStuck)
            return HoldReason.PumpStuck;
        if (x.ProvenCapacity < s.MinimumOpen)
        {
            if (!x.Supplied)
                return HoldReason.Supply;
            return x.TooFew ? HoldReason.TooFewValves : HoldReason.Proof;
        }

        if (PumpSequence.DelayLeft(s, x) > 0)
            return HoldReason.StartDelay;
        return PumpSequence.RestLeft(s, x) > 0 ? HoldReason.Rest : HoldReason.Reset;
    }

    private static HoldReason Withheld(ControllerState x)
    {
        if ((x.Calls.Accepted | x.Senses.Accepted) == 0)
            return HoldReason.None;
        if (x.Service)
            return HoldReason.Service;
        if (x.PriorityHolds)
            return HoldReason.Priority;
        return x.Is(Contact.Lockout) ? HoldReason.Lockout : HoldReason.ValveLatched;
    }
}
