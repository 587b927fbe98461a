namespace ZoneControl.Logic;

/// <summary>
/// Whether the lack of the actuators' supply may be told.
/// <para>
/// VALVE-SUPPLY: without supply nothing is proven, from power-up on. But its contact counts as open until it has been
/// accepted, so after power-up there is no alarm before a closed one could have been.
/// </para>
/// </summary>
internal static class SupplyWatch
{
    /// <returns>ms until the alarm may be raised.</returns>
    public static int Step(ControllerState x, int dt)
    {
        int left = x.SupplyWaitMs;
        if (left == 0)
            return Wait.Forever;
        left -= dt;
        if (left <= 0 || x.Is(Contact.Supply))
            left = 0;
        x.SupplyWaitMs = left;
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
