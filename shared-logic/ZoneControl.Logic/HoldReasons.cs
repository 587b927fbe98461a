namespace ZoneControl.Logic;

/// <summary>
/// Why the pump is off.
/// <para>
/// ANSWER-WHY: with demand and the pump off exactly one reason, the first unmet condition in the order of
/// <see cref="HoldReason"/>. Calls that ask for nothing are explained too: by lockout, or by their latched valves.
/// </para>
/// </summary>
internal static class HoldReasons
{
    public static HoldReason FirstUnmet(ControllerSettings s, ControllerState x)
    {
        if (x.Pump || x.Calls.Accepted == 0)
            return HoldReason.None;
        if (x.Lockout)
            return HoldReason.Lockout;
        if (!x.Demand)
            return HoldReason.ValveLatched;
        if (x.ProvenCapacity < s.MinimumOpen)
            return x.TooFew ? HoldReason.TooFewValves : HoldReason.Proof;
        return HoldReason.StartDelay;
    }
}
