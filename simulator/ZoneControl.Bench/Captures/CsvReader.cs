using System.Buffers.Text;
using System.Text;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// Reads a table of time and channels: one header line, one line a moment, fields parted by commas, semicolons or tabs as the
/// header has it, quotes as in RFC 4180. A channel is 0 or 1 (or false/true, off/on, low/high, L/H), x or z where nobody
/// knows, empty where it stays. Times may begin below 0; they are rounded down to the millisecond.
/// </summary>
internal sealed class CsvReader(ByteWords words, string? timeColumn, TimeUnit? unit) : ICaptureReader
{
    private const int MostColumns = 10_000;

    private static readonly (string Word, int Value)[] _bits =
    [
        ("0", 0), ("1", 1), ("false", 0), ("true", 1), ("off", 0), ("on", 1), ("low", 0), ("high", 1), ("l", 0), ("h", 1),
        ("x", -1), ("z", -1), ("0.0", 0), ("1.0", 1),
    ];

    private byte _comma = (byte)',';
    private int _time;
    private int _columns;
    private decimal _msPerUnit = 1000;
    private List<int>[] _bound = [];
    private IReadOnlyList<Binding> _bindings = [];
    private byte[] _field = new byte[256];

    public long Line => words.Line;

    public IReadOnlyList<CaptureSignal> ReadHead()
    {
        ReadOnlySpan<byte> line;
        do
        {
            if (!words.TryLine(out line))
                throw new CaptureMistake(words.Line, "the end of the file", "a header line that names time and channels");
        }
        while (line.IsEmpty || line[0] is (byte)'#' or (byte)';');
        if (line.StartsWith(Encoding.UTF8.Preamble))
            line = line[Encoding.UTF8.Preamble.Length..];
        if (!line.Contains(_comma))
            _comma = line.Contains((byte)';') ? (byte)';' : line.Contains((byte)'\t') ? (byte)'\t' : _comma;
        var names = new List<string>();
        int at = 0;
        while (Field(line, ref at, out ReadOnlySpan<byte> field))
        {
            if (names.Count >= MostColumns)
                throw new CaptureMistake(words.Line, $"more than {MostColumns:#,0} columns", "a table with fewer");
            names.Add(Encoding.UTF8.GetString(field).Trim());
        }

        _columns = names.Count;
        if (_columns < 2 || names.TrueForAll(name => decimal.TryParse(name, out _)))
            throw new CaptureMistake(words.Line, CaptureMistake.Quote(line), "a header line that names time and channels, parted by commas");
        _time = timeColumn is null ? 0 : names.IndexOf(timeColumn);
        if (_time < 0)
            throw new CaptureMistake(words.Line, $"no column \"{timeColumn}\"", $"one of: {string.Join(", ", names.Take(20))}");
        _msPerUnit = MsPer(unit ?? UnitOf(names[_time]));
        return [.. names.Select(name => new CaptureSignal(name is "clock_ahead_s" or "deadline_s" ? name[..^2] : name, 1))];
    }

    public void Play(IReadOnlyList<Binding> bindings, CaptureFeed feed, Func<bool> tick)
    {
        _bindings = bindings;
        _bound = [.. Enumerable.Range(0, _columns).Select(column =>
            bindings.Select((joined, i) => (joined, i)).Where(pair => pair.joined.Signal == column).Select(pair => pair.i).ToList())];
        decimal? last = null;
        int untilTick = 0;
        while (words.TryLine(out ReadOnlySpan<byte> line))
        {
            if (line.IsEmpty)
                continue;
            decimal time = ReadTime(line);
            if (time < last)
                throw new CaptureMistake(words.Line, $"time {time} after {last}", "times that never go back");
            last = time;
            feed.At((long)decimal.Floor(time * _msPerUnit));
            ReadLine(line, feed);
            if (--untilTick < 0)
            {
                untilTick = 256;
                if (!tick())
                    return;
            }
        }
    }

    private decimal ReadTime(ReadOnlySpan<byte> line)
    {
        int at = 0;
        ReadOnlySpan<byte> field = default;
        for (int column = 0; column <= _time; column++)
        {
            if (!Field(line, ref at, out field))
                throw new CaptureMistake(words.Line, $"{column} fields", $"{_columns} fields, as the header has");
        }

        field = field.Trim((byte)' ');
        if (!Utf8Parser.TryParse(field, out decimal time, out int used) || used != field.Length)
            throw new CaptureMistake(words.Line, CaptureMistake.Quote(field), "a time, a number");
        if (Math.Abs(time) > VcdReader.LongestMs / _msPerUnit)
            throw new CaptureMistake(words.Line, $"time {CaptureMistake.Quote(field)}", "times of at most 100 years");
        return time;
    }

