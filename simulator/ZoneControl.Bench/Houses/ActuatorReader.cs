using ZoneControl.Bench.Files;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads actuators. Those that do not close when switched off are refused by name.</summary>
internal static class ActuatorReader
{
    private static readonly (string, ActuatorKind)[] _kinds =
        [("two-wire", ActuatorKind.TwoWire), ("four-wire", ActuatorKind.FourWire), ("motorised", ActuatorKind.Motorised)];

    private static readonly (string, bool)[] _normally = [("closed", true), ("open", false)];

    private static readonly (string, bool)[] _returns = [("spring", true), ("power", false)];

    public static HouseActuator? Read(TableReader table, NameTable names)
    {
        string? name = names.Add(table);
        ActuatorKind? kind = table.Choice("kind", _kinds, required: true);
        RefuseWhatOffDoesNotClose(table);
        TimeSpan? opening = table.Time("opening_time", "1 s", "1 h", required: true);
        TimeSpan? dead = table.Time("dead_time", "0 s", "1 h");
        TimeSpan? closing = table.Time("closing_time", "1 s", "1 h");
        TimeSpan? closingDead = table.Time("closing_dead_time", "0 s", "1 h");
        double? switchAt = table.Quantity("switch_at", Dimension.Share, "10 %", "100 %");
        if (kind == ActuatorKind.TwoWire && table.Has("switch_at"))
            table.Error("switch_at", "an end switch on a two-wire actuator", "kind = \"four-wire\", or no switch");
        table.End();
        if (kind is not { } k || opening is not { } open)
            return null;

        var closingTime = Or(table, "closing_time", closing, Derivations.ClosingOf(k, open));
        var actuator = new HouseActuator
        {
            Name = name ?? "",
            Kind = k,
            OpeningTime = open,
            DeadTime = Or(table, "dead_time", dead, Derivations.DeadTimeOf(k, open, "opening time")),
            ClosingTime = closingTime,
            ClosingDeadTime = Or(
                table, "closing_dead_time", closingDead, Derivations.DeadTimeOf(k, closingTime.Value, "closing time")),
            SwitchAt = switchAt is { } share
                ? Setting.Given(share, table.PlaceOf("switch_at").Line)
                : k == ActuatorKind.FourWire ? Derivations.SwitchAt : null,
        };
        LessThan(table, "dead_time", actuator.DeadTime, open, "opening");
        LessThan(table, "closing_dead_time", actuator.ClosingDeadTime, closingTime.Value, "closing");
        return actuator;
    }

    private static void RefuseWhatOffDoesNotClose(TableReader table)
    {
        const string Why = "off must close the valve: with these it would not";
        if (table.Choice("normally", _normally) == false)
            table.Error("normally", "a normally open actuator", "a normally closed one", Why);
        if (table.Choice("returns_by", _returns) == false)
            table.Error("returns_by", "an actuator powered both ways", "one that a spring or wax returns", Why);
    }

    private static void LessThan(TableReader table, string key, Setting<TimeSpan> dead, TimeSpan whole, string what)
    {
        if (dead.Value >= whole)
            table.Error(key, Durations.InWords(dead.Value), $"less than {Durations.InWords(whole)}, the {what} time");
    }

    private static Setting<TimeSpan> Or(TableReader table, string key, TimeSpan? given, Setting<TimeSpan> derived) =>
        given is { } time ? Setting.Given(time, table.PlaceOf(key).Line) : derived;
}
