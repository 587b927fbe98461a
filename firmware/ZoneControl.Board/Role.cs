namespace ZoneControl.Board;

/// <summary>
/// What a pin or a place in a chain is for, as one number: the kind times 16 plus the zone, or for a contact of the house the
/// number of its bit in <c>Contact</c>.
/// </summary>
public static class Role
{
    /// <summary>A thermostat.</summary>
    public const int Call = 0;

    /// <summary>An end switch.</summary>
    public const int Switch = 1;

    /// <summary>The sense contact of a gated zone.</summary>
    public const int Sense = 2;

    /// <summary>A hand switch for a zone's valves.</summary>
    public const int Hand = 3;

    /// <summary>A contact of the house.</summary>
    public const int Contact = 4;

    /// <summary>A zone's valves.</summary>
    public const int Valve = 5;

    /// <summary>The pump; of no zone.</summary>
    public const int Pump = 6;

    /// <summary>Heat demand; of no zone.</summary>
    public const int Heat = 7;

    /// <summary>How many kinds of inputs there are; their numbers come first.</summary>
    public const int InputKinds = 5;

    /// <summary>A kind's role for a zone or contact, from 0.</summary>
    public static int Of(int kind, int index) => (kind << 4) | index;

    /// <summary>The kind of a role.</summary>
    public static int Kind(int role) => role >> 4;

    /// <summary>The zone or contact of a role, from 0.</summary>
    public static int Index(int role) => role & 15;
}
