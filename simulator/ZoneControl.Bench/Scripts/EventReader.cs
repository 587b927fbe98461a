using ZoneControl.Bench.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Scripts;

/// <summary>Reads events.</summary>
internal static class EventReader
{
    private static readonly string[] _actions = ["call", "end_call", "season", "fault", "repair", "power"];

    private static readonly (string, bool)[] _seasons = [("heating", false), ("lockout", true)];

    private static readonly (string, bool)[] _onOff = [("on", true), ("off", false)];

    private static readonly (string, FaultWord)[] _faults =
    [
        ("stuck", FaultWord.Stuck), ("dead", FaultWord.Dead), ("slow", FaultWord.Slow),
        ("switch-never-makes", FaultWord.SwitchNeverMakes), ("switch-always-made", FaultWord.SwitchAlwaysMade),
    ];

    private enum FaultWord
    {
        Stuck,
        Dead,
        Slow,
        SwitchNeverMakes,
        SwitchAlwaysMade,
    }

    public static ScriptEvent? Read(TableReader table, ZoneNames names, long? durationMs)
    {
        TimeSpan? at = table.Time("at", "0 s", "7 d", required: true);
        if (at is { } moment && moment.TotalMilliseconds > durationMs)
            table.Error("at", Durations.InWords(moment), $"at most {Durations.InWords(durationMs.Value)}, the duration of the script");
        ScriptAction? action = ReadAction(table, names, ExactlyOne.Of(table, _actions, "action"));
        string note = table.Text("note", 120) ?? "";
        table.End();
        return at is { } time && action is not null
            ? new ScriptEvent((long)time.TotalMilliseconds, action, note, table.Start.Line)
            : null;
    }

    private static ScriptAction? ReadAction(TableReader table, ZoneNames names, string? only)
    {
        // Every key is read even when there are two actions, so that each is known and each mistake is seen.
        int? call = names.Several(table, "call");
        int? endCall = names.Several(table, "end_call");
        bool? lockout = table.Choice("season", _seasons);
        FaultChange? fault = ReadFault(table, names);
        int? repair = names.One(table, "repair");
        bool? power = table.Choice("power", _onOff);
        if (table.Has("season") && !names.House.Contacts.Season)
            table.Error("season", "a move of the season contact", "a house that has one: season = true under [contacts]");
        return only switch
        {
            "call" when call is { } zones => new CallChange(zones, true),
            "end_call" when endCall is { } zones => new CallChange(zones, false),
            "season" when lockout is { } locked => new SeasonChange(locked),
            "fault" => fault,
            "repair" when repair is { } zone => new FaultChange(zone, ActuatorFault.None, "repaired"),
            "power" when power is { } on => new PowerChange(on),
            _ => null,
        };
    }

    private static FaultChange? ReadFault(TableReader table, ZoneNames names)
    {
        FaultWord? word = table.Choice("fault", _faults);
        bool isFault = table.Has("fault");
        int? zone = names.One(table, "zone", required: isFault);
        double? times = table.Number("times", 0.1, 100, required: word == FaultWord.Slow);
        if (!isFault && table.Has("zone"))
            table.Error("zone", "a zone without a fault", "\"zone\" only beside \"fault\"");
        if (word != FaultWord.Slow && table.Has("times"))
            table.Error("times", "a factor without a slow actuator", "\"times\" only beside fault = \"slow\"");
        if (word is not { } fault || zone is not { } number)
            return null;
        if (fault is FaultWord.SwitchNeverMakes or FaultWord.SwitchAlwaysMade && !names.House.Zones[number].Actuator.HasSwitch)
        {
            table.Error("fault", $"an end switch fault in zone \"{names.House.Zones[number].Name}\"",
                "a zone whose actuator has an end switch");
        }

        return fault switch
        {
            FaultWord.Stuck => new FaultChange(number, new ActuatorFault { Stuck = true }, "actuator sticks"),
            FaultWord.Dead => new FaultChange(number, new ActuatorFault { Dead = true }, "actuator goes dead"),
            FaultWord.Slow when times is { } factor =>
                new FaultChange(number, new ActuatorFault { Slowness = factor }, $"actuator takes {factor:0.##} times as long"),
            FaultWord.SwitchNeverMakes =>
                new FaultChange(number, new ActuatorFault { Switch = SwitchFault.NeverMakes }, "end switch no longer makes"),
            FaultWord.SwitchAlwaysMade =>
                new FaultChange(number, new ActuatorFault { Switch = SwitchFault.AlwaysMade }, "end switch is always made"),
            _ => null,
        };
    }
}
