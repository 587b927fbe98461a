using ZoneControl.Logic;

namespace ZoneControl.Bench.Running;

/// <summary>
/// What a controller shows to the world at one scan: contacts as accepted after debounce, outputs, and what it publishes
/// with them. Rules judge frames and nothing else. A frame holds until the next one in the trace. Masks have one bit a
/// zone, bit 0 for the house file's first.
/// </summary>
public readonly record struct Frame
{
    /// <summary>Time of the scan, ms from the start of the run.</summary>
    public required long Ms { get; init; }

    /// <summary>First scan after power-up.</summary>
    public bool PowerUp { get; init; }

    /// <summary>The controller has no supply: every output is off because it must be, and no rule binds it.</summary>
    public bool Unpowered { get; init; }

    /// <summary>Calls accepted after debounce.</summary>
    public int Calls { get; init; }

    /// <summary>End switches accepted after debounce.</summary>
    public int EndSwitches { get; init; }

    /// <summary>Sensed valves of a gated panel accepted after debounce.</summary>
    public int Senses { get; init; }

    /// <summary>Hand commands to open valves accepted after debounce.</summary>
    public int Hands { get; init; }

    /// <summary>Contacts of <see cref="Contact"/> accepted after debounce, 1 for asserted.</summary>
    public int Contacts { get; init; }

    /// <summary>Lockout among them.</summary>
    public bool Lockout
    {
        get => (Contacts & Contact.Lockout) != 0;
        init => Contacts = value ? Contacts | Contact.Lockout : Contacts & ~Contact.Lockout;
    }

    /// <summary>Valves energised.</summary>
    public int Valves { get; init; }

    /// <summary>Pump on.</summary>
    public bool Pump { get; init; }

    /// <summary>Heat demand on.</summary>
    public bool Heat { get; init; }

    /// <summary>Published hold reason.</summary>
    public HoldReason Hold { get; init; }

    /// <summary>Published alarm: late valves, latched ones included.</summary>
    public int LateValves { get; init; }

    /// <summary>Published alarm: latched valves.</summary>
    public int LatchedValves { get; init; }

    /// <summary>Published alarm: switches that made too soon.</summary>
    public int EarlySwitches { get; init; }

    /// <summary>Published alarm: end switches that stay made though their valve is released.</summary>
    public int StuckSwitches { get; init; }

    /// <summary>Published alarms of the house: bits of <see cref="Alarm"/>.</summary>
    public int Alarms { get; init; }

    /// <summary>
    /// Valves that the controller says count as open. For pictures and lists: rules reckon proof for themselves and never
    /// read this.
    /// </summary>
    public int ProvenValves { get; init; }

    /// <summary>
    /// How far the scan clock that the controller was given is ahead of <see cref="Ms"/>, ms; negative for behind, 0 for a
    /// sound clock. While it stands still every scan shows another value, and so is a frame of its own.
    /// </summary>
    public long ClockAheadMs { get; init; }

    /// <summary>Announced deadline, ms from the start of the run by the clock of that scan; not part of what makes two frames differ for a reader.</summary>
    public long NextDeadlineMs { get; init; }

    /// <summary>The frame that an output image shows.</summary>
    public static Frame From(OutputImage image) => new()
    {
        Ms = image.ScanMs,
        PowerUp = image.PowerUp,
        Calls = image.AcceptedCalls,
        EndSwitches = image.AcceptedSwitches,
        Senses = image.AcceptedSenses,
        Hands = image.AcceptedHands,
        Contacts = image.AcceptedContacts,
        Valves = image.Valves,
        Pump = image.Pump,
        Heat = image.Heat,
        Hold = image.Hold,
        LateValves = image.LateValves,
        LatchedValves = image.LatchedValves,
        EarlySwitches = image.EarlySwitches,
        StuckSwitches = image.StuckSwitches,
        Alarms = image.Alarms,
        ProvenValves = image.ProvenValves,
        NextDeadlineMs = image.NextDeadlineMs,
    };

    /// <summary>True when everything but the clock channels is the same.</summary>
    public bool ShowsTheSameAs(in Frame other) =>
        this == other with { Ms = Ms, NextDeadlineMs = NextDeadlineMs };
}
