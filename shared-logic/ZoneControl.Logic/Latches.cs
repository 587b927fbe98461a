namespace ZoneControl.Logic;

/// <summary>
/// Latched alarms and the reset button.
/// <para>
/// HEAT-LIMIT: an open floor-supply limit latches; pump and heat demand are off in that scan. ALARM-LATCH: latched alarms,
/// and what they forbid, stay until the moment the reset button goes down; one that is held or jumpered does nothing.
/// Nothing goes on in that scan, and standing demand goes through every delay again. Power-up forgets every latch.
/// </para>
/// </summary>
internal static class Latches
{
    public static void Step(ControllerState x)
    {
        x.ResetNow = (x.Contacts.Rose & Contact.Reset) != 0;
        if (x.ResetNow)
            Clear(x);
        if (x.Is(Contact.Limit))
            x.LimitLatched = true;
    }

    private static void Clear(ControllerState x)
    {
        x.Late &= ~x.Latched;
        x.Latched = 0;
        for (int zone = 0; zone < x.Tries.Length; zone++)
            x.Tries[zone] = 0;
        x.FlowLatched = false;
        x.FlowTries = 0;
        x.LimitLatched = false;
        x.TimeFault = false;
        x.PutOff = false;
    }
}
