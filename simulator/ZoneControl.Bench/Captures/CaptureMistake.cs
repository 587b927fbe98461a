using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Captures;

/// <summary>A capture cannot be read on; the message is for the person who gave it. Thrown inside, never past the audit.</summary>
internal sealed class CaptureMistake : Exception
{
    public CaptureMistake(long line, string found, string expected, string hint = "")
        : base(found)
    {
        Line = line;
        Found = found;
        Expected = expected;
        Hint = hint;
    }

    /// <summary>Line from 1; 0 for the capture as a whole.</summary>
    public long Line { get; }

    public string Found { get; }

    public string Expected { get; }

    public string Hint { get; }

    /// <summary>The mistake as files' mistakes are told.</summary>
    public FileMistake In(string file) =>
        new(Words.Clean(file), (int)Math.Min(Line, int.MaxValue), 1, "", Found, Expected, Hint);

    /// <summary>A piece of the capture in quotes, with nothing in it that could upset a terminal.</summary>
    public static string Quote(ReadOnlySpan<byte> bytes)
    {
        int take = Math.Min(bytes.Length, 60);
        return Words.Quote(string.Create(take, bytes[..take].ToArray(), static (into, from) =>
        {
            for (int i = 0; i < into.Length; i++)
                into[i] = from[i] is >= 0x20 and < 0x7F ? (char)from[i] : '\u00BF';
        }));
    }
}
