using ZoneControl.Bench.Files;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Houses;

/// <summary>
/// Reads a zone's room, floor and thermostat, with what [every_room], [every_floor] and [every_thermostat] say for all of them.
/// </summary>
internal sealed class RoomReader(TableReader? everyRoom, TableReader? everyFloor, TableReader? everyThermostat)
{
    /// <summary>Distance between two runs of tube where the file gives none, m (common practice).</summary>
    public const double CommonSpacingM = 0.15;

    /// <summary>Heat loss of a room where the file gives none, W/K for each m² of floor (common practice).</summary>
    public const double CommonLossWPerKM2 = 1.2;

    private const string Spacing = "common practice: 10 to 30 cm";
    private const string PerArea = "per m² of floor (common practice)";

    private static readonly (string, FloorUse)[] _uses =
        [("living", FloorUse.Occupied), ("edge", FloorUse.Edge), ("bath", FloorUse.Bath)];

    private bool _used;

    /// <summary>The room of a zone whose loops are so long together, m.</summary>
    public HouseRoom Read(TableReader? zone, double tubeM)
    {
        _used = true;
        var room = new Pair(zone?.Table("room"), everyRoom);
        var floor = new Pair(zone?.Table("floor"), everyFloor);
        var thermostat = new Pair(zone?.Table("thermostat"), everyThermostat);
        var spacing = floor.Quantity("spacing", Dimension.Length, "3 cm", "1 m", Setting.Derived(CommonSpacingM, Spacing));
        Setting<double> area = room.Quantity("area", Dimension.Area, "0.5 m2", "10000 m2", Setting.Derived(
            Math.Clamp(tubeM * spacing.Value, 0.5, 10_000), "length of the tubes times their spacing"));
        double m2 = area.Value;
        var use = room.Choice("use", _uses, Setting.Derived(FloorUse.Occupied, "most rooms"));
        bool bath = use.Value == FloorUse.Bath;
        var read = new HouseRoom
        {
            AreaM2 = area,
            Use = use,
            LossWPerK = room.Quantity("loss", Dimension.HeatLoss, "0.1 W/K", "100000 W/K",
                Setting.Derived(Math.Max(0.1, CommonLossWPerKM2 * m2), $"{CommonLossWPerKM2} W/K {PerArea}")),
            GainsW = room.Quantity("gains", Dimension.Power, "0 W", "100 kW", Setting.Derived(3 * m2, $"3 W {PerArea}")),
            CapacityJPerK = room.Quantity("capacity", Dimension.HeatCapacity, "1 kJ/K", "10000 MJ/K",
                Setting.Derived(80e3 * m2, $"80 kJ/K {PerArea}")),
            SpacingM = spacing,
            ScreedM = floor.Quantity("screed", Dimension.Length, "1 cm", "50 cm", Setting.Derived(0.065, "common practice")),
            CoveringResistance = floor.Quantity(
                "covering", Dimension.Resistance, "0 m2K/W", "1 m2K/W", Setting.Derived(0.05, "tiles or thin wood (common practice)")),
            InsulationResistance = floor.Quantity(
                "insulation", Dimension.Resistance, "0.05 m2K/W", "20 m2K/W", Setting.Derived(1.25, "common practice")),
            SetC = thermostat.Quantity("set", Dimension.Temperature, "0 °C", "40 °C", bath
                ? Setting.Derived(24.0, "a bath (common practice)")
                : Setting.Derived(20.0, "common practice")),
            DifferentialK = thermostat.Quantity(
                "differential", Dimension.Difference, "0.05 K", "10 K", Setting.Derived(0.5, "common practice: 0.3 to 1 K")),
            AnticipationK = thermostat.Quantity(
                "anticipation", Dimension.Difference, "0 K", "5 K", Setting.Derived(0.0, "none")),
            AnticipationTime = thermostat.Time(
                "anticipation_time", "1 s", "1 d", Setting.Derived(TimeSpan.FromMinutes(15), "common practice")),
            MinimumOn = thermostat.Time(
                "minimum_on", "0 s", "1 d", Setting.Derived(TimeSpan.FromMinutes(3), "common practice: 3 to 10 minutes")),
            MinimumOff = thermostat.Time(
                "minimum_off", "0 s", "1 d", Setting.Derived(TimeSpan.FromMinutes(3), "common practice: 1 to 5 minutes")),
        };
        room.Own?.End();
        floor.Own?.End();
        thermostat.Own?.End();
        return read;
    }

    /// <summary>Notes keys of the common tables that nobody asked for.</summary>
    public void End()
    {
        if (!_used)
            return;
        everyRoom?.End();
        everyFloor?.End();
        everyThermostat?.End();
    }

    /// <summary>A table of the zone's own, and the one that holds for all.</summary>
    private readonly record struct Pair(TableReader? Own, TableReader? Every)
    {
        public Setting<double> Quantity(string key, Dimension dimension, string least, string most, Setting<double> derived) =>
            Pick(key, table => table.Quantity(key, dimension, least, most), derived);

        public Setting<TimeSpan> Time(string key, string least, string most, Setting<TimeSpan> derived) =>
            Pick(key, table => table.Time(key, least, most), derived);

        public Setting<T> Choice<T>(string key, (string, T)[] words, Setting<T> derived)
            where T : struct =>
            Pick(key, table => table.Choice(key, words), derived);

        private Setting<T> Pick<T>(string key, Func<TableReader, T?> read, Setting<T> derived)
            where T : struct
        {
            // Both are read, so that a mistake in the one for all is seen although every zone says otherwise.
            Setting<T>? own = Own is null ? null : Given(Own, key, read);
            Setting<T>? every = Every is null ? null : Given(Every, key, read);
            return own ?? every ?? derived;
        }

        private static Setting<T>? Given<T>(TableReader table, string key, Func<TableReader, T?> read)
            where T : struct =>
            read(table) is { } value ? Setting.Given(value, table.PlaceOf(key).Line) : null;
    }
}
