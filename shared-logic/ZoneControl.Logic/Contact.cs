namespace ZoneControl.Logic;

/// <summary>
/// The contacts that belong to no zone: bits of <see cref="InputImage.Contacts"/> and of the masks in the settings. A name
/// says what the contact means when it is asserted; which electrical state that is, is a setting.
/// </summary>
public static class Contact
{
    /// <summary>The season switch says lockout (summer).</summary>
    public const int Lockout = 1 << 0;

    /// <summary>The flow switch sees flow.</summary>
    public const int Flow = 1 << 1;

    /// <summary>The floor-supply high limit has tripped. Asserted by an open contact: a broken wire is a trip.</summary>
    public const int Limit = 1 << 2;

    /// <summary>The freeze thermostat asks. Asserted by an open contact: a broken wire is frost.</summary>
    public const int Freeze = 1 << 3;

    /// <summary>Domestic hot water has priority.</summary>
    public const int Priority = 1 << 4;

    /// <summary>The reset button is pressed.</summary>
    public const int Reset = 1 << 5;

    /// <summary>The actuators' supply is present.</summary>
    public const int Supply = 1 << 6;

    /// <summary>A hand asks for the pump.</summary>
    public const int ServicePump = 1 << 7;

    /// <summary>How many there are.</summary>
    public const int Count = 8;

    /// <summary>Contacts whose open state is the asserted one whatever else the house says, so that a broken wire is safe.</summary>
    public const int AssertedOpen = Limit | Freeze;

    /// <summary>Contacts that a trip hangs on: accepted within half a second.</summary>
    public const int Tripping = Limit | Supply;

    /// <summary>Place of a contact in arrays: the number of its bit.</summary>
    public static int Place(int contact)
    {
        int place = 0;
        while ((contact >> place) > 1)
            place++;
        return place;
    }
}
