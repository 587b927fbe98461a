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
        int contacts = x.Contacts.Accepted;
        int frostLeft = Wait.Forever;
        if ((contacts & Contact.Freeze) == 0)
            x.FrostHeatMs = 0;
        else
            frostLeft = FrostLeft(s, x, dt);

        x.Heat = x.Pump && x.AskedBy >= AskedBy.Calls && (contacts & Contact.Limit) == 0
            && ((contacts & Contact.Flow) != 0 || !s.Has(Contact.Flow))
            && frostLeft > 0
            && (before || !x.ResetNow);
        if (x.Heat || before)
            x.HeatAgeMs = 0;
        else
            x.HeatAgeMs = Wait.Age(x.HeatAgeMs, dt, s.HeatLeadMs);
        return x.Heat ? frostLeft : Wait.Forever;
    }

    /// <summary>What is left of the heat that frost gets in lockout, ms; as much as it likes out of it.</summary>
    private static int FrostLeft(ControllerSettings s, ControllerState x, int dt)
    {
        // Heat in lockout is for frost: what has passed since the last whole scan counts by what held until now.
        if (x.Heat && (x.Contacts.Before & Contact.Lockout) != 0)
            x.FrostHeatMs = Wait.Age(x.FrostHeatMs, dt, s.FreezeHeatMaxMs);
        bool inLockout = x.AskedBy == AskedBy.Freeze && x.Is(Contact.Lockout);
        return inLockout ? s.FreezeHeatMaxMs - x.FrostHeatMs : Wait.Forever;
    }
}
