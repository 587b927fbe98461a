using System.Buffers;
using System.Buffers.Text;
using System.Text;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// Reads a value change dump as IEEE 1364-2005, chapter 18, has it (from memory), with the text values that some writers
/// add. Times are rounded down to the millisecond. What a keyword that is not known holds is left out up to its $end.
/// </summary>
internal sealed class VcdReader(ByteWords words) : ICaptureReader
{
    private const int MostSignals = 1 << 20;

    // Longer times than any capture lasts: no sum of them leaves a long.
    internal const long LongestMs = 100L * 365 * 86_400_000;

    private readonly List<CaptureSignal> _signals = [];
    private readonly Dictionary<ulong, int> _byId = [];
    private readonly List<List<int>> _signalsOfId = [];
    private readonly List<string> _scopes = [];
    private (int Binding, int Bit)[][] _bound = [];
    private IReadOnlyList<Binding> _bindings = [];
    private static readonly SearchValues<byte> _bits = SearchValues.Create("01xXzZ"u8);

    private readonly byte[] _value = new byte[ByteWords.Longest];
    private ulong _multiply;
    private ulong _divide = 1;

    public long Line => words.Line;

    public IReadOnlyList<CaptureSignal> ReadHead()
    {
        while (true)
        {
            ReadOnlySpan<byte> word = words.Word();
            if (word.IsEmpty)
                throw new CaptureMistake(words.Line, "the end of the file", "$enddefinitions: a VCD's head ends so");
            if (word.SequenceEqual("$enddefinitions"u8))
                break;
            if (word.SequenceEqual("$scope"u8))
                ReadScope();
            else if (word.SequenceEqual("$upscope"u8))
                Upscope();
            else if (word.SequenceEqual("$var"u8))
                ReadVar();
            else if (word.SequenceEqual("$timescale"u8))
                ReadTimescale();
            else if (word[0] == (byte)'$')
                Skip(word);
            else
                throw new CaptureMistake(words.Line, CaptureMistake.Quote(word), "a keyword of a VCD's head, such as $var or $enddefinitions");
        }

        SkipToEnd();
        if (_multiply == 0)
            throw new CaptureMistake(words.Line, "a head without $timescale", "$timescale with 1, 10 or 100 of s, ms, us, ns, ps or fs");
        return _signals;
    }

    public void Play(IReadOnlyList<Binding> bindings, CaptureFeed feed, Func<bool> tick)
    {
        _bindings = bindings;
        _bound = [.. _signalsOfId.Select(signals => signals
            .SelectMany(signal => bindings.Select((joined, i) => (joined, i)).Where(pair => pair.joined.Signal == signal))
            .Select(pair => (pair.i, pair.joined.SignalBit)).ToArray())];
        ulong last = 0;
        int untilTick = 0;
        while (true)
        {
            ReadOnlySpan<byte> word = words.Word();
            if (word.IsEmpty)
                return;
            switch (word[0])
            {
                case (byte)'#':
                    last = ReadTime(word[1..], last, feed);
                    if (--untilTick < 0)
                    {
                        untilTick = 1024;
                        if (!tick())
                            return;
                    }

                    break;
                case (byte)'0':
                case (byte)'1':
                case (byte)'x' or (byte)'X' or (byte)'z' or (byte)'Z':
                    _value[0] = word[0];
                    Change(1, word.Length > 1 ? word[1..] : words.Word(), feed);
                    break;
                case (byte)'b' or (byte)'B':
                    ReadVector(word, feed);
                    break;
                case (byte)'r' or (byte)'R' or (byte)'s' or (byte)'S':
                    SkipValue(word);
                    break;
                case (byte)'$':
                    ReadKeyword(word);
                    break;
                default:
                    throw new CaptureMistake(words.Line, CaptureMistake.Quote(word), "a time (#), a value (0, 1, x, z, b, r) or a keyword ($)");
            }
        }
    }

    // The values inside these are values like others: $dumpoff says that every one is unknown.
    private void ReadKeyword(ReadOnlySpan<byte> word)
    {
        if (!(word.SequenceEqual("$dumpvars"u8) || word.SequenceEqual("$dumpall"u8) || word.SequenceEqual("$dumpon"u8)
            || word.SequenceEqual("$dumpoff"u8) || word.SequenceEqual("$end"u8)))
        {
            Skip(word);
        }
    }

