using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>Judges frames as they come, so that a trace of any length needs no more memory than a short one.</summary>
internal sealed class RunningJudge
{
    // Frames further apart than this are passed in pieces: a step's time is an int.
    private const int LongestStepMs = 1_000_000_000;

    private readonly MonitorSet _monitors;
    private readonly ControllerSettings _house;
    private readonly bool _everyScan;
    private ScanClock _clock;
    private bool _begun;
    private long _frameMs;

    /// <summary>A judge that has seen nothing yet.</summary>
    /// <param name="house">Lawful settings.</param>
    /// <param name="nameOf">A zone's name by its number, for the reasons.</param>
    /// <param name="findings">Told of every occasion and breach.</param>
    /// <param name="everyScan">As in <see cref="Trace.EveryScan"/>.</param>
    public RunningJudge(ControllerSettings house, Func<int, string> nameOf, IFindings findings, bool everyScan = false)
    {
        _house = house;
        _everyScan = everyScan;
        _monitors = new MonitorSet(house, nameOf, findings);
        _clock = new ScanClock(house, everyScan);
    }

    /// <summary>The moment reached, ms.</summary>
    public long NowMs => _monitors.NowMs;

    /// <summary>Zones that the monitors take for proven.</summary>
    public int Proven => _monitors.Proven;

    /// <summary>The next frame; its time counts as its clock says.</summary>
    /// <exception cref="ArgumentException">It is earlier than the one before.</exception>
    public void Take(in Frame frame)
    {
        bool first = !_begun;
        Begin(frame.Ms);
        _clock.Read(frame);
        Take(frame, first ? 0 : _clock.PassedMs, _clock.Sign);
    }

    /// <summary>The next frame, with what is known from elsewhere of its clock.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="passedMs">How much time passed for the controller since the frame before, ms.</param>
    /// <param name="sign">What its time says of its clock.</param>
    public void Take(in Frame frame, long passedMs, ClockSign sign)
    {
        Begin(frame.Ms);
        Pass(passedMs - (_monitors.NowMs - _frameMs));
        _monitors.NowMs = _frameMs = frame.Ms;
        _monitors.Step(0, frame, sign);
    }

    /// <summary>Goes on from a frame of which nobody knows what came before it.</summary>
    public void Resume(in Frame frame)
    {
        Begin(frame.Ms);
        _clock = new ScanClock(_house, _everyScan);
        _clock.Read(frame);
        _monitors.NowMs = _frameMs = frame.Ms;
        _monitors.Resume(frame);
    }

    /// <summary>The last frame goes on holding until a moment.</summary>
    /// <exception cref="ArgumentException">The moment is past.</exception>
    public void PassTo(long ms)
    {
        Refuse(ms);
        Pass(ms - _monitors.NowMs);
    }

    private void Begin(long ms)
    {
        if (!_begun)
            _monitors.NowMs = _frameMs = ms;
        _begun = true;
        Refuse(ms);
    }

    private void Refuse(long nextMs)
    {
        if (nextMs < _monitors.NowMs)
            throw new ArgumentException($"time runs back from {_monitors.NowMs} ms to {nextMs} ms", nameof(nextMs));
    }

    private void Pass(long ms)
    {
        for (long left = ms; left > 0; left -= LongestStepMs)
            _monitors.Pass((int)Math.Min(left, LongestStepMs));
    }
}
