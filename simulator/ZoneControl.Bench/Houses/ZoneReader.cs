using ZoneControl.Bench.Files;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Houses;

/// <summary>A zone as far as it could be read, so that the rest of the house can still be looked at.</summary>
/// <param name="Table">Its table.</param>
/// <param name="Name">Its name; null when it has none that can be used.</param>
/// <param name="Actuator">Its actuator; null when unknown.</param>
/// <param name="Capacity">Its capacity; null when unknown.</param>
/// <param name="Gated">Whether an existing panel drives its valves.</param>
/// <param name="Room">Its room, floor and thermostat.</param>
/// <param name="Zone">The zone; null when anything about it could not be read.</param>
internal sealed record ZoneDraft(
    TableReader Table, string? Name, HouseActuator? Actuator, int? Capacity, bool Gated, HouseRoom Room, HouseZone? Zone);

/// <summary>Reads zones.</summary>
internal static class ZoneReader
{
    private static readonly (string, bool)[] _makesOrBreaks = [("makes", false), ("breaks", true)];

    public static ZoneDraft Read(
        TableReader table,
        NameTable names,
        NameTable actuatorNames,
        List<HouseActuator?> actuators,
        LoopReader loopReader,
        RoomReader rooms)
    {
        string? name = names.Add(table);
        if (names.Count == Logic.ControllerSettings.MostZones + 1)
            table.Error("name", "a seventeenth zone", $"at most {Logic.ControllerSettings.MostZones} zones");
        string? label = table.Text("label", 40);
        int? actuatorIndex = actuatorNames.Find(table, "actuator", required: true);
        HouseActuator? actuator = actuatorIndex is { } found ? actuators[found] : null;

        List<HouseLoop?> loops = [.. table.Tables("loops").Select(loopReader.Read)];
        if (loops.Count == 0)
            ReportNoLoops(table);
        HouseRoom room = rooms.Read(table, loops.Sum(loop => loop?.Tube.LengthM ?? 0));
        Setting<int>? capacity = ReadCapacity(table, loops.Count);
        Setting<int> count = SettingReader.Whole(
            table, "actuators", 1, 40, Setting.Derived(Math.Clamp(loops.Count, 1, 40), "one a loop"));
        bool gated = table.Flag("gated") ?? false;
        bool? callBreaks = table.Choice("call_contact", _makesOrBreaks);
        bool? senseBreaks = table.Choice("sense_contact", _makesOrBreaks);
        TimeSpan? proof = table.Time("proof_time", "1 s", "1 d");
        TimeSpan? switchMin = table.Time("switch_min_time", "0 s", "1 d");
        TimeSpan? switchLimit = table.Time("switch_limit", "1 s", "2 d");
        table.End();
        if (callBreaks is not null && gated)
            table.Error("call_contact", "a thermostat's contact in a gated zone", "no such contact: the thermostat calls the panel");
        if (senseBreaks is not null && !gated)
            table.Error("sense_contact", "a sense contact in a zone that is not gated", "gated = true, or no such contact");

        HouseZone? zone = null;
        if (actuator is not null)
        {
            Setting<TimeSpan> proofTime = Or(table, "proof_time", proof, Derivations.ProofTime(actuator));
            zone = new HouseZone
            {
                Name = name ?? "",
                Label = label ?? name ?? "",
                Line = table.Start.Line,
                Actuator = actuator,
                Gated = gated,
                CallBreaks = callBreaks ?? false,
                SenseBreaks = senseBreaks ?? false,
                Actuators = count,
                Loops = [.. loops.OfType<HouseLoop>()],
                Capacity = capacity ?? Setting.Given(1),
                ProofTime = proofTime,
                ClosingTime = Derivations.ClosingTime(actuator),
                SwitchMinTime = Or(table, "switch_min_time", switchMin, Derivations.SwitchMinTime(actuator)),
                SwitchLimit = Or(table, "switch_limit", switchLimit, Derivations.SwitchLimit(proofTime.Value)),
            };
            CheckTimes(table, zone);
        }

        bool whole = name is not null && capacity is not null && !loops.Contains(null);
        return new ZoneDraft(table, name, actuator, capacity?.Value, gated, room, whole ? zone : null);
    }

    private static void ReportNoLoops(TableReader table)
    {
        const string Expected = "at least one loop, such as loops = [{ length = \"80 m\" }]";
        if (!table.Has("loops"))
            table.Missing("loops", Expected);
        else if (table.Node("loops", "") is TomlList { Items.Count: 0 })
            table.Error("loops", "no loops", Expected);
    }

    private static Setting<int>? ReadCapacity(TableReader table, int loops)
    {
        bool given = table.Has("capacity");
        int? capacity = table.Whole("capacity", 1, 1000);
        if (capacity is { } value)
            return Setting.Given(value, table.PlaceOf("capacity").Line);
        return given || loops == 0 ? null : Setting.Derived(loops, "number of loops");
    }

    private static void CheckTimes(TableReader table, HouseZone zone)
    {
        HouseActuator actuator = zone.Actuator;
        if (zone.ProofTime.Value < actuator.OpeningTime)
        {
            table.Error("proof_time", Durations.InWords(zone.ProofTime.Value),
                $"at least {Durations.InWords(actuator.OpeningTime)}, the opening time of actuator \"{actuator.Name}\"",
                "sooner, the pump could start against a valve that is still closed");
        }

        TimeSpan least = Derivations.LeastSwitchLimit(zone.ProofTime.Value);
        if (zone.SwitchLimit.Value < least)
        {
            table.Error("switch_limit", Durations.InWords(zone.SwitchLimit.Value),
                $"at least {Durations.InWords(least)}, the proof time and 3 s for the switch to be read");
        }

        if (actuator.SwitchAt is null)
        {
            foreach (string key in new[] { "switch_min_time", "switch_limit" })
            {
                if (table.Has(key))
                    table.Warning(key, "a time for an end switch", $"an actuator with one: \"{actuator.Name}\" has none");
            }

            return;
        }

        TimeSpan makes = actuator.DeadTime.Value
            + ((actuator.OpeningTime - actuator.DeadTime.Value) * actuator.SwitchAt.Value);
        if (zone.SwitchMinTime.Value > makes)
        {
            table.Warning("switch_min_time", Durations.InWords(zone.SwitchMinTime.Value),
                $"at most {Durations.InWords(makes)}, when a healthy switch of \"{actuator.Name}\" makes",
                "a healthy switch would never be believed");
        }
    }

    private static Setting<TimeSpan> Or(TableReader table, string key, TimeSpan? given, Setting<TimeSpan> derived) =>
        given is { } time ? Setting.Given(time, table.PlaceOf(key).Line) : derived;
}
