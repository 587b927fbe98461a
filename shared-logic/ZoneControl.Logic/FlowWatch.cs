namespace ZoneControl.Logic;

/// <summary>
/// What a flow switch tells about the pump.
/// <para>
/// PUMP-FLOW: no flow within its time of a start, or none for its time while running, trips the pump; it is tried again so
/// many times, after its rest, then latched. PUMP-STUCK: flow while the pump has been off for its rundown is alarmed as
/// "pump or switch"; until there has been none for a rundown, starts and heat demand are withheld and zones are opened to
/// minimum open.
/// </para>
/// </summary>
internal static class FlowWatch
{
    /// <returns>ms until time alone trips the pump, or raises or clears the alarm.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        x.FlowTrip = false;
        if (!s.Has(Contact.Flow))
            return Wait.Forever;
        return x.Pump ? WatchRunning(s, x, dt) : WatchStopped(s, x, dt);
    }

    private static int WatchRunning(ControllerSettings s, ControllerState x, int dt)
    {
        if (x.Is(Contact.Flow))
        {
            x.FlowSeen = true;
            x.NoFlowMs = 0;
            return Wait.Forever;
        }

        int limit = x.FlowSeen ? s.FlowLossMs : s.FlowProofMs;
        bool justLost = (x.Contacts.Before & Contact.Flow) != 0;
        x.NoFlowMs = justLost ? 0 : Wait.Age(x.NoFlowMs, dt, limit);
        int left = limit - x.NoFlowMs;
        if (left > 0)
            return left;
        x.FlowTrip = true;
        if (x.FlowTries >= s.FlowRetries)
            x.FlowLatched = true;
        else
            x.FlowTries++;
        return Wait.Forever;
    }

    private static int WatchStopped(ControllerSettings s, ControllerState x, int dt)
    {
        x.NoFlowMs = 0;
        x.FlowSeen = false;
        if (x.Is(Contact.Flow))
        {
            x.QuietMs = 0;
            int rundown = s.PumpRundownMs - Wait.Age(x.RundownMs, dt, s.PumpRundownMs);
            if (rundown > 0)
                return rundown;
            x.PumpStuck = true;
            return Wait.Forever;
        }

        if (!x.PumpStuck)
            return Wait.Forever;
        bool justCeased = (x.Contacts.Before & Contact.Flow) != 0;
        x.QuietMs = justCeased ? 0 : Wait.Age(x.QuietMs, dt, s.PumpRundownMs);
        int left = s.PumpRundownMs - x.QuietMs;
        if (left > 0)
            return left;
        x.PumpStuck = false;
        x.QuietMs = 0;
        return Wait.Forever;
    }
}
