using System.Globalization;
using System.Text;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Proving;

/// <summary>Writes a script as a script file; only actions that <see cref="ReplayScript"/> makes.</summary>
public static class ScriptWriter
{
    /// <summary>The file's text, with a line feed at each line's end.</summary>
    public static string Text(Script script, House house)
    {
        ArgumentNullException.ThrowIfNull(script);
        ArgumentNullException.ThrowIfNull(house);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"title = {Quoted(script.Title)}\n");
        text.Append(CultureInfo.InvariantCulture, $"duration = \"{Durations.InWords(script.DurationMs)}\"\n");
        if (script.Text.Length > 0)
            text.Append(CultureInfo.InvariantCulture, $"text = {Quoted(script.Text)}\n");
        foreach (ScriptEvent happened in script.Events)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[[event]]\nat = \"{Durations.InWords(happened.AtMs)}\"\n");
            foreach (string line in Lines(happened.Action, house))
                text.Append(line).Append('\n');
        }

        return text.ToString();
    }

    private static string[] Lines(ScriptAction action, House house) => action switch
    {
        CallChange call => [$"{(call.Asks ? "call" : "end_call")} = [{Names(call.Zones, house)}]"],
        SeasonChange season => [$"season = \"{(season.Lockout ? "lockout" : "heating")}\""],
        ContactChange contact => [$"{contact.Kind.Key} = \"{(contact.Asserted ? contact.Kind.Asserted : contact.Kind.Resting)}\""],
        ServiceChange { Zones: 0, Pump: false } => ["service = \"off\""],
        ServiceChange { Zones: 0 } => ["service = { pump = true }"],
        ServiceChange service =>
            [$"service = {{ zones = [{Names(service.Zones, house)}], pump = {(service.Pump ? "true" : "false")} }}"],
        FaultChange fault =>
        [
            $"fault = \"{(fault.Fault.Switch == SwitchFault.AlwaysMade ? "switch-always-made" : "switch-never-makes")}\"",
            $"zone = \"{house.Zones[fault.Zone].Name}\"",
        ],
        FlowSwitchFaultChange flow =>
            [$"flow_switch_fault = \"{(flow.Fault == FlowSwitchFault.StuckOn ? "stuck-on" : "stuck-off")}\""],
        ClockJump jump => [$"{(jump.Ms < 0 ? "clock_back" : "clock_ahead")} = \"{Durations.InWords(Math.Abs(jump.Ms))}\""],
        PowerChange power => [$"power = \"{(power.On ? "on" : "off")}\""],
        _ => throw new NotSupportedException($"no words for {action.GetType().Name}"),
    };

    private static string Names(int zones, House house) => string.Join(
        ", ", Enumerable.Range(0, house.Zones.Count).Where(zone => (zones & (1 << zone)) != 0).Select(zone => $"\"{house.Zones[zone].Name}\""));

    // TOML's basic strings: quotation mark and backslash are escaped.
    private static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).ReplaceLineEndings(" ")}\"";
}
