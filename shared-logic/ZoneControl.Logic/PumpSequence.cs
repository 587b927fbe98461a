namespace ZoneControl.Logic;

/// <summary>
/// When the pump runs.
/// <para>
/// PUMP-PROOF: only while proven capacity is at least minimum open. PUMP-TRIP: off in the very scan in which proof is
/// lost. PUMP-DELAY: on no sooner than the start delay after demand rose from none. PUMP-REST: not before its least time
/// off, nor too soon after the last start. PUMP-OVERRUN: on for the overrun after demand ended, unless demand comes back
/// or proof is lost; an overrun never starts a pump. HEAT-FIRST-OFF: an orderly stop waits until heat demand has been off
/// for its lead. PRIORITY and SERVICE: they stop the pump without an overrun; a hand starts it without the delay.
/// </para>
/// </summary>
internal static class PumpSequence
{
    /// <returns>ms until time alone starts or stops the pump, or ends its rundown.</returns>
    public static int Step(ControllerSettings s, ControllerState x, int dt)
    {
        bool proven = x.ProvenCapacity >= s.MinimumOpen;
        x.StartAgeMs = Wait.Age(x.StartAgeMs, dt, s.PumpStartIntervalMs);
        if (!x.Pump)
            return Rest(s, x, dt, proven);
        if (!proven || x.LimitLatched || x.FlowTrip)
            return Stop(s, x);
        if (Wanted(x))
            return Wait.Forever;
        int toStop = HeatLead(s, x, dt);
        if (!x.Service && !x.PriorityHolds && s.PumpOverrunMs - x.DemandAgeMs > toStop)
            toStop = s.PumpOverrunMs - x.DemandAgeMs;
        if (toStop > 0)
            return toStop;
        x.FlowTries = 0;
        return Stop(s, x);
    }

    /// <summary>Somebody wants the pump to run, whether or not it may.</summary>
    public static bool Wanted(ControllerState x) => x.Service ? x.Is(Contact.ServicePump) : x.Demand;

    /// <summary>Something other than time and proof forbids a start.</summary>
    public static bool Forbidden(ControllerState x) => x.LimitLatched || x.FlowLatched || x.PumpStuck;

    /// <summary>What is left of the start delay, ms; 0 or less when it has passed.</summary>
    public static int DelayLeft(ControllerSettings s, ControllerState x) => x.Service ? 0 : s.PumpStartDelayMs - x.DemandAgeMs;

    /// <summary>What is left of the pump's rest, ms; 0 or less when it has passed.</summary>
    public static int RestLeft(ControllerSettings s, ControllerState x)
    {
        int off = s.PumpMinOffMs - x.RestMs;
        int starts = s.PumpStartIntervalMs - x.StartAgeMs;
        return off > starts ? off : starts;
    }

    private static int Rest(ControllerSettings s, ControllerState x, int dt, bool proven)
    {
        x.RundownMs = Wait.Age(x.RundownMs, dt, s.PumpRundownMs);
        x.RestMs = Wait.Age(x.RestMs, dt, s.PumpMinOffMs);
        int delay = DelayLeft(s, x);
        int rest = RestLeft(s, x);
        if (Wanted(x) && proven && delay <= 0 && rest <= 0 && !Forbidden(x) && !x.ResetNow)
        {
            x.Pump = true;
            x.RundownMs = 0;
            x.RestMs = 0;
            x.StartAgeMs = 0;
            return Wait.Forever;
        }

        int next = Ahead(s.PumpRundownMs - x.RundownMs);
        next = Wait.Sooner(next, Ahead(s.PumpMinOffMs - x.RestMs));
        next = Wait.Sooner(next, Ahead(s.PumpStartIntervalMs - x.StartAgeMs));
        return Wanted(x) ? Wait.Sooner(next, Ahead(delay)) : next;
    }

    private static int HeatLead(ControllerSettings s, ControllerState x, int dt) =>
        x.Heat ? s.HeatLeadMs : s.HeatLeadMs - x.HeatAgeMs - dt;

    private static int Stop(ControllerSettings s, ControllerState x)
    {
        x.Pump = false;
        x.RundownMs = 0;
        x.RestMs = 0;
        return s.PumpRundownMs;
    }

    private static int Ahead(int left) => left > 0 ? left : Wait.Forever;
}