    private ulong ReadTime(ReadOnlySpan<byte> digits, ulong last, CaptureFeed feed)
    {
        if (!Utf8Parser.TryParse(digits, out ulong time, out int used) || used != digits.Length)
            throw new CaptureMistake(words.Line, CaptureMistake.Quote(digits), "a whole number after #");
        if (time < last)
            throw new CaptureMistake(words.Line, $"time {time:#,0} after {last:#,0}", "times that never go back");
        UInt128 ms = (UInt128)time * _multiply / _divide;
        if (ms > LongestMs)
            throw new CaptureMistake(words.Line, $"time {time:#,0}", "a capture of at most 100 years");
        feed.At((long)ms);
        return time;
    }

    private void Change(int length, ReadOnlySpan<byte> id, CaptureFeed feed)
    {
        ReadOnlySpan<byte> value = _value.AsSpan(0, length);
        if (!feed.Begun)
            feed.At(0);
        foreach ((int binding, int bit) in Find(id))
        {
            Channel channel = _bindings[binding].Channel;
            if (!channel.IsNumber)
                feed.Set(binding, BitOf(value, bit));
            else if (Number(value) is { } number)
                feed.Set(binding, number);
        }
    }

    private void ReadVector(ReadOnlySpan<byte> word, CaptureFeed feed)
    {
        ReadOnlySpan<byte> value = word[1..];
        if (value.Length == 0 || value.ContainsAnyExcept(_bits))
            throw new CaptureMistake(words.Line, CaptureMistake.Quote(word), "b and bits 0, 1, x or z");

        // The next word may move what this one stands in.
        value.CopyTo(_value);
        Change(value.Length, words.Word(), feed);
    }

    private void SkipValue(ReadOnlySpan<byte> word)
    {
        string kind = word[0] is (byte)'r' or (byte)'R' ? "number" : "text";
        if (words.Word().IsEmpty)
            throw new CaptureMistake(words.Line, $"the end of the file inside a {kind}", "the code of a signal");
    }

    private (int Binding, int Bit)[] Find(ReadOnlySpan<byte> id)
    {
        if (id.IsEmpty)
            throw new CaptureMistake(words.Line, "the end of the file inside a value", "the code of a signal");
        if (_byId.TryGetValue(Key(id), out int number))
            return _bound[number];
        throw new CaptureMistake(words.Line, $"a value of {CaptureMistake.Quote(id)}", "the code of a signal that the head declares");
    }

    // A value shorter than its signal is filled up on the left: with its leftmost bit if that is x or z, else with 0.
    private static int BitOf(ReadOnlySpan<byte> value, int bit)
    {
        byte said = bit < value.Length ? value[value.Length - 1 - bit] : value[0] is (byte)'0' or (byte)'1' ? (byte)'0' : value[0];
        return said switch
        {
            (byte)'0' => 0,
            (byte)'1' => 1,
            _ => -1,
        };
    }

    // Two's complement in 64 bits; shorter values are not negative.
    private static long? Number(ReadOnlySpan<byte> value)
    {
        ulong number = 0;
        foreach (byte bit in value)
        {
            if (bit is not ((byte)'0' or (byte)'1'))
                return null;
            number = (number << 1) | (uint)(bit - '0');
        }

        return (long)number;
    }

    private void ReadScope()
    {
        words.Word(); // module, task, function, begin, fork: of no matter here
        string name = Text(words.Word());
        if (_scopes.Count >= 64)
            throw new CaptureMistake(words.Line, "scopes nested deeper than 64", "scopes that end with $upscope");
        _scopes.Add(name);
        SkipToEnd();
    }

    private void Upscope()
    {
        if (_scopes.Count == 0)
            throw new CaptureMistake(words.Line, "$upscope without a $scope", "scopes that begin and end in pairs");
        _scopes.RemoveAt(_scopes.Count - 1);
        SkipToEnd();
    }

