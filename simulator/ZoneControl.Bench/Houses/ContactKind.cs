namespace ZoneControl.Bench.Houses;

/// <summary>One of the contacts that belong to no zone, as files call it.</summary>
/// <param name="Contact">Its bit in <see cref="Contact"/>.</param>
/// <param name="Key">Its key under [contacts]: "freeze".</param>
/// <param name="Label">Its name for people: "freeze contact".</param>
/// <param name="Asserted">Word for its asserted state: "frost".</param>
/// <param name="Resting">Word for the other state: "mild".</param>
/// <param name="ClosedAsserts">Whether a closed contact asserts it where the house file does not say.</param>
/// <param name="Debounce">How long it must stand where the house file does not say.</param>
/// <param name="LongestDebounce">The longest that the house file may say.</param>
/// <param name="DebounceFrom">Where that default comes from.</param>
public sealed record ContactKind(
    int Contact,
    string Key,
    string Label,
    string Asserted,
    string Resting,
    bool ClosedAsserts,
    string Debounce,
    string LongestDebounce,
    string DebounceFrom)
{
    private const string Bounces = "longer than a contact bounces (common practice)";
    private const string Hand = "longer than a hand turns a switch (common practice)";

    /// <summary>Every kind that a house file may describe, in the order of the bits; hand switches have no more to describe.</summary>
    public static IReadOnlyList<ContactKind> All { get; } =
    [
        new(Logic.Contact.Lockout, "season", "season switch", "lockout", "heating", true, "2 s", "10 min", Hand),
        new(Logic.Contact.Flow, "flow", "flow switch", "flow", "no flow", true, "1 s", "1 min",
            "longer than a paddle flutters (common practice)"),
        new(Logic.Contact.Limit, "limit", "high limit", "tripped", "fine", false, "200 ms", "500 ms", Bounces),
        new(Logic.Contact.Freeze, "freeze", "freeze contact", "frost", "mild", false, "5 s", "10 min",
            "frost takes longer than that to matter (common practice)"),
        new(Logic.Contact.Priority, "priority", "priority contact", "on", "off", true, "2 s", "10 min",
            "longer than a relay takes to settle (common practice)"),
        new(Logic.Contact.Reset, "reset", "reset button", "pressed", "released", true, "100 ms", "10 s", Bounces),
        new(Logic.Contact.Supply, "supply", "actuator supply", "on", "off", true, "200 ms", "500 ms", Bounces),
    ];

    /// <summary>Whether an open contact must be the asserted state, so that a broken wire is on the safe side.</summary>
    public bool MustAssertOpen => (Logic.Contact.AssertedOpen & Contact) != 0;

    /// <summary>The kind with a key; null for a word that is none.</summary>
    public static ContactKind? Of(string key) => All.FirstOrDefault(kind => kind.Key == key);

    /// <summary>The kind of a bit.</summary>
    public static ContactKind Of(int contact) => All.First(kind => kind.Contact == contact);
}
