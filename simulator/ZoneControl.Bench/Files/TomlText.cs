using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace ZoneControl.Bench.Files;

/// <summary>
/// Reads TOML text. After a syntax error the statement at fault is taken out and the rest is read again, so that one slip
/// does not hide the other mistakes.
/// </summary>
internal static class TomlText
{
    /// <summary>Most characters of a file: 1 MiB.</summary>
    public const int LongestText = 1024 * 1024;

    private const int MostSyntaxErrors = 10;

    /// <summary>Name of the table into which keys fall whose own header could not be read.</summary>
    private const string LostTable = "lost-table-";

    /// <summary>The file's content; syntax errors are noted, and what they spoil is left out.</summary>
    public static TomlTable Read(string text, MistakeList mistakes)
    {
        if (text.Length > LongestText)
        {
            mistakes.LostText = true;
            mistakes.Error(default, "", "more than 1 MiB of text", "a file of at most 1 MiB");
            return new TomlTable(default);
        }

        string[] lines = Digestible(text).Split('\n');
        try
        {
            for (int count = 1; count <= MostSyntaxErrors; count++)
            {
                DiagnosticMessage? error = FirstError(Parse(lines, mistakes.File, false));
                if (error is null)
                    return Checked(lines, mistakes);
                mistakes.LostText = true;
                TakeOut(lines, error, mistakes);
            }

            mistakes.Error(default, "", $"more than {MostSyntaxErrors} syntax errors", "TOML", "the rest was not looked at");
        }
        catch (TomlException e)
        {
            // Thrown for tables nested too deep, where there is no statement to take out.
            mistakes.Error(default, "", "text that is not TOML", "", Words.Clean(e.Message));
        }

        mistakes.LostText = true;
        return new TomlTable(default);
    }

    /// <summary>
    /// The text as the library can take it: it throws on a backslash at the very end, and on one before half a surrogate pair.
    /// </summary>
    private static string Digestible(string text)
    {
        char[] letters = [.. text, '\n'];
        for (int i = 0; i < letters.Length; i++)
        {
            if (i + 1 < letters.Length && char.IsSurrogatePair(letters[i], letters[i + 1]))
                i++;
            else if (char.IsSurrogate(letters[i]))
                letters[i] = '\uFFFD';
        }

        return new string(letters);
    }

    private static TomlTable Checked(string[] lines, MistakeList mistakes)
    {
        DocumentSyntax document = Parse(lines, mistakes.File, true);
        foreach (DiagnosticMessage message in document.Diagnostics)
            NotToml(new Place(message.Span.Start.Line + 1, message.Span.Start.Column + 1), message.Message, mistakes);
        TomlTable root = TomlTree.From(document);
        foreach (string lost in root.Entries.Keys.Where(key => key.StartsWith(LostTable, StringComparison.Ordinal)).ToList())
            root.Entries.Remove(lost);
        return root;
    }

    private static void TakeOut(string[] lines, DiagnosticMessage error, MistakeList mistakes)
    {
        int at = Math.Clamp(error.Span.Start.Line, 0, lines.Length - 1);
        FaultyStatement fault = FaultyStatement.Find(lines, at);
        if (fault.Unclosed.Length > 0)
            mistakes.Error(new Place(fault.First + 1, 1), "", $"{fault.Unclosed} that is not closed", "");
        else
            NotToml(new Place(at + 1, error.Span.Start.Column + 1), error.Message, mistakes);

        bool isHeader = lines[fault.First].TrimStart().StartsWith('[');
        for (int line = fault.First; line <= fault.Last; line++)
            lines[line] = "";

        // Keys below a header that cannot be read belong to a table nobody knows, not to the one above.
        if (isHeader)
            lines[fault.First] = $"[{LostTable}{fault.First + 1}]";
    }

    private static void NotToml(Place place, string message, MistakeList mistakes) =>
        mistakes.Error(place, "", "text that is not TOML", "", Words.Clean(message));

    private static DiagnosticMessage? FirstError(DocumentSyntax document) =>
        document.Diagnostics.Where(message => message.Kind == DiagnosticMessageKind.Error)
            .OrderBy(message => message.Span.Start.Line).ThenBy(message => message.Span.Start.Column).FirstOrDefault();

    private static DocumentSyntax Parse(string[] lines, string file, bool validate) =>
        SyntaxParser.Parse(string.Join('\n', lines), file, validate);
}
