using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;

namespace ZoneControl.Bench.Captures;

/// <summary>How far reading a capture has come.</summary>
/// <param name="Bytes">Bytes read.</param>
/// <param name="Of">Bytes in all, where that is known.</param>
/// <param name="Edges">Changes of channels read.</param>
/// <param name="Ms">The moment reached, ms of the capture.</param>
public readonly record struct AuditProgress(long Bytes, long? Of, long Edges, long Ms);

/// <summary>What came of an audit.</summary>
/// <param name="Result">The result; null when the capture cannot be used.</param>
/// <param name="Mistakes">What is wrong with the capture or the map; at most a few.</param>
public sealed record Audit(AuditResult? Result, IReadOnlyList<FileMistake> Mistakes);

/// <summary>Judges a capture from elsewhere by the rules of the house.</summary>
public static class CaptureAudit
{
    private const int SniffBytes = 1 << 16;

    /// <summary>Reads and judges a capture to its end, in memory of constant size.</summary>
    /// <param name="house">The house.</param>
    /// <param name="capture">The bytes; read once from here on, and need not end.</param>
    /// <param name="name">What messages call the capture.</param>
    /// <param name="map">What its signals are.</param>
    /// <param name="progress">Told how far it has come, now and then.</param>
    /// <param name="cancel">Ends the reading; what was read until then is judged all the same.</param>
    /// <returns>The result, or what is wrong with the capture. Nothing that a capture holds is an exception.</returns>
    public static Audit Run(
        House house, Stream capture, string name, ChannelMap map, IProgress<AuditProgress>? progress = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(capture);
        ArgumentNullException.ThrowIfNull(map);
        try
        {
            using var source = new CaptureSource(capture, cancel);
            return new Audit(Read(house, source, name, map, progress), []);
        }
        catch (CaptureMistake mistake)
        {
            return new Audit(null, [mistake.In(name)]);
        }
        catch (MapMistakes mistakes)
        {
            return new Audit(null, mistakes.All);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Audit(null, [new FileMistake(Files.Words.Clean(name), 0, 0, "", "a file that cannot be read", "a capture", Files.Words.Clean(e.Message))]);
        }
    }

    private static AuditResult Read(House house, CaptureSource source, string name, ChannelMap map, IProgress<AuditProgress>? progress)
    {
        ReadOnlyMemory<byte> first = Sniff(source);
        CaptureFormat format = FormatOf(first.Span);
        var words = new ByteWords(source, first);
        var state = new ChannelState();
        var judge = new CaptureJudge(house, map, state);
        var result = new AuditResult
        {
            House = house,
            Map = map,
            Capture = name,
            Format = format,
            Rules = [],
            Wires = new RuleVerdict("", Judgement.NotJudged, 0, null, ""),
            Estimate = null!,
            Picture = null!,
        };
        return format == CaptureFormat.Log
            ? ReadLog(new LogSetting(house, words, state, judge, result), source, progress)
            : ReadSignals(format, words, map, state, judge, result, source, progress);
    }

    private static AuditResult ReadSignals(
        CaptureFormat format, ByteWords words, ChannelMap map, ChannelState state, CaptureJudge judge, AuditResult result,
        CaptureSource source, IProgress<AuditProgress>? progress)
    {
        ICaptureReader reader = format == CaptureFormat.Vcd ? new VcdReader(words) : new CsvReader(words, map.TimeColumn, map.TimeUnit);
        IReadOnlyList<CaptureSignal> signals = reader.ReadHead();
        SignalBindings joined = SignalBindings.Of(signals, map, result.House, result.Capture, isTable: format == CaptureFormat.Csv);
        foreach (Binding binding in joined.Bindings)
            state.Expect(binding.Channel);
        foreach ((ChannelKind kind, int mask) in map.Never)
            state.NeverOn(kind, mask);
        judge.Begin();
        var feed = new CaptureFeed(joined.Bindings, state, judge);
        bool stopped = Stopped(() => reader.Play(joined.Bindings, feed, () =>
        {
            progress?.Report(new AuditProgress(source.BytesRead, source.Length, feed.Edges, feed.NowMs));
            return true;
        }));
        feed.End();
        return judge.Finish(feed.NowMs, result with
        {
            Bytes = source.BytesRead,
            Edges = feed.Edges,
            Glitches = feed.Glitches,
            Stopped = stopped,
            Channels = joined.Named,
            Unused = joined.Unused,
        });
    }

    private sealed record LogSetting(House House, ByteWords Words, ChannelState State, CaptureJudge Judge, AuditResult Result);

    private static AuditResult ReadLog(LogSetting log, CaptureSource source, IProgress<AuditProgress>? progress)
    {
        ChannelKind[] lacking = [ChannelKind.Thermostat, ChannelKind.EndSwitchWire, ChannelKind.SenseWire, ChannelKind.ContactWire, ChannelKind.Powered];
        foreach (ChannelKind kind in Enum.GetValues<ChannelKind>().Except(lacking))
            log.State.NeverOn(kind, -1);
        log.Judge.Begin();
        var audit = new LogAudit(log.Judge, log.State, log.House.ToSettings());
        var reader = new LogReader(log.Words, log.House, log.State, audit);
        bool stopped = Stopped(() => reader.Play(() =>
        {
            progress?.Report(new AuditProgress(source.BytesRead, source.Length, reader.Records, audit.NowMs));
            return true;
        }));
        var notes = new List<CaptureNote>(audit.Notes);
        if (reader.BeforeBoot > 0)
            notes.Insert(0, new CaptureNote(0, $"{reader.BeforeBoot} lines before the first boot line were left out: nobody knows from where they went on", false));
        return log.Judge.Finish(audit.NowMs, log.Result with
        {
            Bytes = source.BytesRead,
            Edges = reader.Records,
            Stopped = stopped,
            Channels = [("all that the board publishes", "the board's log")],
            Notes = notes,
        });
    }

    private static bool Stopped(Action read)
    {
        try
        {
            read();
            return false;
        }
        catch (OperationCanceledException)
        {
            return true;
        }
    }

    // The first pieces, until there is enough to tell what it is.
    private static ReadOnlyMemory<byte> Sniff(CaptureSource source)
    {
        var seen = new List<byte>();
        while (seen.Count < SniffBytes)
        {
            ReadOnlyMemory<byte> more;
            try
            {
                more = source.Next();
            }
            catch (OperationCanceledException) when (seen.Count > 0)
            {
                break; // stopped before it was clear what it is: what there is will be judged
            }

            if (more.Length == 0)
                break;
            seen.AddRange(more.Span);
            if (HasSaid(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(seen)))
                break;
        }

        if (seen.Count == 0)
            throw new CaptureMistake(0, "an empty file", "a VCD, a CSV table or a board's log");
        return seen.ToArray();
    }

    // A slow line may bring a letter at a time.
    private static bool HasSaid(ReadOnlySpan<byte> seen) =>
        FormatOf(seen) == CaptureFormat.Log || seen.TrimStart(" \t\r\n"u8) is [(byte)'$', ..] || seen.Count((byte)'\n') >= 50;

    private static CaptureFormat FormatOf(ReadOnlySpan<byte> seen)
    {
        if (seen.TrimStart(" \t\r\n"u8) is [(byte)'$', ..])
            return CaptureFormat.Vcd;
        foreach (Range range in seen.Split((byte)'\n'))
        {
            if (LogReader.IsRecord(seen[range]))
                return CaptureFormat.Log;
        }

        return CaptureFormat.Csv;
    }
}
