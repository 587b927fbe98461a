using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using ZoneControl.Bench.Choosing;

namespace ZoneControl.Cli.Files;

/// <summary>How results of <c>check</c>, <c>season</c> and <c>compare</c> are written for programs.</summary>
internal static class SheetJson
{
    /// <summary>Layout shared by all: indented, camel case, line feeds, letters as they are.</summary>
    public static JsonSerializerOptions Options => new()
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    /// <summary>The text, ending with a line feed.</summary>
    public static string Text<T>(T value, JsonTypeInfo<T> type) => JsonSerializer.Serialize(value, type) + "\n";

    /// <summary>Thousandths are finer than anything the model knows, and keep noise in the last bits out of comparisons.</summary>
    public static double Rounded(double value) => Math.Round(value, 3);
}

/// <summary>A finding for programs.</summary>
internal sealed record FindingJson(string Topic, string Kind, string Says, double? Value, string Unit, string Basis, string Change)
{
    public static FindingJson From(Finding finding) => new(
        finding.Topic,
        finding.Kind switch
        {
            FindingKind.Fault => "fault",
            FindingKind.Advice => "advice",
            _ => "fine",
        },
        finding.Says, finding.Value is { } value ? SheetJson.Rounded(value) : null, finding.Unit, finding.Basis, finding.Change);
}
