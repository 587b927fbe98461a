using System.Text.RegularExpressions;

namespace ZoneControl.Bench.Files;

/// <summary>
/// Finds the statement that a syntax error belongs to. What is not closed is noticed only later, at the next statement
/// or at the end of the file, so the error's own line is often the wrong one.
/// </summary>
/// <param name="First">First line of the statement, from 0.</param>
/// <param name="Last">Its last line, from 0.</param>
/// <param name="Unclosed">What it fails to close, in words; "" when the error is of another kind.</param>
internal readonly partial record struct FaultyStatement(int First, int Last, string Unclosed)
{
    private const string LongQuotes = "\"\"\"";

    /// <summary>The statement at fault for an error noticed at a line, from 0.</summary>
    public static FaultyStatement Find(string[] lines, int at)
    {
        int longQuotes = LastOpenLongQuotes(lines, at);
        if (longQuotes >= 0)
            return new FaultyStatement(longQuotes, EndOf(lines, longQuotes), "text in triple quotes");

        int start = StartOf(lines, at);
        int before = StartOf(lines, start - 1);
        if (start == at && before >= 0 && before < start && OpenBrackets(lines, before, start) > 0)
            return new FaultyStatement(before, start - 1, "a list or an inline table");

        int end = EndOf(lines, start);
        bool open = at >= end && OpenBrackets(lines, start, end + 1) > 0;
        return new FaultyStatement(start, end, open ? "a list or an inline table" : "");
    }

    private static int StartOf(string[] lines, int at)
    {
        int line = at;
        while (line > 0 && !Statement().IsMatch(lines[line]))
            line--;
        return line;
    }

    private static int EndOf(string[] lines, int start)
    {
        int line = start;
        while (line + 1 < lines.Length && !Statement().IsMatch(lines[line + 1]))
            line++;
        return line;
    }

    /// <summary>The line of the last triple quotes up to a line, if they are still open there; else -1.</summary>
    private static int LastOpenLongQuotes(string[] lines, int at)
    {
        int open = -1;
        for (int line = 0; line <= at; line++)
        {
            int marks = lines[line].Split(LongQuotes).Length - 1;
            if (marks % 2 == 1)
                open = open < 0 ? line : -1;
        }

        return open;
    }

    /// <summary>Brackets and braces opened less those closed, strings and comments apart.</summary>
    private static int OpenBrackets(string[] lines, int first, int end)
    {
        // A table's header closes itself or is at fault alone.
        if (lines[first].TrimStart().StartsWith('['))
            return 0;
        int depth = 0;
        for (int line = first; line < end; line++)
        {
            foreach (char c in Quoted().Replace(lines[line], ""))
            {
                if (c == '#')
                    break;
                depth += c is '[' or '{' ? 1 : c is ']' or '}' ? -1 : 0;
            }
        }

        return depth;
    }

    /// <summary>A line that begins a statement: a key and its sign, or a table's header (not a list within a list).</summary>
    [GeneratedRegex(
        """^\s*([A-Za-z0-9_."'-]+\s*=|\[{1,2}\s*[A-Za-z0-9_.-]+\s*\]{0,2}\s*(#.*)?$)""",
        RegexOptions.CultureInvariant)]
    private static partial Regex Statement();

    [GeneratedRegex("""'[^']*'|"(\\.|[^"\\])*"?""", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();
}
