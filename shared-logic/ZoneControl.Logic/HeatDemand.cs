namespace ZoneControl.Logic;

/// <summary>
/// When heat is asked of the heat source.
/// <para>
/// HEAT-FLOW: only while the pump is on and a call asks. HEAT-FIRST-OFF: so it goes off when demand ends, a whole overrun
/// before the pump; the pump's orderly stop waits for the lead kept here.
/// </para>
/// </summary>
internal static class HeatDemand
{
    public static void Step(ControllerSettings s, ControllerState x, int dt)
    {
        bool before = x.Heat;
        x.Heat = x.Pump && x.Asked != 0;
        if (x.Heat || before)
            x.HeatAgeMs = 0;
        else
            x.HeatAgeMs = Wait.Age(x.HeatAgeMs, dt, s.HeatLeadMs);
    }
}
