using System.Text.Json.Serialization;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Cli.Files;

/// <summary>A season sheet for programs: its steps and tables as words.</summary>
internal sealed record SheetViewJson(string Schema, string Title, string House, IReadOnlyList<SheetViewJson.OneSection> Sections)
{
    private static readonly SheetViewJsonContext _json = new(SheetJson.Options);

    /// <summary>A section.</summary>
    public sealed record OneSection(
        string Heading, IReadOnlyList<string> Cautions, IReadOnlyList<string> Texts, IReadOnlyList<OneStep> Steps, IReadOnlyList<OneTable> Tables);

    /// <summary>A step and what to write down.</summary>
    public sealed record OneStep(string Says, IReadOnlyList<string> Fields);

    /// <summary>A table.</summary>
    public sealed record OneTable(string Caption, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);

    /// <summary>The sheet as text that ends with a line feed.</summary>
    public static string From(SheetView sheet) => SheetJson.Text(new SheetViewJson(
        "zonecontrol.sheet.1", sheet.Title, sheet.House,
        [
            .. sheet.Sections.Select(section => new OneSection(
                section.Heading,
                [.. section.Blocks.OfType<SheetCaution>().Select(caution => caution.Words)],
                [.. section.Blocks.OfType<SheetText>().Select(text => text.Words)],
                [.. section.Blocks.OfType<SheetSteps>().SelectMany(steps => steps.Steps).Select(step => new OneStep(step.Words, step.Fields))],
                [
                    .. section.Blocks.OfType<SheetTable>().Select(table => new OneTable(
                        table.Caption, [.. table.Columns.Select(column => column.Heading)], table.Rows)),
                ])),
        ]), _json.SheetViewJson);
}

/// <summary>How a sheet is taken apart; made at build time.</summary>
[JsonSerializable(typeof(SheetViewJson))]
internal sealed partial class SheetViewJsonContext : JsonSerializerContext;
