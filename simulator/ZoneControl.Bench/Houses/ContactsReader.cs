using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads which contacts are fitted, what each means when closed, and how long it must stand.</summary>
internal static class ContactsReader
{
    private const string Expected = "true or false, or a table such as { debounce = \"2 s\" }";

    public static HouseContacts Read(TableReader? table)
    {
        if (table is null)
            return HouseContacts.None;
        List<HouseContact> fitted = [];
        foreach (ContactKind kind in ContactKind.All)
        {
            if (Read(table, kind) is { } contact)
                fitted.Add(contact);
        }

        bool service = table.Flag("service") ?? false;
        table.End();
        return new HouseContacts { Fitted = fitted, Service = service };
    }

    private static HouseContact? Read(TableReader table, ContactKind kind)
    {
        TomlNode? node = table.Node(kind.Key, Expected);
        switch (node)
        {
            case null or TomlScalar { Value: false }:
                return null;
            case TomlScalar { Value: true }:
                return new HouseContact(kind, DefaultPolarity(kind), DefaultDebounce(kind));
            case TomlTable:
                return Described(table.Table(kind.Key)!, kind);
            default:
                table.Mistakes.Error(node.Place, table.PathOf(kind.Key), node.Found, Expected);
                return null;
        }
    }

    private static HouseContact Described(TableReader table, ContactKind kind)
    {
        bool? asserts = table.Choice("closed_means", [(kind.Asserted, true), (kind.Resting, false)]);
        TimeSpan? debounce = table.Time("debounce", "0 ms", kind.LongestDebounce);
        table.End();
        if (asserts == true && kind.MustAssertOpen)
        {
            table.Error("closed_means", $"a {kind.Label} that a closed contact means \"{kind.Asserted}\" to",
                $"closed_means = \"{kind.Resting}\": one that opens for \"{kind.Asserted}\"", "a broken wire must be the safe side");
        }

        return new HouseContact(
            kind,
            asserts is { } given ? Setting.Given(given, table.PlaceOf("closed_means").Line) : DefaultPolarity(kind),
            debounce is { } time ? Setting.Given(time, table.PlaceOf("debounce").Line) : DefaultDebounce(kind));
    }

    private static Setting<bool> DefaultPolarity(ContactKind kind) => Setting.Derived(
        kind.ClosedAsserts,
        kind.MustAssertOpen ? "a broken wire must be the safe side" : "common practice");

    private static Setting<TimeSpan> DefaultDebounce(ContactKind kind) =>
        Setting.Derived(SettingReader.TimeOf(kind.Debounce), kind.DebounceFrom);
}
