using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// Takes a board's log to the judge. The log knows only the controller's clock: where that says nothing that can be believed
/// (it ran back, or the board alarms a fault of it), time is taken to have stood since the scan before, or to have passed up
/// to the announced deadline. How long a board was without supply no log tells: a moment is put in for it.
/// </summary>
internal sealed class LogAudit(CaptureJudge judge, ChannelState state, ControllerSettings settings) : ILogEvents
{
    private readonly List<CaptureNote> _notes = [];
    private readonly HashSet<string> _fingerprints = [];
    private long _runMs;
    private long _clockMs;
    private long _aliveMs;
    private long _nextMs = ZoneController.Never;
    private (ClockSign Sign, long WasMs)? _fault;
    private bool _any;
    private bool _afterGap;
    private int _alarms;

    /// <summary>What the log tells beside the channels; times are the run's.</summary>
    public IReadOnlyList<CaptureNote> Notes => _notes;

    /// <summary>Fingerprints of the settings of the boards that powered up.</summary>
    public IReadOnlyCollection<string> Fingerprints => _fingerprints;

    /// <summary>The moment reached, ms.</summary>
    public long NowMs => Math.Max(_runMs, _aliveMs);

    /// <summary>Scans read.</summary>
    public long Scans { get; private set; }

    /// <inheritdoc/>
    public void Boot(string fingerprint) => _fingerprints.Add(fingerprint);

    /// <inheritdoc/>
    public void ClockFault(ClockSign sign, long wasMs) => _fault = (sign, wasMs);

    /// <inheritdoc/>
    public void Scan(long clockMs, bool powerUp)
    {
        Scans++;
        if (powerUp)
            PowerUp(clockMs);
        else
            Follow(clockMs);
        _clockMs = clockMs;
        _nextMs = state.ToFrame(0).NextDeadlineMs;
        _alarms = state.Values(ChannelKind.Alarm);
        _any = true;
    }

    /// <inheritdoc/>
    public void Lost(long clockMs, string why)
    {
        Note(clockMs, why, true);
        judge.Lose(_runMs, why);
        _afterGap = true;
    }

    /// <inheritdoc/>
    public void Fault(long clockMs, string word)
    {
        Note(clockMs, $"the board gave up and put every output to safe: {word}", true);
        if (!_any)
            return;
        _runMs = Math.Max(_runMs, _runMs + clockMs - _clockMs);
        judge.Frame(new Frame { Ms = _runMs, Unpowered = true }, 0, ClockSign.Unknown);
    }

    /// <inheritdoc/>
    public void Alive(long clockMs) => _aliveMs = _any ? _runMs + Math.Max(0, clockMs - _clockMs) : 0;

    /// <inheritdoc/>
    public void Note(long clockMs, string text, bool isAlarm)
    {
        if (_notes.Count < 200)
            _notes.Add(new CaptureNote(Math.Max(0, (_any ? _runMs + Math.Max(0, clockMs - _clockMs) : clockMs) - judge.BeganMs), text, isAlarm));
    }

    private void PowerUp(long clockMs)
    {
        if (!_any)
        {
            _runMs = clockMs;
        }
        else
        {
            if (!_afterGap)
                judge.Frame(new Frame { Ms = _runMs + 1, Unpowered = true }, 1, ClockSign.Unknown);
            _runMs = Math.Max(_runMs + settings.ScanPeriodMs, _runMs + clockMs - _clockMs);
        }

        _afterGap = false;
        judge.Frame(state.ToFrame(_runMs), 0, ClockSign.Unknown);
    }

    private void Follow(long clockMs)
    {
        long since = clockMs - _clockMs;
        bool fault = (state.Values(ChannelKind.Alarm) & ~_alarms & Alarm.TimeFault) != 0;
        long passed = since;
        ClockSign sign = ClockSign.Unknown;
        if (_fault is { } told)
            (passed, sign) = (Math.Max(0, told.WasMs - _clockMs), told.Sign);
        else if (since < 0)
            (passed, sign) = (0, ClockSign.RunsBack);
        else if (fault)
            passed = _nextMs == ZoneController.Never ? 0 : Math.Clamp(_nextMs - _clockMs, 0, since);
        else if (since == 0)
            sign = ClockSign.Stands;
        _fault = null;
        _runMs += passed;
        judge.Frame(state.ToFrame(_runMs) with { ClockAheadMs = clockMs - _runMs }, passed, sign);
    }
}
