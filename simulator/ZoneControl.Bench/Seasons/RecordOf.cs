using System.Globalization;
using System.Text.Json;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>Makes a record of a commissioning run.</summary>
public static class RecordOf
{
    /// <summary>The record.</summary>
    /// <param name="house">The house.</param>
    /// <param name="run">What was seen.</param>
    /// <param name="diagnosis">What it comes to.</param>
    /// <param name="controller">What drove the valves, in a few words.</param>
    /// <param name="date">The day.</param>
    public static SeasonRecord Run(House house, CommissioningRun run, Diagnosis diagnosis, string controller, DateOnly date)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(diagnosis);
        return new SeasonRecord
        {
            House = house.Name,
            Date = date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Season = "start",
            Source = SeasonRecord.Virtual,
            Controller = controller,
            Zones = [.. run.Strokes.Select(stroke => Zone(house, stroke))],
            Trials =
            [
                .. run.Trials.Select(trial => new TrialRecord(
                    Names(house, trial.Zones), trial.NotRun, trial.FlowSwitch, Seconds(trial.FlowAfterMs), trial.Seen.PumpHeard,
                    trial.Seen.Passing is { } passing ? Names(house, passing) : null)),
            ],
            Faults =
            [
                .. diagnosis.Faults.Select(fault => new FaultRecord(
                    JsonNamingPolicy.CamelCase.ConvertName(fault.Fault.ToString()),
                    [.. new[] { fault.Zone, fault.Other }.Where(zone => zone >= 0).Select(zone => house.Zones[zone].Name)],
                    fault.Says, fault.Change)),
            ],
            Unknown = diagnosis.Unknown,
        };
    }

    private static ZoneRecord Zone(House house, Stroke stroke) => new()
    {
        Zone = house.Zones[stroke.Zone].Name,
        Actuator = house.Zones[stroke.Zone].Actuator.Name,
        SwitchMadeS = Seconds(stroke.SwitchMadeMs),
        OtherSwitches = stroke.OtherSwitches != 0 ? Names(house, stroke.OtherSwitches) : null,
        OtherSwitchMadeS = Seconds(stroke.OtherSwitchMs),
        SwitchBrokeS = Seconds(stroke.SwitchBrokeMs),
        OpenedS = Seconds(stroke.Seen.OpenedAfterMs),
        Moved = stroke.Seen.Moved is { } moved ? Names(house, moved) : null,
        Warmed = stroke.Seen.Warmed is { } warmed ? Names(house, warmed) : null,
        NotTried = stroke.NotTried,
    };

    private static double? Seconds(long? ms) => ms is { } value ? Math.Round(value / 1000.0, 1) : null;

    private static List<string> Names(House house, int mask) =>
        [.. house.Zones.Where((_, zone) => (mask & (1 << zone)) != 0).Select(zone => zone.Name)];
}
