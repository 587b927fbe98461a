using System.Globalization;
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

    private static readonly (string, bool)[] _makesOrBreaks = [("makes", false), ("breaks", true)];

    public static HouseActuator? Read(TableReader table, NameTable names)
    {
        string? name = names.Add(table);
        ActuatorKind? kind = table.Choice("kind", _kinds, required: true);
        RefuseWhatOffDoesNotClose(table);
        TimeSpan? opening = table.Time("opening_time", "1 s", "1 h", required: true);
        TimeSpan? dead = table.Time("dead_time", "0 s", "1 h");
        TimeSpan? closing = table.Time("closing_time", "1 s", "1 h");
        TimeSpan? closingDead = table.Time("closing_dead_time", "0 s", "1 h");
        bool? switchBreaks = table.Choice("switch_contact", _makesOrBreaks);
        double? switchAt = table.Quantity("switch_at", Dimension.Share, "10 %", "100 %");
        if (kind == ActuatorKind.TwoWire && table.Has("switch_at"))
            table.Error("switch_at", "an end switch on a two-wire actuator", "kind = \"four-wire\", or no switch");
        double? hold = table.Quantity("hold", Dimension.Load, "0 VA", "200 VA");
        double? inrush = table.Quantity("inrush", Dimension.Load, "0 VA", "200 VA");
        TimeSpan? inrushTime = table.Time("inrush_time", "0 s", "1 h");
        double? supply = table.Quantity("supply", Dimension.Voltage, "5 V", "250 V");
        table.End();
        if (kind is not { } k || opening is not { } open)
            return null;

        var closingTime = Or(table, "closing_time", closing, Derivations.ClosingOf(k, open));
        Setting<TimeSpan> deadTime = Or(table, "dead_time", dead, Derivations.DeadTimeOf(k, open, "opening time"));
        Setting<double> holdVa = SettingReader.Or(table, "hold", hold, Derivations.HoldOf(k));
        var actuator = new HouseActuator
        {
            Name = name ?? "",
            Kind = k,
            OpeningTime = open,
            DeadTime = deadTime,
            ClosingTime = closingTime,
            ClosingDeadTime = Or(
                table, "closing_dead_time", closingDead, Derivations.DeadTimeOf(k, closingTime.Value, "closing time")),
            SwitchAt = switchAt is { } share
                ? Setting.Given(share, table.PlaceOf("switch_at").Line)
                : k == ActuatorKind.FourWire ? Derivations.SwitchAt : null,
            SwitchBreaks = switchBreaks ?? false,
            HoldVa = holdVa,
            InrushVa = SettingReader.Or(table, "inrush", inrush, Derivations.InrushOf(k, holdVa.Value)),
            InrushTime = Or(table, "inrush_time", inrushTime, Derivations.InrushTimeOf(k, deadTime.Value, open)),
            SupplyV = SettingReader.Or(table, "supply", supply, Derivations.Supply),
        };
        LessThan(table, "dead_time", actuator.DeadTime, open, "opening");
        LessThan(table, "closing_dead_time", actuator.ClosingDeadTime, closingTime.Value, "closing");
        CheckLoad(table, actuator);
        if (switchBreaks is not null && !actuator.HasSwitch)
            table.Error("switch_contact", "a way for an end switch to tell", "an actuator with an end switch, or no switch_contact");
        return actuator;
    }

    private static void CheckLoad(TableReader table, HouseActuator actuator)
    {
        if (actuator.InrushVa.Value < actuator.HoldVa.Value)
        {
            table.Error("inrush", Va(actuator.InrushVa.Value), $"at least the {Va(actuator.HoldVa.Value)} that it takes to hold");
        }

        if (actuator.InrushTime.Value > actuator.OpeningTime)
        {
            table.Error("inrush_time", Durations.InWords(actuator.InrushTime.Value),
                $"at most {Durations.InWords(actuator.OpeningTime)}, the opening time");
        }
    }

    private static string Va(double va) => string.Create(CultureInfo.InvariantCulture, $"{va:0.#} VA");

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
