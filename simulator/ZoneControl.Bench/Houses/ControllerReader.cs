using ZoneControl.Bench.Files;
using static ZoneControl.Bench.Houses.SettingReader;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads what the controller is told. <see cref="ControllerChecks"/> says whether the house can do it.</summary>
internal static class ControllerReader
{
    private const string Bounces = "longer than a contact bounces (common practice)";
    private const string Chance = "once for chance, once to be sure (common practice)";

    public static HouseController? Read(
        TableReader? table, List<ZoneDraft> zones, NameTable zoneNames, int standing, HouseContacts contacts)
    {
        if (table is null)
            return null;
        int? minimumOpen = table.Whole("minimum_open", 1, 16_000, required: true);
        Setting<IReadOnlyList<int>>? companions = ReadCompanions(table, zones, zoneNames);
        bool through = table.Flag("heat_demand_through") ?? false;
        HouseActuator? quickest = zones.Select(zone => zone.Actuator).OfType<HouseActuator>()
            .MinBy(actuator => actuator.OpeningTime);
        Setting<TimeSpan> interval = Time(table, "exercise_interval", "0 s", "366 d", ExerciseInterval(zones));

        var controller = new HouseController
        {
            MinimumOpen = minimumOpen ?? 1,
            Companions = companions ?? Setting.Derived<IReadOnlyList<int>>([], ""),
            PumpStartDelay = Time(table, "pump_start_delay", "0 s", "1 d", Derivations.PumpStartDelay(quickest)),
            PumpOverrun = Time(table, "pump_overrun", "0 s", "1 d", Fixed("2 min", "common practice: half a minute to 15 minutes")),
            PumpRundown = Time(
                table, "pump_rundown", "10 ms", "1 h", Fixed("10 s", "time for the water to come to rest (common practice)")),
            HeatLead = Time(
                table, "heat_lead", "10 ms", "1 h", Fixed("5 s", "time for the heat source to see that it is off (common practice)")),
            CallDebounce = Time(table, "call_debounce", "0 s", "10 min", Fixed("1 s", Bounces)),
            SwitchDebounce = Time(table, "switch_debounce", "0 ms", "500 ms", Fixed("200 ms", Bounces)),
            ScanPeriod = Time(table, "scan_period", "10 ms", "1 s", Fixed("100 ms", "ten looks a second")),
            ValveRetries = Whole(table, "valve_retries", 0, 100, Setting.Derived(2, Chance)),
            PumpMinOff = Time(table, "pump_min_off", "0 s", "1 d", Fixed("3 min", "common practice: 1 to 5 minutes")),
            PumpMaxStarts = Whole(table, "pump_max_starts", 1, 120, Setting.Derived(6, "common practice: 1 to 6 an hour")),
            FlowProofTime = Time(
                table, "flow_proof_time", "1 s", "10 min", Fixed("20 s", "time for the water to get going (common practice)")),
            FlowLossTime = Time(
                table, "flow_loss_time", "1 s", "10 min", Fixed("5 s", "longer than a bubble takes to pass (common practice)")),
            FlowRetries = Whole(table, "flow_retries", 0, 100, Setting.Derived(2, Chance)),
            ExerciseInterval = interval,
            ExerciseRun = Time(
                table, "exercise_run", "1 s", "1 h", Fixed("2 min", "common practice: 10 seconds to 5 minutes")),
            ExerciseRetry = Time(table, "exercise_retry", "1 min", "7 d", ExerciseRetry(interval.Value)),
            FreezeHeatMax = Time(
                table, "freeze_heat_max", "0 s", "7 d", Fixed("4 h", "a broken wire must not heat all summer (common practice)")),
            PriorityMax = Time(
                table, "priority_max", "1 s", "7 d", Fixed("1 h", "a tank is hot by then (common practice)")),
            ServiceLimit = Time(
                table, "service_limit", "1 s", "1 d", Fixed("30 min", "a forgotten switch ends by itself (common practice)")),
            StallScans = Whole(table, "stall_scans", 1, 1000, Setting.Derived(10, "no healthy clock gives one time so often")),
            StallLimit = Time(table, "stall_limit", "10 ms", "1 h", Fixed("1 s", "ten times a usual scan period")),
        };
        table.End();
        ControllerChecks.Times(table, controller, quickest, contacts);
        ControllerChecks.Gate(table, zones, through);
        if (minimumOpen is { } least && companions is not null && !table.Mistakes.LostText)
            ControllerChecks.Reach(table, least, companions.Value, zones, standing);
        return minimumOpen is null || companions is null ? null : controller;
    }

    private static Setting<TimeSpan> ExerciseInterval(List<ZoneDraft> zones) => zones.TrueForAll(zone => zone.Gated)
        ? Setting.Derived(TimeSpan.Zero, "never: every valve is the panel's to move")
        : Fixed("14 d", "common practice: 1 to 14 days for pumps, 1 to 4 weeks for valves");

    private static Setting<TimeSpan> ExerciseRetry(TimeSpan interval) => interval > TimeSpan.Zero && interval < TimeOf("1 h")
        ? Setting.Derived(interval, "the exercise interval")
        : Fixed("1 h", "soon enough for what takes weeks to seize (common practice)");

    private static Setting<IReadOnlyList<int>>? ReadCompanions(TableReader table, List<ZoneDraft> zones, NameTable zoneNames)
    {
        const string Expected = "a list of zone names in the order in which they help";
        TomlNode? node = table.Node("companions", Expected);
        if (node is null)
            return DefaultCompanions(zones);
        if (node is not TomlList list)
        {
            table.Error("companions", node.Found, Expected);
            return null;
        }

        var found = new List<int>();
        bool good = true;
        for (int i = 0; i < list.Items.Count; i++)
        {
            string path = $"{table.PathOf("companions")}[{i + 1}]";
            TomlNode item = list.Items[i];
            int? zone = null;
            if (item is TomlScalar { Value: string name })
                zone = zoneNames.Find(name, item.Place, path, table.Mistakes);
            else
                table.Mistakes.Error(item.Place, path, item.Found, "the name of a zone");
            if (zone is { } again && found.Contains(again))
            {
                table.Mistakes.Error(item.Place, path, $"{item.Found} for the second time", "each zone at most once");
                zone = null;
            }
            else if (zone is { } panels && zones[panels].Gated)
            {
                table.Mistakes.Error(item.Place, path, $"{item.Found}, a gated zone", "zones that ZoneControl opens itself",
                    "the panel opens a gated zone, nobody else");
                zone = null;
            }

            good &= zone is not null;
            if (zone is { } number)
                found.Add(number);
        }

        return good ? Setting.Given<IReadOnlyList<int>>(found, table.PlaceOf("companions").Line) : null;
    }

    private static Setting<IReadOnlyList<int>> DefaultCompanions(List<ZoneDraft> zones)
    {
        int[] driven = [.. Enumerable.Range(0, zones.Count).Where(zone => !zones[zone].Gated)];
        return Setting.Derived<IReadOnlyList<int>>(
            driven, driven.Length == zones.Count ? "all zones in the file's order" : "all zones that are not gated, in the file's order");
    }
}
