using System.Runtime.ExceptionServices;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// The bytes of a capture, whatever they come from. A pipe or a serial line may be silent for as long as it likes: reading
/// waits on another thread, so that it can be stopped at any time.
/// </summary>
internal sealed class CaptureSource : IDisposable
{
    private const int PieceBytes = 1 << 20;

    private readonly Stream _stream;
    private readonly CancellationToken _cancel;
    private readonly byte[][] _pieces = [new byte[PieceBytes], new byte[PieceBytes]];
    private Task<int>? _reading;
    private int _next;

    public CaptureSource(Stream stream, CancellationToken cancel)
    {
        _stream = stream;
        _cancel = cancel;
    }

    /// <summary>Length in bytes where it has one.</summary>
    public long? Length => _stream.CanSeek ? _stream.Length : null;

    /// <summary>Bytes handed out so far.</summary>
    public long BytesRead { get; private set; }

    /// <summary>The next bytes; empty at the end. They are the caller's until the next call.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public ReadOnlyMemory<byte> Next()
    {
        _cancel.ThrowIfCancellationRequested();
        _reading ??= Begin();
        try
        {
            _reading.Wait(_cancel);
        }
        catch (AggregateException e) when (e.InnerException is not null)
        {
            ExceptionDispatchInfo.Throw(e.InnerException);
        }

        int count = _reading.Result;
        byte[] piece = _pieces[_next];
        _next = 1 - _next;
        BytesRead += count;
        _reading = count > 0 ? Begin() : null;
        return piece.AsMemory(0, count);
    }

    public void Dispose()
    {
        // A read that still waits goes on holding the stream; closing it under the read would harm a device's driver.
        if (_reading is not { IsCompleted: false })
            _stream.Dispose();
    }

    private Task<int> Begin()
    {
        byte[] into = _pieces[_next];
        return Task.Factory.StartNew(() => _stream.Read(into), CancellationToken.None, TaskCreationOptions.None, TaskScheduler.Default);
    }
}
