using ZoneControl.Bench.Files;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads what the controller is told, and whether the house can do it.</summary>
internal static class ControllerReader
{
    public static HouseController? Read(TableReader? table, List<ZoneDraft> zones, NameTable zoneNames, int standing)
    {
        if (table is null)
            return null;
        int? minimumOpen = table.Whole("minimum_open", 1, 16_000, required: true);
        Setting<IReadOnlyList<int>>? companions = ReadCompanions(table, zones, zoneNames);
        HouseActuator? quickest = zones.Select(zone => zone.Actuator).OfType<HouseActuator>()
            .MinBy(actuator => actuator.OpeningTime);

        var controller = new HouseController
        {
            MinimumOpen = minimumOpen ?? 1,
            Companions = companions ?? Setting.Derived<IReadOnlyList<int>>([], ""),
            PumpStartDelay = Or(table, "pump_start_delay", "0 s", "1 d", Derivations.PumpStartDelay(quickest)),
            PumpOverrun = Or(table, "pump_overrun", "0 s", "1 d", Fixed("2 min", "common practice: half a minute to 15 minutes")),
            PumpRundown = Or(
                table, "pump_rundown", "10 ms", "1 h", Fixed("10 s", "time for the water to come to rest (common practice)")),
            HeatLead = Or(
                table, "heat_lead", "10 ms", "1 h", Fixed("5 s", "time for the heat source to see that it is off (common practice)")),
            CallDebounce = Or(
                table, "call_debounce", "0 s", "10 min", Fixed("1 s", "longer than a contact bounces (common practice)")),
            SwitchDebounce = Or(
                table, "switch_debounce", "0 ms", "500 ms", Fixed("200 ms", "longer than a contact bounces (common practice)")),
            SeasonDebounce = Or(
                table, "season_debounce", "0 s", "10 min", Fixed("2 s", "longer than a hand turns a switch (common practice)")),
            ScanPeriod = Or(table, "scan_period", "10 ms", "1 s", Fixed("100 ms", "ten looks a second")),
            ValveRetries = table.Whole("valve_retries", 0, 100) is { } retries
                ? Setting.Given(retries, table.PlaceOf("valve_retries").Line)
                : Setting.Derived(2, "once for chance, once to be sure (common practice)"),
        };
        table.End();
        CheckTimes(table, controller, quickest);
        if (minimumOpen is { } least && companions is not null && !table.Mistakes.LostText)
            CheckReach(table, least, companions.Value, zones, standing);
        return minimumOpen is null || companions is null ? null : controller;
    }

    private static Setting<IReadOnlyList<int>>? ReadCompanions(TableReader table, List<ZoneDraft> zones, NameTable zoneNames)
    {
        const string Expected = "a list of zone names in the order in which they help";
        TomlNode? node = table.Node("companions", Expected);
        if (node is null)
            return Setting.Derived<IReadOnlyList<int>>([.. Enumerable.Range(0, zones.Count)], "all zones in the file's order");
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

            good &= zone is not null;
            if (zone is { } number)
                found.Add(number);
        }

        return good ? Setting.Given<IReadOnlyList<int>>(found, table.PlaceOf("companions").Line) : null;
    }

    private static void CheckTimes(TableReader table, HouseController controller, HouseActuator? quickest)
    {
        if (quickest is not null && controller.PumpStartDelay.Value < quickest.OpeningTime)
        {
            table.Warning("pump_start_delay", Durations.InWords(controller.PumpStartDelay.Value),
                $"at least {Durations.InWords(quickest.OpeningTime)}, the opening time of \"{quickest.Name}\", "
                    + "the quickest actuator");
        }

        if (controller.PumpOverrun.Value < controller.HeatLead.Value)
        {
            table.Error(table.Has("pump_overrun") ? "pump_overrun" : "heat_lead",
                $"an overrun of {Durations.InWords(controller.PumpOverrun.Value)}",
                $"at least the heat lead of {Durations.InWords(controller.HeatLead.Value)}",
                "heat goes off first and the pump carries the rest away");
        }

        AtLeastOneScan(table, controller, "heat_lead", "a heat lead", controller.HeatLead.Value);
        AtLeastOneScan(table, controller, "pump_rundown", "a rundown", controller.PumpRundown.Value);
    }

    private static void AtLeastOneScan(TableReader table, HouseController controller, string key, string what, TimeSpan time)
    {
        if (time < controller.ScanPeriod.Value)
        {
            table.Error(table.Has(key) ? key : "scan_period", $"{what} of {Durations.InWords(time)}",
                $"at least the scan period of {Durations.InWords(controller.ScanPeriod.Value)}");
        }
    }

    /// <summary>Whether the house, and each zone that calls alone, can reach minimum open with its companions.</summary>
    private static void CheckReach(
        TableReader table, int least, IReadOnlyList<int> companions, List<ZoneDraft> zones, int standing)
    {
        if (zones.Count is 0 or > ControllerSettings.MostZones || zones.Exists(zone => zone.Capacity is null))
            return;
        int all = standing + zones.Sum(zone => zone.Capacity!.Value);
        if (all < least)
        {
            table.Error("minimum_open", $"{least}", $"at most {all}, what all zones{Standing(standing)} can pass together");
            return;
        }

        int helpers = standing + companions.Sum(zone => zones[zone].Capacity!.Value);
        for (int zone = 0; zone < zones.Count; zone++)
        {
            int reach = helpers + (companions.Contains(zone) ? 0 : zones[zone].Capacity!.Value);
            if (reach < least)
            {
                table.Error("minimum_open", $"{least}",
                    $"at most {reach}, what zone \"{zones[zone].Name}\" reaches when it calls alone: "
                        + $"itself, its companions{Standing(standing)}");
            }
        }
    }

    private static string Standing(int standing) => standing > 0 ? $" and the standing {standing}" : "";

    private static Setting<TimeSpan> Or(TableReader table, string key, string least, string most, Setting<TimeSpan> derived) =>
        table.Time(key, least, most) is { } time ? Setting.Given(time, table.PlaceOf(key).Line) : derived;

    private static Setting<TimeSpan> Fixed(string time, string from) =>
        Setting.Derived(TimeSpan.FromMilliseconds(Quantities.Read(time, Dimension.Time).Value!.Value), from);
}
