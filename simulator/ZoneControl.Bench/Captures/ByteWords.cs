namespace ZoneControl.Bench.Captures;

/// <summary>Cuts a stream of bytes into lines or into words between white space, in memory of constant size.</summary>
internal sealed class ByteWords(CaptureSource source, ReadOnlyMemory<byte> first)
{
    /// <summary>The longest word or line that is taken, bytes.</summary>
    public const int Longest = 1 << 16;

    private byte[] _buffer = first.ToArray();
    private int _at;
    private int _end = first.Length;
    private bool _over;

    /// <summary>Line of the last word or line handed out, from 1.</summary>
    public long Line { get; private set; } = 1;

    private long _lines = 1;

    /// <summary>The next word; empty at the end of the stream. It is the caller's until the next call.</summary>
    public ReadOnlySpan<byte> Word()
    {
        while (true)
        {
            while (_at < _end && _buffer[_at] <= (byte)' ')
            {
                if (_buffer[_at] == (byte)'\n')
                    _lines++;
                _at++;
            }

            if (_at < _end || !Refill())
                break;
        }

        Line = _lines;
        int length = 0;
        while (true)
        {
            while (_at + length < _end && _buffer[_at + length] > (byte)' ')
                length++;
            if (_at + length < _end || !Refill())
                break;
            Demand(length);
        }

        Demand(length);
        ReadOnlySpan<byte> word = _buffer.AsSpan(_at, length);
        _at += length;
        return word;
    }

    /// <summary>The next line without its end; false at the end of the stream. It is the caller's until the next call.</summary>
    public bool TryLine(out ReadOnlySpan<byte> line)
    {
        int length = 0;
        while (true)
        {
            int found = _buffer.AsSpan(_at + length, _end - _at - length).IndexOf((byte)'\n');
            length = found >= 0 ? length + found : _end - _at;
            if (found >= 0 || !Refill())
                break;
            Demand(length);
        }

        Line = _lines;
        Demand(length);
        line = _buffer.AsSpan(_at, length);
        if (line is [.. var rest, (byte)'\r'])
            line = rest;
        bool any = _at < _end;
        _at = Math.Min(_end, _at + length + 1);
        _lines++;
        return any;
    }

    /// <summary>Only now, at the end of the stream: the last line had no end, so it may have been cut short.</summary>
    public bool EndsWithoutLineEnd => _over && _end > 0 && _buffer[_end - 1] != (byte)'\n';

    private void Demand(int length)
    {
        if (length > Longest)
            throw new CaptureMistake(_lines, $"more than {Longest:#,0} bytes without a break", "a text file");
    }

    // Keeps what has not been handed out yet and adds what comes next.
    private bool Refill()
    {
        if (_over)
            return false;
        ReadOnlyMemory<byte> more = source.Next();
        if (more.Length == 0)
        {
            _over = true;
            return false;
        }

        int kept = _end - _at;
        if (_buffer.Length < kept + more.Length)
        {
            byte[] larger = new byte[kept + more.Length + Longest];
            _buffer.AsSpan(_at, kept).CopyTo(larger);
            _buffer = larger;
        }
        else
        {
            _buffer.AsSpan(_at, kept).CopyTo(_buffer);
        }

        more.Span.CopyTo(_buffer.AsSpan(kept));
        _at = 0;
        _end = kept + more.Length;
        return true;
    }
}
