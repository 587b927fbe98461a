using System.Text;

namespace ZoneControl.Bench.Winters;

/// <summary>Reads lines one at a time and counts them; a line without end is cut off, so that no file can fill the memory.</summary>
internal sealed class LineReader(TextReader reader, int longest)
{
    private readonly StringBuilder _line = new();

    /// <summary>Number of the last line read, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>The last line was longer than the longest allowed and was cut there.</summary>
    public bool WasCut { get; private set; }

    /// <summary>The next line without its end; null at the end of the text.</summary>
    public string? Next()
    {
        int next = reader.Read();
        if (next < 0)
            return null;
        Number++;
        WasCut = false;
        _line.Clear();
        for (; next is >= 0 and not '\n'; next = reader.Read())
        {
            if (_line.Length < longest)
                _line.Append((char)next);
            else
                WasCut = true;
        }

        return _line.ToString().TrimEnd('\r');
    }
}
