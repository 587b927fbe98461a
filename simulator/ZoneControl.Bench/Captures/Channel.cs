namespace ZoneControl.Bench.Captures;

/// <summary>A family of channels. All of a family are kept in one mask.</summary>
public enum ChannelKind
{
    /// <summary>Thermostats accepted after debounce, a bit a zone.</summary>
    Call,

    /// <summary>End switches accepted after debounce, a bit a zone.</summary>
    EndSwitch,

    /// <summary>Sensed valves of gated zones accepted after debounce, a bit a zone.</summary>
    Sense,

    /// <summary>Hand switches accepted after debounce, a bit a zone.</summary>
    Hand,

    /// <summary>Contacts of the house accepted after debounce, bits of <see cref="Logic.Contact"/>.</summary>
    Contact,

    /// <summary>Valves energised, a bit a zone.</summary>
    Valve,

    /// <summary>Pump on; bit 0.</summary>
    Pump,

    /// <summary>Heat demand on; bit 0.</summary>
    Heat,

    /// <summary>Published hold reason: a bit for each <see cref="Logic.HoldReason"/> but the first.</summary>
    Hold,

    /// <summary>Published alarm of late valves, a bit a zone.</summary>
    Late,

    /// <summary>Published latch of valves, a bit a zone.</summary>
    Latched,

    /// <summary>Published alarm of switches that made too soon, a bit a zone.</summary>
    Early,

    /// <summary>Published alarm of switches that stay made, a bit a zone.</summary>
    Stuck,

    /// <summary>Published alarms of the house, bits of <see cref="Logic.Alarm"/>.</summary>
    Alarm,

    /// <summary>Published proof, a bit a zone; for pictures only.</summary>
    Proven,

    /// <summary>First scan after power-up; bit 0.</summary>
    PowerUp,

    /// <summary>The controller has its supply; bit 0.</summary>
    Powered,

    /// <summary>Thermostats before debounce, a bit a zone.</summary>
    Thermostat,

    /// <summary>End switches before debounce, a bit a zone.</summary>
    EndSwitchWire,

    /// <summary>Sensed valves before debounce, a bit a zone.</summary>
    SenseWire,

    /// <summary>Contacts of the house before debounce, bits of <see cref="Logic.Contact"/>.</summary>
    ContactWire,

    /// <summary>Turns with every scan that is recorded, so that those which show nothing new are seen too; bit 0.</summary>
    Scan,

    /// <summary>How far the scan clock is ahead of the capture's time, ms; a number.</summary>
    ClockAhead,

    /// <summary>The announced deadline, ms of the capture's time; a number.</summary>
    Next,
}

/// <summary>One thing that a capture may show.</summary>
/// <param name="Kind">Its family.</param>
/// <param name="Bit">Its place in the family's mask, from 0; -1 for a text that names what of the family is on.</param>
public readonly record struct Channel(ChannelKind Kind, int Bit)
{
    /// <summary>How many families there are.</summary>
    public const int Kinds = (int)ChannelKind.Next + 1;

    /// <summary>It carries a number, not on or off.</summary>
    public bool IsNumber => Kind is ChannelKind.ClockAhead or ChannelKind.Next;

    /// <summary>It carries words.</summary>
    public bool IsText => Bit < 0;

    /// <summary>Its bit in the family's mask; every bit for words.</summary>
    public int Mask => Bit < 0 ? -1 : 1 << Bit;
}
