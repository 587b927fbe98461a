namespace ZoneControl.Logic;

/// <summary>
/// The contacts as read at the start of a scan, before debounce. One bit a zone, bit 0 for the first zone of the house
/// file; 1 means the contact says what its name says. Polarity is settled where the contact is read.
/// </summary>
public sealed class InputImage
{
    /// <summary>Thermostats asking for heat, one bit a zone.</summary>
    public int Calls;

    /// <summary>End switches made, one bit a zone. Bits of zones without a switch are ignored.</summary>
    public int EndSwitches;

    /// <summary>The season contact says lockout (summer).</summary>
    public bool Lockout;
}
