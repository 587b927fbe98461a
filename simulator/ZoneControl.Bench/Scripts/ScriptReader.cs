using System.Globalization;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Scripts;

/// <summary>Reads the script as a whole; null when a part is missing.</summary>
internal static class ScriptReader
{
    /// <summary>Water of a floor under way, °C, where the file does not say.</summary>
    private const double DefaultWaterC = 30;

    /// <summary>A heated cellar, °C, where the file does not say.</summary>
    private const double DefaultPlantRoomC = 20;

    public static Script? Read(TableReader file, House house)
    {
        string? title = file.Text("title", 60, required: true);
        string text = file.Text("text", 4000, severalLines: true) ?? "";
        TimeSpan? duration = file.Time("duration", "1 s", "7 d", required: true);
        ScriptConditions conditions = ReadConditions(file.Table("conditions"));

        var names = new ZoneNames(house);
        long? durationMs = duration is { } time ? (long)time.TotalMilliseconds : null;
        List<ScriptEvent?> events = [.. file.Tables("event").Select(table => EventReader.Read(table, names, durationMs))];
        List<Expectation?> expectations = [.. file.Tables("expect").Select(table => ExpectationReader.Read(table, names, durationMs))];
        names.NoteUnknown(file.Mistakes);
        file.End();
        if (title is null || durationMs is not { } ms)
            return null;
        return new Script
        {
            Title = title,
            Text = text,
            DurationMs = ms,
            Conditions = conditions,
            Events = FaultsAddUp([.. events.OfType<ScriptEvent>().OrderBy(scriptEvent => scriptEvent.AtMs)]),
            Expectations = [.. expectations.OfType<Expectation>()],
        };
    }

    internal static ScriptConditions ReadConditions(TableReader? table)
    {
        if (table is null)
            return new ScriptConditions(DefaultWaterC, DefaultPlantRoomC);
        double water = table.Quantity("water_temperature", Dimension.Temperature, "1 °C", "95 °C") ?? DefaultWaterC;
        double room = table.Quantity("plant_room_temperature", Dimension.Temperature, "-20 °C", "60 °C") ?? DefaultPlantRoomC;
        const string Clock = "a time of day such as \"06:00\"";
        TimeOnly? start = null;
        if (table.Word("clock_start", Clock) is { } word)
        {
            if (TimeOnly.TryParseExact(word, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time))
                start = time;
            else
                table.Error("clock_start", Words.Quote(word), Clock);
        }

        table.End();
        return new ScriptConditions(water, room, start);
    }

    /// <summary>
    /// Each fault event as read holds only what it adds; here it gets what the zone suffers already, so that whoever
    /// runs the script need not remember. A repair clears all.
    /// </summary>
    private static List<ScriptEvent> FaultsAddUp(List<ScriptEvent> events)
    {
        var suffered = new Dictionary<int, Plant.ActuatorFault>();
        var result = new List<ScriptEvent>();
        foreach (ScriptEvent scriptEvent in events)
        {
            if (scriptEvent.Action is not FaultChange change)
            {
                result.Add(scriptEvent);
                continue;
            }

            Plant.ActuatorFault before = suffered.GetValueOrDefault(change.Zone, Plant.ActuatorFault.None);
            Plant.ActuatorFault now = ReferenceEquals(change.Fault, Plant.ActuatorFault.None) ? change.Fault : Both(before, change.Fault);
            suffered[change.Zone] = now;
            result.Add(scriptEvent with { Action = change with { Fault = now } });
        }

        return result;
    }

    private static Plant.ActuatorFault Both(Plant.ActuatorFault before, Plant.ActuatorFault added) => new()
    {
        Stuck = before.Stuck || added.Stuck,
        Dead = before.Dead || added.Dead,
        Slowness = added.Slowness != 1 ? added.Slowness : before.Slowness,
        Switch = added.Switch != Plant.SwitchFault.None ? added.Switch : before.Switch,
    };
}
