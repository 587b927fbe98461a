namespace ZoneControl.Logic;

/// <summary>
/// What asks for the pump.
/// <para>
/// SEASON-LOCKOUT: in lockout no call asks for anything; entering it while the pump runs ends demand, and so is an orderly
/// stop with overrun. VALVE-LATE: the call of a zone whose valve is latched asks for nothing that it could get.
/// PUMP-DELAY and PUMP-OVERRUN count from the moments kept here.
/// </para>
/// </summary>
internal static class Demand
{
    public static void Step(ControllerSettings s, ControllerState x, int dt)
    {
        x.Asked = x.Lockout ? 0 : x.Calls.Accepted & ~x.Latched;
        bool demand = x.Asked != 0;
        if (demand != x.Demand)
        {
            x.Demand = demand;
            x.DemandAgeMs = 0;
        }
        else
        {
            x.DemandAgeMs = Wait.Age(x.DemandAgeMs, dt, demand ? s.PumpStartDelayMs : s.PumpOverrunMs);
        }
    }
}
