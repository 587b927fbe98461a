namespace ZoneControl.Logic;

/// <summary>The alarms that belong to no zone, read off the state.</summary>
internal static class Alarms
{
    public static int Of(ControllerState x)
    {
        int alarms = 0;
        if (x.FlowTries > 0)
            alarms |= Alarm.FlowTrip;
        if (x.FlowLatched)
            alarms |= Alarm.FlowLatched;
        if (x.PumpStuck)
            alarms |= Alarm.PumpStuck;
        if (x.LimitLatched)
            alarms |= Alarm.LimitLatched;
        if (x.PutOff)
            alarms |= Alarm.ExercisePutOff;
        if (x.TimeFault)
            alarms |= Alarm.TimeFault;
        if (x.Is(Contact.Freeze) && x.Is(Contact.Lockout))
            alarms |= Alarm.FrostInLockout;
        if (x.Is(Contact.Priority) && !x.PriorityHolds)
            alarms |= Alarm.PriorityLong;
        if (!x.Supplied && x.SupplyWaitMs == 0)
            alarms |= Alarm.NoSupply;
        if (!x.Service && (x.Hands.Accepted != 0 || x.Is(Contact.ServicePump)))
            alarms |= Alarm.ServiceEnded;
        return alarms;
    }
}
