using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Web.View.Sheets;

/// <summary>A record of a season's start or stop as a document, and what it says of the house file.</summary>
public static class RecordSheet
{
    private const string Thermostats =
        "Whether each thermostat calls its own room's zone is not tried here: turn one up at a time and feel which floor gets warm.";

    private const string Rehearsal =
        "Valves, pump and water were the model's: nothing of the real house was tried, and this is no proof of it.";

    private const string TrialWords =
        "Flow switch: what its contact said. Passing water: the zones whose flow glasses (the small sight tubes on the manifold) moved "
        + "or whose pipes got warm.";

    /// <summary>The document of a record.</summary>
    public static SheetView From(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(record);
        bool model = record.Source == SeasonRecord.Virtual;
        IReadOnlyList<Finding> judged = RecordFindings.Judged(house, record);
        Finding[] faults = [.. judged.Where(finding => finding.Kind == FindingKind.Fault && !IsNamed(record, finding))];
        IReadOnlyList<string> unknown = [.. record.Unknown, .. RecordFindings.Missing(house, record)];
        var sections = new List<SheetSection> { new("What is wrong", [Wrong(record, faults)]) };
        Finding[] advice = [.. judged.Where(finding => finding.Kind == FindingKind.Advice)];
        if (advice.Length > 0)
            sections.Add(new SheetSection("Other than the house file says", [CheckSheet.Findings(advice)]));
        IReadOnlyList<Finding> pressure = RecordFindings.Pressure(house, record);
        if (pressure.Count > 0)
            sections.Add(new SheetSection("Pressure", [CheckSheet.Findings(pressure)]));
        if (unknown.Count > 0)
            sections.Add(new SheetSection("What is not known", [.. unknown.Select(words => new SheetText(words))]));
        if (model || record.Zones.Any(zone => (zone.OpenedS ?? zone.SwitchMadeS ?? zone.ClosedS) is not null))
            sections.Add(Strokes(house, record, model));
        // After a run that was broken off at rest only one thing was tried, and it shows only where the pump stopped.
        bool silent = record.Faults.Any(fault => fault.Fault == "pumpRunsUnasked");
        if (record.Trials.Count > 0 && !silent)
            sections.Add(new SheetSection("The pump with zones open", [new SheetText(TrialWords), Trials(house, record)]));
        if (record.Notes.Length > 0 || record.PressureBar is not null)
            sections.Add(new SheetSection("Notes", [new SheetText(Notes(house, record))]));
        return new SheetView(model ? "season rehearsal" : "season record", Title(record, model), CheckSheet.HouseLine(house),
            $"{record.Date}, {record.Season} of the season, {Origin(record, model)} {Thermostats}", sections)
        {
            Verdict = Verdict(record, faults.Length, advice.Length, unknown.Count, pressure.Count > 0, model),
            FromModel = model,
            Date = record.Date,
        };
    }

    private static string Title(SeasonRecord record, bool model) => model
        ? "Rehearsal on a model: not a test of your house"
        : record.Season == "stop" ? "End of the season" : "Start of the season";

    private static string Origin(SeasonRecord record, bool model) => model
        ? $"on virtual pins, driven by {(record.Controller == "firmware" ? "the compiled firmware" : "ZoneControl's logic")}. {Rehearsal}"
        : record.Controller.Length > 0 ? $"{record.Source}, {record.Controller}." : $"{record.Source}.";

    private static SheetVerdict Verdict(SeasonRecord record, int slow, int advice, int unknown, bool pressure, bool model)
    {
        int faults = record.Faults.Count + slow;
        string word = faults > 0 ? "FAULT" : unknown > 0 ? "INCOMPLETE" : advice > 0 ? "LOOK" : pressure ? "PRESSURE" : "GOOD";
        return new SheetVerdict(faults == 0, model ? $"{word} (model)" : word,
            $"{Quantity.Count(faults, "fault")}, {Quantity.Count(unknown, "thing")} not known"
                + (advice > 0 ? $", {Quantity.Count(advice, "time")} other than the house file says" : "") + (pressure ? "; the pressure wants a look." : "."));
    }

