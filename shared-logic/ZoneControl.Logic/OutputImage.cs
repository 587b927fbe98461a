namespace ZoneControl.Logic;

/// <summary>
/// What a scan decided: the outputs, and what is published with them for people, logs and monitors. One bit a zone in masks.
/// </summary>
public sealed class OutputImage
{
    /// <summary>Valves to energise.</summary>
    public int Valves;

    /// <summary>The pump is to run.</summary>
    public bool Pump;

    /// <summary>Heat is asked of the heat source.</summary>
    public bool Heat;

    /// <summary>Why the pump is off although somebody asks for it; <see cref="HoldReason.None"/> when it runs or nobody asks.</summary>
    public HoldReason Hold;

    /// <summary>Calls accepted after debounce.</summary>
    public int AcceptedCalls;

    /// <summary>End switches accepted after debounce.</summary>
    public int AcceptedSwitches;

    /// <summary>Sensed valves of a gated panel accepted after debounce.</summary>
    public int AcceptedSenses;

    /// <summary>Hand commands to open valves accepted after debounce.</summary>
    public int AcceptedHands;

    /// <summary>Contacts of <see cref="Contact"/> accepted after debounce, 1 for asserted.</summary>
    public int AcceptedContacts;

    /// <summary>The season contact among them. A scan writes the mask; this is for whoever reads it.</summary>
    public bool AcceptedLockout
    {
        get => (AcceptedContacts & Contact.Lockout) != 0;
        set => AcceptedContacts = value ? AcceptedContacts | Contact.Lockout : AcceptedContacts & ~Contact.Lockout;
    }

    /// <summary>Alarm: valves not proven within their limit, until they prove (VALVE-LATE). Includes the latched ones.</summary>
    public int LateValves;

    /// <summary>Alarm: late valves that used up their retries and are no longer driven, until reset (VALVE-LATE).</summary>
    public int LatchedValves;

    /// <summary>Alarm: valves whose end switch made too soon to be believed in this opening (VALVE-EARLY).</summary>
    public int EarlySwitches;

    /// <summary>Alarm: end switches still made after their valve was released for its closing time (VALVE-STUCK).</summary>
    public int StuckSwitches;

    /// <summary>Alarms of the house as a whole: bits of <see cref="Alarm"/>.</summary>
    public int Alarms;

    /// <summary>Valves that count as open.</summary>
    public int ProvenValves;

    /// <summary>This is the first scan after power-up.</summary>
    public bool PowerUp;

    /// <summary>The time that this scan was given, ms of a monotonic clock.</summary>
    public long ScanMs;

    /// <summary>
    /// The earliest time at which a scan with the same contacts could change anything, ms of the same clock;
    /// <see cref="ZoneController.Never"/> when only a contact can.
    /// </summary>
    public long NextDeadlineMs;
}
