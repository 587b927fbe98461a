using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ZoneControl.Bench.Boards;
using ZoneControl.Board;

namespace ZoneControl.Cli.Files;

/// <summary>The result of <c>board</c> for programs. Fields may be added under one schema number; none changes its meaning.</summary>
public sealed record BoardJson(
    string Schema, string House, string Fingerprint, string Arrangement, bool RelaysActiveLow, bool ClosedIsHigh,
    IReadOnlyList<PinLine> Pins, IReadOnlyList<TerminalLine> Terminals, IReadOnlyList<PartLine> Parts,
    IReadOnlyList<LoadLine> Loads, IReadOnlyList<string> Warnings, IReadOnlyList<string> Cautions, string Settings)
{
    private const string SchemaName = "zonecontrol.board.1";

    private static readonly BoardJsonContext _json = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>The sheet as text that ends with a line feed.</summary>
    public static string From(BoardSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        BoardPlan plan = sheet.Plan;
        var json = new BoardJson(
            SchemaName, sheet.House.Name, sheet.Fingerprint, plan.Arrangement == BoardPlan.Direct ? "direct" : "chains",
            plan.RelaysActiveLow, plan.ClosedIsHigh, sheet.Pins, sheet.Terminals, sheet.Parts, sheet.Loads, sheet.Warnings,
            sheet.Cautions, sheet.SettingsText);
        return JsonSerializer.Serialize(json, _json.BoardJson) + "\n";
    }
}

/// <summary>Serialisers made when compiled.</summary>
[JsonSerializable(typeof(BoardJson))]
internal sealed partial class BoardJsonContext : JsonSerializerContext;