    private static SheetBlock Wrong(SeasonRecord record, Finding[] faults)
    {
        Finding[] wrong =
            [.. record.Faults.Select(fault => new Finding(Spaced(fault.Fault), FindingKind.Fault, fault.Says, "", fault.Change)), .. faults];
        return wrong.Length > 0
            ? CheckSheet.Findings(wrong)
            : new SheetText(record.Source == SeasonRecord.ByHand ? "Nothing that was measured is wrong." : "Nothing that was tried is wrong.");
    }

    /// <summary>The run has named that zone's slow valve already.</summary>
    private static bool IsNamed(SeasonRecord record, Finding finding) =>
        record.Faults.Any(fault => fault.Says == finding.Says);

    /// <summary>The section of a check that offers a record's measured times as settings.</summary>
    public static SheetSection Offered(House house, SeasonRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        IReadOnlyList<MeasuredSetting> settings = RecordFindings.Settings(house, record);
        SheetBlock block = settings.Count == 0
            ? new SheetText("Nothing to take over into the house file.")
            : new SheetLines("To take over into the house file",
            [
                .. settings.GroupBy(setting => setting.Actuator).SelectMany(actuator => (string[])
                [
                    $"# in the [[actuator]] table with name = \"{actuator.Key}\":",
                    .. actuator.Select(setting => $"{setting.Key} = \"{setting.Value}\"   # was \"{setting.Now}\""),
                ]),
            ]);
        SheetText[] second = [.. RecordFindings.SecondChoices(house, record).Select(words => new SheetText(words))];
        return new SheetSection($"Times measured on {record.Date}", [block, .. second]);
    }

    private static SheetSection Strokes(House house, SeasonRecord record, bool model)
    {
        bool unasked = record.Faults.Any(fault => fault.Fault is "pumpRunsUnasked" or "pumpInverted" or "pumpOnValveOutput");
        string heading = !model ? "Times written down" : unasked ? "Strokes: THE PUMP RAN UNASKED" : "Strokes with the pump off";
        SheetText[] hands = model && !house.Contacts.Service
            ? [new SheetText("This house has no hand switches (service = true under [contacts]); the run was made as if jumpers stood in for them.")]
            : [];
        return new SheetSection(heading, [.. hands, new SheetText(StrokeWords(record)), Times(house, record)]);
    }

    /// <summary>What the columns mean, of those alone that the table has.</summary>
    private static string StrokeWords(SeasonRecord record)
    {
        bool shut = record.Zones.Any(zone => zone.ClosedS is not null);
        bool made = record.Zones.Any(zone => zone.SwitchMadeS is not null || MadeAtRest(record, zone));
        bool broke = record.Zones.Any(zone => zone.SwitchBrokeS is not null);
        bool moved = record.Zones.Any(zone => zone.Moved is not null);
        bool warmed = record.Zones.Any(zone => zone.Warmed is not null);
        string words = $"Times run from the moment at which the zone's output was switched on{(shut || broke ? ", or off" : "")}. "
            + $"{(shut ? "Open and shut" : "Open")}: until the stem stood still, by a watch.";
        if (made || broke)
            words += $" Switch {(made && broke ? "on and off" : made ? "on" : "off")}: until its end switch changed.";
        if (moved)
            words += " Moved: whose stem (the pin under the actuator) moved.";
        if (warmed)
            words += " Warm: whose actuator got warm or hummed.";
        return moved || warmed ? words + " \"Itself\" is as it should be." : words;
    }

