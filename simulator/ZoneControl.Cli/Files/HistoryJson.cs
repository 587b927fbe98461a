using System.Text.Json.Serialization;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Cli.Files;

/// <summary>A house's history for programs.</summary>
internal sealed record HistoryJson(
    string Schema, string House, IReadOnlyList<HistoryJson.OneFile> Records, IReadOnlyList<HistoryJson.OneZone> Zones,
    IReadOnlyList<string> Pressure)
{
    private static readonly HistoryJsonContext _json = new(SheetJson.Options);

    /// <summary>A record on file.</summary>
    public sealed record OneFile(string File, string Date, string Season, string Source, double? PressureBar, int Faults);

    /// <summary>A zone's opening times by its end switch or by a watch, s; a zone with both has two. What the last comes to, in words.</summary>
    public sealed record OneZone(
        string Zone, double WorstS, double? Ratio, bool Slowing, bool TooSlow, bool Fault, string Says, IReadOnlyList<OneTime> Times);

    /// <summary>One measurement.</summary>
    public sealed record OneTime(string Date, double Seconds, bool BySwitch);

    /// <summary>The history as text that ends with a line feed.</summary>
    public static string From(House house, HistoryReading history) => SheetJson.Text(new HistoryJson(
        "zonecontrol.history.1", house.Name,
        [.. history.Entries.Select(e => new OneFile(e.FileName, e.Record.Date, e.Record.Season, e.Record.Source, e.Record.PressureBar, RecordFindings.Faults(house, e.Record)))],
        [
            .. Drift.Of(house, history.Entries).Select(drift => new OneZone(
                house.Zones[drift.Zone].Name, drift.WorstS, drift.Ratio is { } ratio ? SheetJson.Rounded(ratio) : null, drift.IsSlowing,
                drift.IsTooSlow, drift.IsFault, drift.Judged?.Says ?? "", [.. drift.Times.Select(time => new OneTime(time.Date, time.Seconds, time.BySwitch))])),
        ],
        [.. PressureDrift.Of(house, history.Entries).Select(finding => finding.Says)]), _json.HistoryJson);
}

/// <summary>How a history is taken apart; made at build time.</summary>
[JsonSerializable(typeof(HistoryJson))]
internal sealed partial class HistoryJsonContext : JsonSerializerContext;
