namespace ZoneControl.Logic;

/// <summary>Alarms that belong to no zone: bits of <see cref="OutputImage.Alarms"/>. Each stands as long as its cause, latches until reset.</summary>
public static class Alarm
{
    /// <summary>The pump was tripped for want of flow and is being tried again (PUMP-FLOW).</summary>
    public const int FlowTrip = 1 << 0;

    /// <summary>Latch: the pump was tripped for want of flow too often (PUMP-FLOW).</summary>
    public const int FlowLatched = 1 << 1;

    /// <summary>Flow although the pump is off: pump or switch (PUMP-STUCK).</summary>
    public const int PumpStuck = 1 << 2;

    /// <summary>Latch: the floor-supply high limit tripped (HEAT-LIMIT).</summary>
    public const int LimitLatched = 1 << 3;

    /// <summary>The freeze contact asks in lockout: frost, or a broken wire (FREEZE).</summary>
    public const int FrostInLockout = 1 << 4;

    /// <summary>Priority lasted too long and is ignored (PRIORITY).</summary>
    public const int PriorityLong = 1 << 5;

    /// <summary>An exercise was put off (SEASON-EXERCISE).</summary>
    public const int ExercisePutOff = 1 << 6;

    /// <summary>Until reset: the clock could not be trusted (TIME-FAULT).</summary>
    public const int TimeFault = 1 << 7;

    /// <summary>The actuators have no supply (VALVE-SUPPLY).</summary>
    public const int NoSupply = 1 << 8;

    /// <summary>Hand commands lasted too long and are ignored (SERVICE).</summary>
    public const int ServiceEnded = 1 << 9;
}