    /// <summary>The columns in which something stands.</summary>
    private static SheetTable Times(House house, SeasonRecord record)
    {
        var columns = new List<(SheetColumn Head, Func<ZoneRecord, string> Cell)>
        {
            (new("zone"), zone => Label(house, zone.Zone)),
            (new("open", true), zone => zone.NotTried.Length > 0 ? "not tried" : Time(zone.OpenedS)),
        };
        void Add(string heading, bool number, Func<ZoneRecord, bool> has, Func<ZoneRecord, string> cell)
        {
            if (record.Zones.Any(has))
                columns.Add((new(heading, number), cell));
        }

        Add("switch on", true, zone => zone.SwitchMadeS is not null || zone.OtherSwitches is not null || MadeAtRest(record, zone), zone =>
            MadeAtRest(record, zone) ? "at rest"
            : zone is { SwitchMadeS: null, OtherSwitches: { } others } ? $"by {Names(house, others)}'s: {Time(zone.OtherSwitchMadeS)}"
            : HasSwitch(house, zone) ? Time(zone.SwitchMadeS) : "none");
        Add("shut", true, zone => zone.ClosedS is not null, zone => Time(zone.ClosedS));
        Add("switch off", true, zone => zone.SwitchBrokeS is not null, zone => HasSwitch(house, zone) ? Time(zone.SwitchBrokeS) : "none");
        string Moved(ZoneRecord zone) => Names(house, zone.Moved, zone.Zone);
        string Warm(ZoneRecord zone) => Names(house, zone.Warmed, zone.Zone);
        // One column where both say the same: names are long.
        bool alike = record.Zones.All(zone => Moved(zone) == Warm(zone));
        Add(alike ? "moved, warm" : "moved", false, zone => zone.Moved is not null, Moved);
        Add("warm", false, zone => zone.Warmed is not null && !alike, Warm);
        return new SheetTable("Each zone's valves", [.. columns.Select(column => column.Head)],
            [.. record.Zones.Select(zone => (IReadOnlyList<string>)[.. columns.Select(column => column.Cell(zone))])]);
    }

    private static SheetTable Trials(House house, SeasonRecord record) => new(
        "What showed that water moved",
        [new("open zones"), new("flow switch"), new("pump heard"), new("passing water")],
        [
            .. record.Trials.Select(trial => (IReadOnlyList<string>)
            [
                Names(house, trial.Zones),
                trial.NotRun.Length > 0 ? "not run" : trial.FlowSwitch switch
                {
                    null => "none fitted",
                    true => $"after {Time(trial.FlowAfterS)}",
                    false => "no flow",
                },
                trial.NotRun.Length > 0 ? "-" : trial.PumpHeard switch { null => "nobody listened", true => "yes", false => "no" },
                trial.NotRun.Length > 0 ? "-" : Same(trial) ? "the same" : Names(house, trial.Passing),
            ]),
        ]);

    private static bool Same(TrialRecord trial) =>
        trial.Passing is { } passing && passing.Order(StringComparer.Ordinal).SequenceEqual(trial.Zones.Order(StringComparer.Ordinal));

    private static string Notes(House house, SeasonRecord record) =>
        (record.PressureBar is { } bar ? $"Pressure, cold: {Measured.Pressure(bar * 1e5, house.Units)}. " : "") + record.Notes;

    private static string Names(House house, IReadOnlyList<string>? names, string own = "") => names switch
    {
        null => "nobody looked",
        { Count: 0 } => "none",
        [var only] when only == own => "itself",
        _ => string.Join(", ", names.Select(name => Label(house, name))),
    };

    private static string Label(House house, string name) =>
        house.ZoneIndex(name) is >= 0 and var zone ? house.Zones[zone].Label : name;

    private static bool MadeAtRest(SeasonRecord record, ZoneRecord zone) =>
        record.Faults.Any(fault => fault.Fault == "switchMadeAtRest" && fault.Zones.Contains(zone.Zone));

    private static bool HasSwitch(House house, ZoneRecord zone) =>
        house.ZoneIndex(zone.Zone) is not (>= 0 and var index) || house.Zones[index].Actuator.HasSwitch;

    private static string Time(double? seconds) => seconds is { } s ? Durations.InWords((long)Math.Round(s) * 1000) : "-";

    private static string Spaced(string word) =>
        string.Concat(word.Select(c => char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"));
}
