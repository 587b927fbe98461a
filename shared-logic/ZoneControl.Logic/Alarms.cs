namespace ZoneControl.Logic;

/// <summary>The alarms that belong to no zone, read off the state.</summary>
internal static class Alarms
{
    public static int Of(ControllerState x) =>
        (x.FlowTries > 0 ? Alarm.FlowTrip : 0)
        | (x.FlowLatched ? Alarm.FlowLatched : 0)
        | (x.PumpStuck ? Alarm.PumpStuck : 0)
        | (x.LimitLatched ? Alarm.LimitLatched : 0)
        | (x.PutOff ? Alarm.ExercisePutOff : 0)
        | (x.TimeFault ? Alarm.TimeFault : 0)
        | (x.Is(Contact.Freeze) && x.Is(Contact.Lockout) ? Alarm.FrostInLockout : 0)
        | (x.Is(Contact.Priority) && !x.PriorityHolds ? Alarm.PriorityLong : 0)
        | (!x.Supplied && x.SupplyWaitMs == 0 ? Alarm.NoSupply : 0)
        | (!x.Service && (x.Hands.Accepted != 0 || x.Is(Contact.ServicePump)) ? Alarm.ServiceEnded : 0);
}
