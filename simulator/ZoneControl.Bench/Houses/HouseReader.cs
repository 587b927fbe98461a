using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Files;
using ZoneControl.Plant;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads the house as a whole, section by section, each mistake noted where it is; null when a part is missing.</summary>
internal static class HouseReader
{
    private static readonly (string, DisplayUnits)[] _units = [("si", DisplayUnits.Si), ("us", DisplayUnits.Us)];

    private static readonly (string, HouseFluid)[] _fluids = [("water", HouseFluid.Water), ("glycol", HouseFluid.Glycol)];

    public static House? Read(TableReader file)
    {
        string? name = file.Text("name", 60, required: true);
        string text = file.Text("text", 4000, severalLines: true) ?? "";
        DisplayUnits units = file.Choice("units", _units) ?? DisplayUnits.Si;
        HouseFluid fluid = file.Choice("fluid", _fluids) ?? HouseFluid.Water;

        HousePump? pump = PumpReader.Read(file.Table("pump", required: true), units);
        double glycol = ReadGlycol(file, fluid);
        TableReader? mainsTable = file.Table("mains", required: true);
        double? exchanger = mainsTable is null ? null : KvReader.Read(mainsTable, "exchanger_kv", "exchanger_cv")?.Value;
        PipeDescription? mains = PipeReader.Read(mainsTable);
        HouseBypass? bypass = BypassReader.Read(file.Table("bypass"), pump);
        HouseFixedBypass? fixedBypass = BypassReader.ReadFixed(file.Table("fixed_bypass"));

        var manifoldNames = new NameTable("manifold");
        List<HouseManifold?> manifolds = [.. file.Tables("manifold").Select(table => ManifoldReader.Read(table, manifoldNames))];
        if (manifolds.Count == 0)
            file.Missing("manifold", "at least one [[manifold]]");

        var actuatorNames = new NameTable("actuator");
        List<HouseActuator?> actuators = [.. file.Tables("actuator").Select(table => ActuatorReader.Read(table, actuatorNames))];

        var loops = new LoopReader(file.Table("every_loop"), manifoldNames);
        var zoneNames = new NameTable("zone");
        IReadOnlyList<TableReader> zoneTables = file.Tables("zone");
        var rooms = new RoomReader(file.Table("every_room"), file.Table("every_floor"), file.Table("every_thermostat"));
        List<ZoneDraft> zones =
            [.. zoneTables.Select(table => ZoneReader.Read(table, zoneNames, actuatorNames, actuators, loops, rooms))];
        rooms.End();
        if (zones.Count == 0)
            file.Missing("zone", "at least one [[zone]]");
        List<HouseLoop?> standing = [.. file.Tables("standing_loop").Select(loops.Read)];

        int standingCapacity = standing.Count + (bypass?.CountsAs ?? 0) + (fixedBypass?.CountsAs ?? 0);
        TableReader? transformerTable = file.Table("transformer");
        HouseTransformer? transformer = TransformerReader.Read(transformerTable);
        HouseContacts contacts = ContactsReader.Read(file.Table("contacts"));
        HouseController? controller = ControllerReader.Read(
            file.Table("controller", required: true), zones, zoneNames, standingCapacity, contacts);
        HouseRoom[] roomsRead = [.. zones.Select(zone => zone.Room)];
        var heat = new HouseHeat
        {
            Rooms = roomsRead,
            Source = SourceReader.Read(file.Table("heat_source"), file.Table("tank"), roomsRead),
            Weather = WeatherReader.Read(file.Table("weather")),
        };
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
            GlycolShare = glycol,
            Pump = pump,
            Mains = mains,
            ExchangerKv = exchanger,
            Manifolds = [.. manifolds.OfType<HouseManifold>()],
            Bypass = bypass,
            FixedBypass = fixedBypass,
            Zones = [.. zones.Select(zone => zone.Zone).OfType<HouseZone>()],
            StandingLoops = [.. standing.OfType<HouseLoop>()],
            Transformer = transformer,
            Controller = controller,
            Contacts = contacts,
            Heat = heat,
        };
        if (!file.Mistakes.HasErrors)
            RefuseWhatThePlantCannotTake(file, house);
        return house with { Board = BoardReader.Read(board, house) };
    }

    private static double ReadGlycol(TableReader file, HouseFluid fluid)
    {
        const string Share = "a share of the fluid's mass such as \"30 %\"";
        double? share = file.Quantity("glycol_share", Dimension.Share, "0 %", "60 %", required: false);
        if (fluid == HouseFluid.Glycol && !file.Has("glycol_share"))
            file.Missing("glycol_share", Share);
        if (fluid == HouseFluid.Water && file.Has("glycol_share"))
            file.Error("glycol_share", "a share of glycol in water", "fluid = \"glycol\", or no share");
        return fluid == HouseFluid.Glycol ? share ?? 0 : 0;
    }

    /// <summary>
    /// What the readers let pass and the model cannot take would otherwise come out as an exception of a run.
    /// </summary>
    private static void RefuseWhatThePlantCannotTake(TableReader file, House house)
    {
        var usual = new Scripts.ScriptConditions(house.SeasonWaterC(), house.Heat!.Weather.PlantRoomC.Value);
        foreach (string mistake in PlantCheck.Mistakes(house.ToPlant(usual))
            .Concat(HeatCheck.Mistakes(house.ToHeat(), house.Zones.Count)))
        {
            file.Mistakes.Error(file.Start, "", "a house that the model cannot take", "", mistake);
        }
    }
}
