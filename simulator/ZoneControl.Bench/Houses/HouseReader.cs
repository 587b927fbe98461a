using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads the house as a whole, section by section, each mistake noted where it is; null when a part is missing.</summary>
internal static class HouseReader
{
    private static readonly (string, DisplayUnits)[] _units = [("si", DisplayUnits.Si), ("us", DisplayUnits.Us)];

    private static readonly (string, HouseFluid)[] _fluids = [("water", HouseFluid.Water)];

    public static House? Read(TableReader file)
    {
        string? name = file.Text("name", 60, required: true);
        string text = file.Text("text", 4000, severalLines: true) ?? "";
        DisplayUnits units = file.Choice("units", _units) ?? DisplayUnits.Si;
        HouseFluid fluid = file.Choice("fluid", _fluids) ?? HouseFluid.Water;

        HousePump? pump = PumpReader.Read(file.Table("pump", required: true), units);
        PipeDescription? mains = PipeReader.Read(file.Table("mains", required: true));
        HouseBypass? bypass = BypassReader.Read(file.Table("bypass"), pump);

        var manifoldNames = new NameTable("manifold");
        List<HouseManifold?> manifolds = [.. file.Tables("manifold").Select(table => ManifoldReader.Read(table, manifoldNames))];
        if (manifolds.Count == 0)
            file.Missing("manifold", "at least one [[manifold]]");

        var actuatorNames = new NameTable("actuator");
        List<HouseActuator?> actuators = [.. file.Tables("actuator").Select(table => ActuatorReader.Read(table, actuatorNames))];

        var loops = new LoopReader(file.Table("every_loop"), manifoldNames);
        var zoneNames = new NameTable("zone");
        IReadOnlyList<TableReader> zoneTables = file.Tables("zone");
        List<ZoneDraft> zones = [.. zoneTables.Select(table => ZoneReader.Read(table, zoneNames, actuatorNames, actuators, loops))];
        if (zones.Count == 0)
            file.Missing("zone", "at least one [[zone]]");
        List<HouseLoop?> standing = [.. file.Tables("standing_loop").Select(loops.Read)];

        int standingCapacity = standing.Count + (bypass?.CountsAs ?? 0);
        TableReader? transformerTable = file.Table("transformer");
        HouseTransformer? transformer = TransformerReader.Read(transformerTable);
        HouseContacts contacts = ContactsReader.Read(file.Table("contacts"));
        HouseController? controller = ControllerReader.Read(
            file.Table("controller", required: true), zones, zoneNames, standingCapacity, contacts);
        TableReader? board = file.Table("board");
        manifoldNames.WarnOfUnused(file.Mistakes);
        actuatorNames.WarnOfUnused(file.Mistakes);
        file.End();

        if (name is null || pump is null || mains is null || controller is null || zones.Exists(zone => zone.Zone is null))
            return null;
        TransformerReader.Check(transformerTable, transformer, [.. zones.Select(zone => zone.Zone).OfType<HouseZone>()]);
        var house = new House
        {
            Name = name,
            Text = text,
            Units = units,
            Fluid = fluid,
            Pump = pump,
            Mains = mains,
            Manifolds = [.. manifolds.OfType<HouseManifold>()],
            Bypass = bypass,
            Zones = [.. zones.Select(zone => zone.Zone).OfType<HouseZone>()],
            StandingLoops = [.. standing.OfType<HouseLoop>()],
            Transformer = transformer,
            Controller = controller,
            Contacts = contacts,
        };
        return house with { Board = BoardReader.Read(board, house) };
    }
}
