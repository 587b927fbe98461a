namespace ZoneControl.Logic;

/// <summary>
/// When heat is asked of the heat source.
/// <para>
/// HEAT-FLOW: only while the pump is on, flow is seen where a flow switch is fitted, the high limit is closed, and a call
/// or the freeze contact asks. HEAT-FIRST-OFF: so it goes off when demand ends, before the pump; the pump's orderly stop
/// waits for the lead kept here. FREEZE: in lockout frost gets heat for no longer than its limit.
/// </para>
/// </summary>
internal static class HeatDemand
{
    /// <returns>ms until time alone ends heat for frost, or the lead.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        bool before = x.Heat;
        bool frostInLockout = x.AskedBy == AskedBy.Freeze && x.Is(Contact.Lockout);
        // Heat in lockout is for frost: what has passed since the last whole scan counts by what held until now.
        bool heatedInLockout = before && (x.Contacts.Before & Contact.Lockout) != 0;
        if (!x.Is(Contact.Freeze))
            x.FrostHeatMs = 0;
        else if (heatedInLockout)
            x.FrostHeatMs = Wait.Age(x.FrostHeatMs, dt, s.FreezeHeatMaxMs);

        x.Heat = x.Pump && x.AskedBy >= AskedBy.Calls && !x.Is(Contact.Limit)
            && (!s.Has(Contact.Flow) || x.Is(Contact.Flow))
            && !(frostInLockout && x.FrostHeatMs >= s.FreezeHeatMaxMs)
            && (before || !x.ResetNow);
        if (x.Heat || before)
            x.HeatAgeMs = 0;
        else
            x.HeatAgeMs = Wait.Age(x.HeatAgeMs, dt, s.HeatLeadMs);
        return x.Heat && frostInLockout ? s.FreezeHeatMaxMs - x.FrostHeatMs : Wait.Forever;
    }
}
