namespace ZoneControl.Logic;

/// <summary>
/// The contacts as read at the start of a scan: 1 for a closed contact, whatever that means. The controller knows each
/// one's polarity and does the debouncing. One bit a zone in zone masks, bit 0 for the first zone of the house file.
/// </summary>
public sealed class InputImage
{
    /// <summary>Thermostats.</summary>
    public int Calls;

    /// <summary>End switches. Bits of zones without a switch are ignored.</summary>
    public int EndSwitches;

    /// <summary>Sense inputs of valves that an existing panel drives. Bits of other zones are ignored.</summary>
    public int Senses;

    /// <summary>Hand commands to open a zone's valves.</summary>
    public int ServiceValves;

    /// <summary>The contacts of <see cref="Contact"/>.</summary>
    public int Contacts;

    /// <summary>The season contact among them. A scan reads the mask; this is for whoever fills it.</summary>
    public bool Lockout
    {
        get => (Contacts & Contact.Lockout) != 0;
        set => Set(Contact.Lockout, value);
    }

    /// <summary>Closes or opens contacts of <see cref="Contact"/>.</summary>
    public void Set(int contact, bool closed) => Contacts = closed ? Contacts | contact : Contacts & ~contact;
}
