using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Scripts;

/// <summary>Reads expectations: one state and the times at which it is expected.</summary>
internal static class ExpectationReader
{
    private static readonly string[] _states = ["pump", "heat", "valve", "hold", "alarm", "exercises", "deadhead_at_most"];

    private static readonly string[] _times = ["at", "from", "until", "after", "within"];

    private static readonly (string, bool)[] _onOff = [("on", true), ("off", false)];

    private static readonly (string, bool)[] _openShut = [("open", true), ("shut", false)];

    private static readonly (string, bool)[] _raisedClear = [("raised", true), ("clear", false)];

    private static readonly (string Word, ValveAlarm Alarm)[] _zoneAlarms =
    [
        ("late", ValveAlarm.Late), ("latched", ValveAlarm.Latched), ("early", ValveAlarm.Early), ("stuck", ValveAlarm.Stuck),
    ];

    /// <summary>Alarms of a zone by their number, those of the house by their bit and this.</summary>
    private const int OfHouse = 1 << 30;

    private static readonly (string, int)[] _alarms =
    [
        .. _zoneAlarms.Select(alarm => (alarm.Word, (int)alarm.Alarm)),
        .. AlarmWords.All.Select(word => (word.Word, word.Alarm | OfHouse)),
    ];

    private static readonly (string, Logic.HoldReason)[] _holds =
        [.. HoldWords.All.Select(word => (word.Word, word.Reason))];

    public static Expectation? Read(TableReader table, ZoneNames names, long? durationMs)
    {
        ExpectedState? state = ReadState(table, names, ExactlyOne.Of(table, _states, "expectation"));
        ExpectedTime? when = ReadTime(table, durationMs);
        string note = table.Text("note", 120) ?? "";
        table.End();
        return state is not null && when is not null ? new Expectation(state, when, note, table.Start.Line) : null;
    }

    private static ExpectedState? ReadState(TableReader table, ZoneNames names, string? only)
    {
        bool? pump = table.Choice("pump", _onOff);
        bool? heat = table.Choice("heat", _onOff);
        int? valve = names.One(table, "valve");
        Logic.HoldReason? hold = table.Choice("hold", _holds);
        int? alarm = table.Choice("alarm", _alarms);
        bool ofHouse = (alarm & OfHouse) != 0 && alarm is not null;
        int? alarmZone = names.One(table, "zone", required: alarm is not null && !ofHouse);
        int? exercises = table.Whole("exercises", 0, 1000);
        TimeSpan? deadhead = table.Time("deadhead_at_most", "0 s", "7 d");
        bool? isSo = table.Has("alarm")
            ? table.Choice("is", _raisedClear) ?? (table.Has("is") ? null : true)
            : table.Choice("is", _openShut, required: table.Has("valve"));
        if (!table.Has("valve") && !table.Has("alarm") && table.Has("is"))
            table.Error("is", "\"is\" without a valve or an alarm", "\"is\" only beside \"valve\" or \"alarm\"");
        if (!table.Has("alarm") && table.Has("zone"))
            table.Error("zone", "a zone without an alarm", "\"zone\" only beside \"alarm\"");
        else if (ofHouse && table.Has("zone"))
            table.Error("zone", "a zone beside an alarm of the whole house", "no zone, or an alarm of a zone");
        return only switch
        {
            "pump" when pump is { } on => new PumpIs(on),
            "heat" when heat is { } on => new HeatIs(on),
            "valve" when valve is { } zone && isSo is { } open => new ValveIs(zone, open),
            "hold" when hold is { } reason => new HoldIs(reason),
            "alarm" when ofHouse && isSo is { } raised => new HouseAlarmIs(alarm!.Value & ~OfHouse, raised),
            "alarm" when alarm is { } which && alarmZone is { } zone && isSo is { } raised =>
                new AlarmIs((ValveAlarm)which, zone, raised),
            "exercises" when exercises is { } count => new ExercisesDone(count),
            "deadhead_at_most" when deadhead is { } most => new DeadheadAtMost((long)most.TotalMilliseconds),
            _ => null,
        };
    }

    private static ExpectedTime? ReadTime(TableReader table, long? durationMs)
    {
        long? at = Moment(table, "at", durationMs);
        long? from = Moment(table, "from", durationMs);
        long? until = Moment(table, "until", durationMs);
        long? after = Moment(table, "after", durationMs);
        long? within = Moment(table, "within", durationMs);
        string shape = string.Join('+', _times.Where(table.Has));
        bool isSum = table.Has("deadhead_at_most") || table.Has("exercises");
        switch (shape)
        {
            case "at" when !isSum:
                return at is { } moment ? new AtMoment(moment) : null;
            case "from+until":
                if (from is not { } start || until is not { } end)
                    return null;
                if (start < end)
                    return new Throughout(start, end);
                table.Error("until", Durations.InWords(end), $"later than \"from\", which is {Durations.InWords(start)}");
                return null;
            case "within" or "after+within" when !isSum:
                if (within is not { } length || (table.Has("after") && after is null))
                    return null;
                if ((after ?? 0) + length > durationMs)
                {
                    table.Error("within", $"a window that ends at {Durations.InWords((after ?? 0) + length)}",
                        $"an end at {Durations.InWords(durationMs.Value)} at most, the duration of the script");
                }

                return new SomeTime(after ?? 0, length);
            case "" when isSum:
                return new WholeRun();
            default:
                ReportShape(table, shape, isSum);
                return null;
        }
    }

    private static void ReportShape(TableReader table, string shape, bool isSum)
    {
        if (table.Mistakes.LostText)
            return;
        string expected = isSum
            ? "\"from\" and \"until\", or no times for the whole run"
            : "\"at\", or \"from\" and \"until\", or \"within\" with or without \"after\"";
        string found = shape.Length == 0 ? "no time" : "the times " + shape.Replace("+", ", ", StringComparison.Ordinal);
        table.Mistakes.Error(table.Start, table.Path, found, expected);
    }

    private static long? Moment(TableReader table, string key, long? durationMs)
    {
        if (table.Time(key, "0 s", "7 d") is not { } time)
            return null;
        long ms = (long)time.TotalMilliseconds;
        if (ms <= (durationMs ?? long.MaxValue))
            return ms;
        table.Error(key, Durations.InWords(time), $"at most {Durations.InWords(durationMs!.Value)}, the duration of the script");
        return null;
    }
}
