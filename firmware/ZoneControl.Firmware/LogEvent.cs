namespace ZoneControl.Firmware;

/// <summary>What a record of the log says; up to the deadline the order is that of the lines of one scan, after any of the clock.</summary>
public static class LogEvent
{
    /// <summary>Power-up.</summary>
    public const int Boot = 0;

    /// <summary>Accepted thermostats; the value is a mask, as in all of the following but the singles.</summary>
    public const int Calls = 1;

    /// <summary>Accepted end switches.</summary>
    public const int Switches = 2;

    /// <summary>Accepted senses.</summary>
    public const int Senses = 3;

    /// <summary>Accepted hand switches.</summary>
    public const int Hands = 4;

    /// <summary>Accepted contacts of the house.</summary>
    public const int Contacts = 5;

    /// <summary>Valve outputs.</summary>
    public const int Valves = 6;

    /// <summary>The pump, 1 or 0.</summary>
    public const int Pump = 7;

    /// <summary>Heat demand, 1 or 0.</summary>
    public const int Heat = 8;

    /// <summary>The hold reason's number.</summary>
    public const int Hold = 9;

    /// <summary>Late valves.</summary>
    public const int Late = 10;

    /// <summary>Latched valves.</summary>
    public const int Latched = 11;

    /// <summary>Early switches.</summary>
    public const int Early = 12;

    /// <summary>Stuck switches.</summary>
    public const int Stuck = 13;

    /// <summary>Alarms of the house.</summary>
    public const int Alarms = 14;

    /// <summary>Proven valves.</summary>
    public const int Proven = 15;

    /// <summary>The announced deadline closes the group; ms from the scan, or -1 for never.</summary>
    public const int Next = 16;

    /// <summary>How many of the above are compared from scan to scan.</summary>
    public const int States = 16;

    /// <summary>A sign of life: scans and overruns so far.</summary>
    public const int Alive = 17;

    /// <summary>A scan took longer than its period: microseconds, and how many so far.</summary>
    public const int Overrun = 18;

    /// <summary>A scan began more than a period late: microseconds, and how many so far.</summary>
    public const int Waited = 19;

    /// <summary>A fault: its number, and the number of scans until then.</summary>
    public const int Fault = 20;

    /// <summary>Records that found no room before this one.</summary>
    public const int Lost = 21;

    /// <summary>The scan is earlier than the one before; the values are that one's time, ms, as in the next two.</summary>
    public const int ClockBack = 22;

    /// <summary>The clock stood still for too many scans.</summary>
    public const int ClockStands = 23;

    /// <summary>The scan is much later than announced.</summary>
    public const int ClockLate = 24;
}
