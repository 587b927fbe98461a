using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Seasons;

/// <summary>What came of reading a record.</summary>
/// <param name="Record">The record; null when it cannot be used.</param>
/// <param name="Mistakes">Every mistake found.</param>
public sealed record RecordReading(SeasonRecord? Record, IReadOnlyList<FileMistake> Mistakes);

/// <summary>Reads and writes records: JSON in UTF-8, at most 1 MiB. Bad content is a list of mistakes, never an exception.</summary>
public static class RecordFile
{
    private static readonly RecordJsonContext _json = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>The text of a record, ending with a line feed.</summary>
    public static string Write(SeasonRecord record) => JsonSerializer.Serialize(record, _json.SeasonRecord) + "\n";

    /// <summary>Reads a record from disk.</summary>
    public static RecordReading Read(string path)
    {
        var mistakes = new MistakeList(path);
        string? text = TextFile.Read(path, mistakes);
        return text is null ? new RecordReading(null, mistakes.InOrder()) : Parse(text, path);
    }

    /// <summary>Reads a record from text; <paramref name="fileName"/> is what messages call it.</summary>
    public static RecordReading Parse(string text, string fileName)
    {
        var mistakes = new MistakeList(fileName);
        SeasonRecord? record = null;
        try
        {
            record = Whole(JsonSerializer.Deserialize(text, _json.SeasonRecord));
            if (record is null)
                mistakes.Error(default, "", "null", "a record");
            else
                Check(record, mistakes);
        }
        catch (JsonException e)
        {
            int line = e.LineNumber is { } at ? (int)at + 1 : 0;
            int column = e.BytePositionInLine is { } byteAt ? (int)byteAt + 1 : 0;
            bool json = IsJson(text);
            mistakes.Error(new Place(line, column), json ? (e.Path ?? "").TrimStart('$', '.') : "",
                json ? "a value or a key that does not belong there" : "text that is not JSON, or breaks off",
                "a record as season HOUSE record or commission --json prints it");
        }

        return new RecordReading(mistakes.HasErrors ? null : record, mistakes.InOrder());
    }

    private static bool IsJson(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>What a file leaves out is empty, not missing: the reader made at build time forgets what properties begin with.</summary>
    private static SeasonRecord? Whole(SeasonRecord? read) => read is null ? null : read with
    {
        Schema = read.Schema ?? "",
        House = read.House ?? "",
        Date = read.Date ?? "",
        Season = read.Season ?? "",
        Source = read.Source ?? "",
        Controller = read.Controller ?? "",
        Notes = read.Notes ?? "",
        Zones = [.. (read.Zones ?? []).Where(zone => zone is not null)
            .Select(zone => zone with { Zone = zone.Zone ?? "", Actuator = zone.Actuator ?? "", NotTried = zone.NotTried ?? "" })],
        Trials = [.. (read.Trials ?? []).Where(trial => trial is not null)
            .Select(trial => trial with { Zones = trial.Zones ?? [], NotRun = trial.NotRun ?? "" })],
        Faults = [.. (read.Faults ?? []).Where(fault => fault is not null).Select(fault => fault with
        {
            Fault = fault.Fault ?? "", Zones = fault.Zones ?? [], Says = fault.Says ?? "", Change = fault.Change ?? "",
        })],
        Unknown = [.. (read.Unknown ?? []).Where(words => words is not null)],
    };

    private static void Check(SeasonRecord record, MistakeList mistakes)
    {
        if (record.Schema != SeasonRecord.SchemaName)
            mistakes.Error(default, "schema", Words.Quote(record.Schema), $"\"{SeasonRecord.SchemaName}\"");
        if (!DateOnly.TryParseExact(record.Date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
            mistakes.Error(default, "date", Words.Quote(record.Date), "a day such as \"2026-10-03\"");
        if (record.Season is not ("start" or "stop"))
            mistakes.Error(default, "season", Words.Quote(record.Season), "\"start\" or \"stop\"");
        foreach ((ZoneRecord zone, int i) in record.Zones.Select((zone, i) => (zone, i)))
        {
            foreach ((string key, double? time) in new[]
            {
                ("switchMadeS", zone.SwitchMadeS), ("switchBrokeS", zone.SwitchBrokeS), ("openedS", zone.OpenedS), ("closedS", zone.ClosedS),
            })
            {
                if (time is { } s && !(s is >= 0 and <= 86_400))
                    mistakes.Error(default, $"zones[{i + 1}].{key}", $"{s}", "seconds from 0 to 86,400");
            }
        }
    }
}

/// <summary>How records are taken apart; made at build time, so that nothing is looked up at run time.</summary>
[JsonSerializable(typeof(SeasonRecord))]
internal sealed partial class RecordJsonContext : JsonSerializerContext;
