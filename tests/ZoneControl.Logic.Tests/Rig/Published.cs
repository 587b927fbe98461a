namespace ZoneControl.Logic.Tests;

/// <summary>An output image's fields as one comparable value, without the scan clock and the announced deadline.</summary>
internal readonly record struct Published(
    int Valves, bool Pump, bool Heat, HoldReason Hold, int Calls, int Switches, int Senses, int Hands, int Contacts, int Late,
    int Latched, int Early, int Stuck, int Alarms, int Proven, bool PowerUp)
{
    public static Published Of(OutputImage o) => new(
        o.Valves, o.Pump, o.Heat, o.Hold, o.AcceptedCalls, o.AcceptedSwitches, o.AcceptedSenses, o.AcceptedHands,
        o.AcceptedContacts, o.LateValves, o.LatchedValves, o.EarlySwitches, o.StuckSwitches, o.Alarms, o.ProvenValves, o.PowerUp);
}

/// <summary>A house in which nothing asks: no contact asserted but the one that says that the actuators have supply.</summary>
internal static class Quiet
{
    public static void Fill(ControllerSettings s, InputImage contacts)
    {
        contacts.Calls = s.InvertedCalls;
        contacts.EndSwitches = s.InvertedSwitches;
        contacts.Senses = s.InvertedSenses;
        contacts.ServiceValves = 0;
        contacts.Contacts = (Contact.Supply ^ Inverted(s)) & s.FittedContacts;
    }

    /// <summary>Contacts that are asserted when open.</summary>
    public static int Inverted(ControllerSettings s) => (s.InvertedContacts | Contact.Limit | Contact.Freeze) & s.FittedContacts;
}
