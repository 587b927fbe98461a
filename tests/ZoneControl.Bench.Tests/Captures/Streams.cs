namespace ZoneControl.Bench.Tests.Captures;

/// <summary>A stream that only reads, as pipes are.</summary>
internal abstract class Forward : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}

/// <summary>The same bytes again and again, up to a length.</summary>
internal sealed class Repeating(byte[] piece, long length) : Forward
{
    private long _at;

    public override int Read(byte[] buffer, int offset, int count)
    {
        int take = (int)Math.Min(count, length - _at);
        for (int i = 0; i < take; i++)
            buffer[offset + i] = piece[(int)((_at + i) % piece.Length)];
        _at += take;
        return take;
    }
}

/// <summary>Bytes, then another stream.</summary>
internal sealed class Joined(byte[] first, Stream then) : Forward
{
    private int _at;

    public override int Read(byte[] buffer, int offset, int count)
    {
        if (_at == first.Length)
            return then.Read(buffer, offset, count);
        int take = Math.Min(count, first.Length - _at);
        first.AsSpan(_at, take).CopyTo(buffer.AsSpan(offset));
        _at += take;
        return take;
    }
}

/// <summary>Bytes, then a line that is silent for ever.</summary>
internal sealed class Silent(byte[] first, Action fallsSilent) : Forward
{
    private readonly ManualResetEventSlim _never = new(false);
    private int _at;

    public override int Read(byte[] buffer, int offset, int count)
    {
        if (_at == first.Length)
        {
            fallsSilent();
            _never.Wait();
        }

        int take = Math.Min(count, first.Length - _at);
        first.AsSpan(_at, take).CopyTo(buffer.AsSpan(offset));
        _at += take;
        return take;
    }
}
