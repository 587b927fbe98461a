using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>What a role is and means in the words of a house.</summary>
internal static class RoleWords
{
    /// <summary>The role with the zone's or contact's name: "thermostat z1, Throwing room".</summary>
    public static string Name(House house, int role)
    {
        int index = Role.Index(role);
        return Role.Kind(role) switch
        {
            Role.Call => "thermostat " + Zone(house, index),
            Role.Switch => "end switch " + Zone(house, index),
            Role.Sense => "sense " + Zone(house, index),
            Role.Hand => "hand switch " + Zone(house, index),
            Role.Valve => "valves " + Zone(house, index),
            Role.Pump => "pump",
            Role.Heat => "heat demand",
            _ => 1 << index == Contact.ServicePump ? "hand switch pump" : ContactKind.Of(1 << index).Label,
        };
    }

    /// <summary>What it means when its contact is closed or its relay energised.</summary>
    public static string Meaning(House house, int role)
    {
        int index = Role.Index(role);
        return Role.Kind(role) switch
        {
            Role.Call => house.Zones[index].CallBreaks ? "closed: no call" : "closed: asks",
            Role.Switch => house.Zones[index].Actuator.SwitchBreaks ? "closed: valve not open" : "closed: valve open",
            Role.Sense => house.Zones[index].SenseBreaks ? "closed: off" : "closed: energised",
            Role.Hand => "closed: open it",
            Role.Valve => "energised: opens",
            Role.Pump => "energised: runs",
            Role.Heat => "energised: asks",
            _ => "closed: " + Closed(house, 1 << index),
        };
    }

    private static string Zone(House house, int index) => $"{LogWords.Zone(index)}, {house.Zones[index].Label}";

    private static string Closed(House house, int contact)
    {
        if (house.Contacts.Find(contact) is not { } fitted)
            return "run it";
        return fitted.ClosedAsserts.Value ? fitted.Kind.Asserted : fitted.Kind.Resting;
    }
}
