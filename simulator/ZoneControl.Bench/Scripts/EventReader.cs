using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Scripts;

/// <summary>Reads events.</summary>
internal static class EventReader
{
    private static readonly string[] _actions =
    [
        "call", "end_call", "season", "limit", "freeze", "priority", "reset", "supply", "service", "fault", "repair",
        "pump_fault", "flow_switch_fault", "clock_ahead", "clock_back", "clock_stop", "power",
    ];

    private static readonly (string, bool)[] _seasons = [("heating", false), ("lockout", true)];

    private static readonly (string, bool)[] _onOff = [("on", true), ("off", false)];

    private static readonly (string, FaultWord)[] _faults =
    [
        ("stuck", FaultWord.Stuck), ("dead", FaultWord.Dead), ("slow", FaultWord.Slow),
        ("switch-never-makes", FaultWord.SwitchNeverMakes), ("switch-always-made", FaultWord.SwitchAlwaysMade),
    ];

    private static readonly (string, PumpFault)[] _pumpFaults =
        [("dead", PumpFault.Dead), ("runs-on", PumpFault.RunsOn), ("none", PumpFault.None)];

    private static readonly (string, FlowSwitchFault)[] _flowSwitchFaults =
    [
        ("stuck-on", FlowSwitchFault.StuckOn), ("stuck-off", FlowSwitchFault.StuckOff), ("none", FlowSwitchFault.None),
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
        ContactChange? contact = ReadContacts(table, names.House, only);
        ServiceChange? service = ServiceReader.Read(table, names);
        PumpFault? pumpFault = table.Choice("pump_fault", _pumpFaults);
        FlowSwitchFault? flowSwitchFault = table.Choice("flow_switch_fault", _flowSwitchFaults);
        TimeSpan? ahead = table.Time("clock_ahead", "1 ms", "7 d");
        TimeSpan? back = table.Time("clock_back", "1 ms", "7 d");
        TimeSpan? stop = table.Time("clock_stop", "1 ms", "1 h");
        if (table.Has("season"))
            Demand(table, "season", names.House, ContactKind.Of(Contact.Lockout));
        if (table.Has("flow_switch_fault"))
            Demand(table, "flow_switch_fault", names.House, ContactKind.Of(Contact.Flow));
        return only switch
        {
            "call" when call is { } zones => new CallChange(zones, true),
            "end_call" when endCall is { } zones => new CallChange(zones, false),
            "season" when lockout is { } locked => new SeasonChange(locked),
            "fault" => fault,
            "repair" when repair is { } zone => new FaultChange(zone, ActuatorFault.None, "repaired"),
            "service" => service,
            "pump_fault" when pumpFault is { } wrong => new PumpFaultChange(wrong),
            "flow_switch_fault" when flowSwitchFault is { } wrong => new FlowSwitchFaultChange(wrong),
            "clock_ahead" when ahead is { } time => new ClockJump((long)time.TotalMilliseconds),
            "clock_back" when back is { } time => new ClockJump(-(long)time.TotalMilliseconds),
            "clock_stop" when stop is { } time => new ClockStop((long)time.TotalMilliseconds),
            "power" when power is { } on => new PowerChange(on),
            _ => contact,
        };
    }

    /// <summary>The contacts that a script moves directly. The supply may go whether or not a contact tells of it.</summary>
    private static ContactChange? ReadContacts(TableReader table, House house, string? only)
    {
        ContactChange? change = null;
        foreach (ContactKind kind in ContactKind.All)
        {
            if (kind.Contact is Contact.Lockout or Contact.Flow)
                continue;
            bool? asserted = table.Choice(kind.Key, [(kind.Asserted, true), (kind.Resting, false)]);
            if (table.Has(kind.Key) && kind.Contact != Contact.Supply)
                Demand(table, kind.Key, house, kind);
            if (only == kind.Key && asserted is { } state)
                change = new ContactChange(kind, state);
        }

        return change;
    }

    private static void Demand(TableReader table, string key, House house, ContactKind kind)
    {
        if (!house.Contacts.Has(kind.Contact))
        {
            table.Error(key, $"a move of the {kind.Label}", $"a house that has one: {kind.Key} = true under [contacts]");
        }
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
