using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Scripts;

/// <summary>Reads the hand switches of an event: all that are on, or "off".</summary>
internal static class ServiceReader
{
    private const string Expected = "a table such as { zones = [\"bath\"], pump = true }, or \"off\"";

    public static ServiceChange? Read(TableReader table, ZoneNames names)
    {
        TomlNode? node = table.Node("service", Expected);
        if (node is null)
            return null;
        if (!names.House.Contacts.Service)
        {
            table.Error("service", "a move of hand switches", "a house that has them: service = true under [contacts]");
            return null;
        }

        if (node is TomlScalar { Value: "off" })
            return new ServiceChange(0, false);
        if (node is not TomlTable)
        {
            table.Error("service", node.Found, Expected);
            return null;
        }

        TableReader inner = table.Table("service")!;
        int? zones = names.Several(inner, "zones");
        bool pump = inner.Flag("pump") ?? false;
        inner.End();
        int gated = zones & names.House.GatedZones ?? 0;
        if (gated != 0)
        {
            inner.Error("zones", $"{names.House.ZoneLabels(gated)}: gated", "zones that ZoneControl opens itself",
                "the panel opens a gated zone, nobody else");
        }

        return zones is null && inner.Has("zones") ? null : new ServiceChange(zones ?? 0, pump);
    }
}
