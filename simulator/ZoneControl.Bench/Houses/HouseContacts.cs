using ZoneControl.Logic;

namespace ZoneControl.Bench.Houses;

/// <summary>Contacts fitted beside thermostats and end switches. A script cannot move a contact that is not there.</summary>
public sealed record HouseContacts
{
    /// <summary>No contact at all.</summary>
    public static HouseContacts None { get; } = new();

    /// <summary>The fitted ones, in the order of <see cref="ContactKind.All"/>.</summary>
    public IReadOnlyList<HouseContact> Fitted { get; init; } = [];

    /// <summary>Hand switches for each driven zone's valves and for the pump.</summary>
    public bool Service { get; init; }

    /// <summary>Bits of <see cref="Contact"/> of the fitted ones.</summary>
    public int Mask => Fitted.Sum(contact => contact.Kind.Contact) | (Service ? Contact.ServicePump : 0);

    /// <summary>Whether a contact of <see cref="Contact"/> is fitted.</summary>
    public bool Has(int contact) => (Mask & contact) != 0;

    /// <summary>The contact of a bit of <see cref="Contact"/>; null when it is not fitted.</summary>
    public HouseContact? Find(int contact) => Fitted.FirstOrDefault(fitted => fitted.Kind.Contact == contact);
}

/// <summary>A fitted contact.</summary>
/// <param name="Kind">Which one.</param>
/// <param name="ClosedAsserts">Whether a closed contact asserts it.</param>
/// <param name="Debounce">It counts once it has stood this long.</param>
public sealed record HouseContact(ContactKind Kind, Setting<bool> ClosedAsserts, Setting<TimeSpan> Debounce);
