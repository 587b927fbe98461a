using ZoneControl.Cli.Terminal;

namespace ZoneControl.Cli.Tests;

/// <summary>Progress of long work, by a clock that the test sets.</summary>
public sealed class ProgressLineTests : IDisposable
{
    private readonly StringWriter _error = new();
    private readonly Clock _clock = new();

    public void Dispose() => _error.Dispose();

    [Fact]
    public void It_is_shown_to_a_terminal_after_a_second_and_taken_away_again()
    {
        using (var line = Line(terminal: true))
        {
            IProgress<double> progress = line.Of("work", piece: 1, pieces: 2);
            _clock.NowMs = 999;
            progress.Report(0.1);
            Assert.Equal("", _error.ToString());
            _clock.NowMs = 1000;
            progress.Report(0.5);
            Assert.StartsWith("\rwork: 75 %  (Ctrl-C stops it)", _error.ToString(), StringComparison.Ordinal);
        }

        Assert.EndsWith($"\r{new string(' ', 79)}\r", _error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_not_written_again_for_every_step()
    {
        using ProgressLine line = Line(terminal: true);
        for (_clock.NowMs = 1000; _clock.NowMs < 2000; _clock.NowMs++)
            line.Of("work").Report(_clock.NowMs / 2000.0);
        Assert.Equal(5, _error.ToString().Count(letter => letter == '\r'));
    }

    [Fact]
    public void Nothing_is_written_where_it_would_only_fill_a_file()
    {
        using (ProgressLine line = Line(terminal: false))
        {
            _clock.NowMs = 5000;
            line.Of("work").Report(0.5);
        }

        Assert.Equal("", _error.ToString());
    }

    private ProgressLine Line(bool terminal) =>
        new(new Streams(TextWriter.Null, _error, OutIsTerminal: false) { ErrorIsTerminal = terminal }, _clock);

    private sealed class Clock : TimeProvider
    {
        public long NowMs { get; set; }

        public override long TimestampFrequency => 1000;

        public override long GetTimestamp() => NowMs;
    }
}