    private void ReadVar()
    {
        Text(words.Word()); // wire, reg, integer, real ...
        ReadOnlySpan<byte> size = words.Word();
        if (!Utf8Parser.TryParse(size, out int width, out int used) || used != size.Length || width is < 0 or > 1 << 20)
            throw new CaptureMistake(words.Line, CaptureMistake.Quote(size), "the width of a signal, a whole number of bits");
        ulong id = Key(words.Word());
        string name = Text(words.Word());
        string range = "";
        for (ReadOnlySpan<byte> word = words.Word(); !word.SequenceEqual("$end"u8); word = words.Word())
        {
            if (word.IsEmpty)
                throw new CaptureMistake(words.Line, "the end of the file inside $var", "$end");
            range += Text(word);
        }

        if (_signals.Count >= MostSignals)
            throw new CaptureMistake(words.Line, $"more than {MostSignals:#,0} signals", "a capture with fewer");
        if (!_byId.TryGetValue(id, out int number))
        {
            _byId.Add(id, number = _signalsOfId.Count);
            _signalsOfId.Add([]);
        }

        // One code may stand for several signals: nets that are joined.
        _signalsOfId[number].Add(_signals.Count);
        (string bare, int low) = Range(name, range);
        _signals.Add(new CaptureSignal(string.Join('.', [.. _scopes, bare]), Math.Max(1, width), low));
    }

    // "[7:0]" or "[3]", behind the name or in it.
    private static (string Name, int LowBit) Range(string name, string range)
    {
        int open = name.IndexOf('[', StringComparison.Ordinal);
        if (range.Length == 0 && open > 0)
            (name, range) = (name[..open], name[open..]);
        string[] ends = range.Trim('[', ']').Split(':');
        if (ends.Length == 1 && range.Length > 0)
            return ($"{name}{range}", 0);
        return (name, ends.Length == 2 && int.TryParse(ends[1], out int low) && int.TryParse(ends[0], out int high) ? Math.Min(low, high) : 0);
    }

    private void ReadTimescale()
    {
        var text = new StringBuilder();
        for (ReadOnlySpan<byte> word = words.Word(); !word.SequenceEqual("$end"u8); word = words.Word())
        {
            if (word.IsEmpty || text.Length > 100)
                throw new CaptureMistake(words.Line, "$timescale without $end", "$end");
            text.Append(Text(word));
        }

        string scale = text.ToString();
        int digits = scale.TakeWhile(char.IsAsciiDigit).Count();
        ulong number = scale[..digits] switch { "1" => 1, "10" => 10, "100" => 100, _ => 0 };
        (ulong Multiply, ulong Divide)? unit = scale[digits..] switch
        {
            "s" => (1000, 1),
            "ms" => (1, 1),
            "us" => (1, 1_000),
            "ns" => (1, 1_000_000),
            "ps" => (1, 1_000_000_000),
            "fs" => (1, 1_000_000_000_000),
            _ => null,
        };
        if (number == 0 || unit is not { } found)
            throw new CaptureMistake(words.Line, CaptureMistake.Quote(Encoding.UTF8.GetBytes(scale)), "1, 10 or 100 of s, ms, us, ns, ps or fs");
        (_multiply, _divide) = (number * found.Multiply, found.Divide);
    }

    private void Skip(ReadOnlySpan<byte> keyword)
    {
        string name = CaptureMistake.Quote(keyword);
        long line = words.Line;
        for (ReadOnlySpan<byte> word = words.Word(); !word.SequenceEqual("$end"u8); word = words.Word())
        {
            if (word.IsEmpty)
                throw new CaptureMistake(line, $"{name} without $end", "$end");
        }
    }

    private void SkipToEnd()
    {
        ReadOnlySpan<byte> word = words.Word();
        if (!word.SequenceEqual("$end"u8))
            throw new CaptureMistake(words.Line, word.IsEmpty ? "the end of the file" : CaptureMistake.Quote(word), "$end");
    }

    private static string Text(ReadOnlySpan<byte> word) => Encoding.UTF8.GetString(word);

    // Codes are up to four letters in practice; longer ones are told apart by a hash (FNV-1a), set off by the top bit.
    private ulong Key(ReadOnlySpan<byte> id)
    {
        if (id.IsEmpty)
            throw new CaptureMistake(words.Line, "the end of the file", "the code of a signal");
        ulong key = 0;
        if (id.Length < 8)
        {
            foreach (byte letter in id)
                key = (key << 8) | letter;
            return key;
        }

        key = 14695981039346656037;
        foreach (byte letter in id)
            key = (key ^ letter) * 1099511628211;
        return key | (1UL << 63);
    }
}
