namespace ZoneControl.Logic;

/// <summary>
/// Whether the actuators have their supply, and whether its lack may be told.
/// <para>
/// VALVE-SUPPLY: without supply nothing is proven, from power-up on. But its contact counts as open until it has been
/// accepted, so after power-up there is no alarm before a closed one could have been.
/// </para>
/// </summary>
internal static class SupplyWatch
{
    /// <returns>ms until the alarm may be raised.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        if (!s.Has(Contact.Supply))
            return Wait.Forever;
        x.Supplied = x.Is(Contact.Supply);
        if (x.SupplyWaitMs == 0)
            return Wait.Forever;
        int left = x.SupplyWaitMs - dt; // over no later than a closed contact is accepted
        x.SupplyWaitMs = left > 0 ? left : 0;
        return left > 0 ? left : Wait.Forever;
    }

    /// <summary>How long a contact that is closed takes to be accepted, ms; at least until the scan after.</summary>
    public static int ToBeAccepted(ControllerSettings s)
    {
        if (!s.Has(Contact.Supply))
            return 0;
        int debounce = s.ContactDebounceMs[Contact.Place(Contact.Supply)];
        return debounce > 0 ? debounce : 1;
    }
}
