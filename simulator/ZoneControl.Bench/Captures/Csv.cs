using System.Buffers;

namespace ZoneControl.Bench.Captures;

/// <summary>Comma-separated values as RFC 4180 has them: CRLF after every record, quotes where needed and doubled inside.</summary>
public static class Csv
{
    private static readonly SearchValues<char> _quoted = SearchValues.Create(",\"\r\n");

    /// <summary>Writes one record.</summary>
    public static void Record(TextWriter into, IReadOnlyList<string> fields)
    {
        ArgumentNullException.ThrowIfNull(into);
        ArgumentNullException.ThrowIfNull(fields);
        for (int i = 0; i < fields.Count; i++)
        {
            if (i > 0)
                into.Write(',');
            into.Write(Field(fields[i]));
        }

        into.Write("\r\n");
    }

    private static string Field(string text) =>
        text.AsSpan().ContainsAny(_quoted) ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : text;
}