    private void ReadLine(ReadOnlySpan<byte> line, CaptureFeed feed)
    {
        int at = 0;
        int column = 0;
        while (Field(line, ref at, out ReadOnlySpan<byte> field))
        {
            if (column >= _columns)
                throw new CaptureMistake(words.Line, $"more than {_columns} fields", $"{_columns} fields, as the header has");
            foreach (int binding in _bound[column])
            {
                if (Value(_bindings[binding].Channel, field) is { } value)
                    feed.Set(binding, value);
            }

            column++;
        }

        if (column != _columns)
            throw new CaptureMistake(words.Line, $"{column} fields", $"{_columns} fields, as the header has");
    }

    private long? Value(Channel channel, ReadOnlySpan<byte> field)
    {
        if (field.Length == 1 && field[0] is (byte)'0' or (byte)'1' && !channel.IsNumber && !channel.IsText)
            return field[0] - '0';
        string text = Encoding.UTF8.GetString(field).Trim();
        if (channel.IsText)
            return channel.Kind == ChannelKind.Hold ? Hold(text) : Alarms(text);
        if (text.Length == 0)
            return null;
        if (channel.IsNumber)
            return Number(text);
        foreach ((string word, int value) in _bits)
        {
            if (text.Equals(word, StringComparison.OrdinalIgnoreCase))
                return value;
        }

        throw new CaptureMistake(words.Line, CaptureMistake.Quote(field), "0, 1, x or nothing in a channel's column");
    }

    private long Number(string text)
    {
        if (text == "never")
            return Logic.ZoneController.Never;
        if (decimal.TryParse(text, out decimal seconds) && Math.Abs(seconds) <= VcdReader.LongestMs / 1000)
            return (long)decimal.Round(seconds * 1000);
        throw new CaptureMistake(words.Line, CaptureMistake.Quote(Encoding.UTF8.GetBytes(text)), "seconds of at most 100 years, or never");
    }

    private long Hold(string text) => ChannelNames.HoldOf(text) is { } reason
        ? reason == Logic.HoldReason.None ? 0 : 1L << (int)reason
        : throw new CaptureMistake(words.Line, CaptureMistake.Quote(Encoding.UTF8.GetBytes(text)), "a hold reason as script files write it");

    private long Alarms(string text)
    {
        long mask = 0;
        foreach (string word in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            mask |= (uint)(ChannelNames.AlarmOf(word) ?? throw new CaptureMistake(
                words.Line, CaptureMistake.Quote(Encoding.UTF8.GetBytes(word)), "an alarm as script files write it"));
        }

        return mask;
    }

    // The next field without its quotes; false when the line is used up, and then at is beyond it.
    private bool Field(ReadOnlySpan<byte> line, scoped ref int at, out ReadOnlySpan<byte> field)
    {
        field = default;
        if (at > line.Length)
            return false;
        if (at < line.Length && line[at] == (byte)'"')
        {
            field = Quoted(line, ref at);
            return true;
        }

        int length = line[at..].IndexOf(_comma);
        field = length < 0 ? line[at..] : line.Slice(at, length);
        at += field.Length + 1;
        return true;
    }

    private ReadOnlySpan<byte> Quoted(ReadOnlySpan<byte> line, scoped ref int at)
    {
        if (_field.Length < line.Length)
            _field = new byte[line.Length * 2];
        int length = 0;
        for (at++; at < line.Length; at++)
        {
            if (line[at] == (byte)'"')
            {
                if (at + 1 >= line.Length || line[at + 1] != (byte)'"')
                    break;
                at++;
            }

            _field[length++] = line[at];
        }

        if (at >= line.Length || (at + 1 < line.Length && line[at + 1] != _comma))
            throw new CaptureMistake(words.Line, "quotes that do not close at the end of a field", "fields on one line, quotes in pairs");
        at += 2;
        return _field.AsSpan(0, length);
    }

    private static decimal MsPer(TimeUnit unit) => unit switch
    {
        TimeUnit.Milliseconds => 1m,
        TimeUnit.Microseconds => 0.001m,
        TimeUnit.Nanoseconds => 0.000001m,
        _ => 1000m,
    };

    private static TimeUnit UnitOf(string name)
    {
        (string End, TimeUnit Unit)[] ends =
        [
            ("ms", TimeUnit.Milliseconds), ("us", TimeUnit.Microseconds), ("µs", TimeUnit.Microseconds), ("ns", TimeUnit.Nanoseconds),
        ];
        string bare = name.TrimEnd(']', ')', ' ');
        foreach ((string end, TimeUnit unit) in ends)
        {
            if (bare.EndsWith("_" + end, StringComparison.Ordinal) || bare.EndsWith("[" + end, StringComparison.Ordinal)
                || bare.EndsWith("(" + end, StringComparison.Ordinal))
            {
                return unit;
            }
        }

        return TimeUnit.Seconds;
    }
}
