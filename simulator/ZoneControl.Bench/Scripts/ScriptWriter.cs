using System.Globalization;
using System.Text;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Scripts;

/// <summary>
/// Writes what happens in a script as a script file. Read again it gives the same events; expectations are not written,
/// since they are the original file's.
/// </summary>
public static class ScriptWriter
{
    /// <summary>The file's text.</summary>
    /// <param name="script">The script; its events in order of time.</param>
    /// <param name="house">The house whose names it uses.</param>
    /// <exception cref="NotSupportedException">An action that a file has no words for.</exception>
    public static string Write(Script script, House house)
    {
        ArgumentNullException.ThrowIfNull(script);
        ArgumentNullException.ThrowIfNull(house);
        var text = new StringBuilder();
        Line(text, $"# For the house \"{Plain(house.Name)}\"{(house.FileName.Length > 0 ? $", {Plain(house.FileName)}" : "")}.");
        Line(text, "");
        Line(text, $"title = {Quoted(script.Title)}");
        if (script.Text.Length > 0)
            Line(text, $"text = {Quoted(script.Text)}");
        Line(text, $"duration = {Time(script.DurationMs)}");
        Line(text, "");
        Line(text, "[conditions]");
        Line(text, Invariant($"water_temperature = \"{script.Conditions.WaterC:0.############} °C\""));
        Line(text, Invariant($"plant_room_temperature = \"{script.Conditions.PlantRoomC:0.############} °C\""));
        if (script.Conditions.ClockStart is { } start)
            Line(text, Invariant($"clock_start = \"{start:HH\\:mm}\""));
        var suffered = new Dictionary<int, ActuatorFault>();
        foreach (ScriptEvent happened in script.Events)
        {
            foreach (string action in Actions(happened.Action, house, suffered))
            {
                Line(text, "");
                Line(text, "[[event]]");
                Line(text, $"at = {Time(happened.AtMs)}");
                Line(text, action);
                if (happened.Note.Length > 0)
                    Line(text, $"note = {Quoted(happened.Note)}");
            }
        }

        return text.ToString();
    }

    private static IEnumerable<string> Actions(ScriptAction action, House house, Dictionary<int, ActuatorFault> suffered) => action switch
    {
        CallChange call => [$"{(call.Asks ? "call" : "end_call")} = {Zones(call.Zones, house)}"],
        SeasonChange season => [$"season = \"{(season.Lockout ? "lockout" : "heating")}\""],
        FaultChange fault => Faults(fault, house, suffered),
        ContactChange contact => [$"{contact.Kind.Key} = \"{(contact.Asserted ? contact.Kind.Asserted : contact.Kind.Resting)}\""],
        ServiceChange { Zones: 0, Pump: false } => ["service = \"off\""],
        ServiceChange { Zones: 0 } => ["service = { pump = true }"],
        ServiceChange hands => [$"service = {{ zones = {Zones(hands.Zones, house)}, pump = {(hands.Pump ? "true" : "false")} }}"],
        PumpFaultChange pump => [$"pump_fault = \"{Word(pump.Fault)}\""],
        FlowSwitchFaultChange flow => [$"flow_switch_fault = \"{Word(flow.Fault)}\""],
        ClockJump jump => [$"{(jump.Ms < 0 ? "clock_back" : "clock_ahead")} = {Time(Math.Abs(jump.Ms))}"],
        ClockStop stop => [$"clock_stop = {Time(stop.Ms)}"],
        PowerChange power => [$"power = \"{(power.On ? "on" : "off")}\""],
        _ => throw new NotSupportedException($"A script file has no words for {action.GetType().Name}."),
    };

    /// <summary>A file says what a fault adds; an event holds all that the zone suffers.</summary>
    private static IEnumerable<string> Faults(FaultChange change, House house, Dictionary<int, ActuatorFault> suffered)
    {
        ActuatorFault before = suffered.GetValueOrDefault(change.Zone, ActuatorFault.None);
        ActuatorFault now = change.Fault;
        suffered[change.Zone] = now;
        string name = house.Zones[change.Zone].Name;
        string zone = $"\nzone = \"{name}\"";
        if (now == ActuatorFault.None)
        {
            yield return $"repair = \"{name}\"";
            yield break;
        }

        if (now.Stuck && !before.Stuck)
            yield return $"fault = \"stuck\"{zone}";
        if (now.Dead && !before.Dead)
            yield return $"fault = \"dead\"{zone}";
        if (now.Slowness != before.Slowness)
            yield return Invariant($"fault = \"slow\"{zone}\ntimes = {now.Slowness:0.######}");
        if (now.Switch != before.Switch && now.Switch != SwitchFault.None)
            yield return $"fault = \"{(now.Switch == SwitchFault.NeverMakes ? "switch-never-makes" : "switch-always-made")}\"{zone}";
    }

    private static string Word(PumpFault fault) => fault switch
    {
        PumpFault.Dead => "dead",
        PumpFault.RunsOn => "runs-on",
        _ => "none",
    };

    private static string Word(FlowSwitchFault fault) => fault switch
    {
        FlowSwitchFault.StuckOn => "stuck-on",
        FlowSwitchFault.StuckOff => "stuck-off",
        _ => "none",
    };

    private static string Zones(int mask, House house)
    {
        string[] names = [.. house.Zones.Where((_, zone) => (mask & (1 << zone)) != 0).Select(zone => $"\"{zone.Name}\"")];
        return names.Length == 1 ? names[0] : $"[{string.Join(", ", names)}]";
    }

    private static string Time(long ms) => $"\"{Durations.InWords(ms)}\"";

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (char c in text)
        {
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\t' => "\\t",
                < ' ' or '\u007f' => Invariant($"\\u{(int)c:X4}"),
                _ => $"{c}",
            });
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>For a remark: one line whatever the name holds.</summary>
    private static string Plain(string text) => string.Concat(text.Where(c => !char.IsControl(c)));

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
