using System;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>
/// The board's program but for its clockwork: checks what it was given, reads, decides, writes, and toggles the heartbeat
/// after every scan that was good. After a fault every output is off and stays off until the power is cut.
/// </summary>
public sealed class BoardProgram
{
    private const int AliveMs = 60000;
    private const int FaultAgainMs = 10000;

    private readonly ControllerSettings _settings;
    private readonly BoardPlan _plan;
    private readonly IPins _pins;
    private readonly IClock _clock;
    private readonly BoardIo _io;
    private readonly Envelope _envelope;
    private readonly EventLog _log = new EventLog();
    private readonly ScanLog _scanLog;
    private readonly LogWriter _writer;
    private readonly bool[] _on;
    private readonly InputImage _inputs = new InputImage();
    private readonly OutputImage _outputs = new OutputImage();
    private readonly int _fingerprint;
    private readonly string _stated;
    private ZoneController? _controller;
    private bool _opened; // pins are what they are to be
    private bool _beat;
    private int _scans;
    private int _overruns;
    private int _waits;
    private long _aliveMs;
    private long _toldMs; // when the fault was last recorded

    /// <summary>Takes over settings and plan; nothing is checked or touched before <see cref="Start"/>.</summary>
    /// <param name="settings">The controller's settings.</param>
    /// <param name="plan">The pin plan.</param>
    /// <param name="names">The zones' names.</param>
    /// <param name="stated">The fingerprint that was generated with them; another one means that a hand changed something.</param>
    /// <param name="pins">The pins.</param>
    /// <param name="clock">The clock.</param>
    public BoardProgram(
        ControllerSettings settings, BoardPlan plan, string[] names, string stated, IPins pins, IClock clock)
    {
        _settings = settings;
        _plan = plan;
        _pins = pins;
        _clock = clock;
        _stated = stated;
        _fingerprint = Board.Fingerprint.Of(SettingsWords.Of(settings, plan), names);
        _envelope = new Envelope(plan);
        _scanLog = new ScanLog(_log, settings);
        _writer = new LogWriter(_log, settings, plan, names, _fingerprint);
        _on = new bool[plan.OutputRoles.Length];
        if (plan.Arrangement == BoardPlan.Chains && plan.ChainPins.Length == BoardPlan.ChainPinCount)
            _io = new ChainIo(plan, pins);
        else
            _io = new DirectIo(plan, pins);
    }

    /// <summary>The fault that stopped it, a constant of <see cref="BoardFault"/>.</summary>
    public int Fault { get; private set; }

    /// <summary>What was found and expected at the fault; "" without one.</summary>
    public string FaultText { get; private set; } = "";

    /// <summary>Scans that took longer than their period.</summary>
    public int Overruns => _overruns;

    /// <summary>Whether inputs are to be sampled between scans.</summary>
    public bool Samples => _envelope.Any;

    /// <summary>Time between scans, microseconds.</summary>
    public long PeriodUs => _settings.ScanPeriodMs * 1000L;

    /// <summary>Checks plan, settings and fingerprint, and opens the pins with every output off. No pin is touched that a wrong plan names.</summary>
    public void Start()
    {
        PlanCheck check = PlanCheck.Of(_plan);
        if (check.Count != 0)
        {
            Fail(BoardFault.PinPlan, check.Mistake(0));
            return;
        }

        try
        {
            _pins.OpenOutput(_plan.HeartbeatPin, false);
            int fault = _io.Start();
            _opened = true;
            if (fault != BoardFault.None)
                Fail(fault, "at the start");
        }
        catch (Exception e)
        {
            _opened = true; // some are: they are told to be safe
            Fail(BoardFault.Thrown, e.Message);
        }

        string? mistake = SettingsCheck.FirstMistake(_settings);
        string found = Board.Fingerprint.Text(_fingerprint);
        if (Fault != BoardFault.None)
            return;
        if (mistake != null)
            Fail(BoardFault.Settings, mistake + " is not lawful");
        else if (found != _stated)
            Fail(BoardFault.Settings, "changed by hand: their fingerprint is " + found + ", the file states " + _stated);
        else
            _controller = new ZoneController(_settings);
    }

    /// <summary>Looks at the inputs between scans, where <see cref="Samples"/> says so.</summary>
    public void Sample()
    {
        if (Fault != BoardFault.None)
            return;
        try
        {
            int fault = _io.Read();
            if (fault != BoardFault.None)
                Fail(fault, "between scans");
            else
                _envelope.Take(_io.Closed, _clock.NowUs());
        }
        catch (Exception e)
        {
            Fail(BoardFault.Thrown, e.Message);
        }
    }

    /// <summary>One scan, from reading to the heartbeat. It throws nothing.</summary>
    public void Scan()
    {
        if (Fault != BoardFault.None || _controller == null)
        {
            StaySafe();
            return;
        }

        try
        {
            long begunUs = _clock.NowUs();
            int fault = ReadDecideWrite(_controller, begunUs);
            if (fault != BoardFault.None)
            {
                Fail(fault, "in scan " + _scans.ToString());
                return;
            }

            Finish(begunUs);
        }
        catch (Exception e)
        {
            Fail(BoardFault.Thrown, e.Message);
        }
    }

    /// <summary>Notes that a scan begins so late.</summary>
    public void NoteWait(long lateUs)
    {
        _waits++;
        _log.Add(_clock.NowUs() / 1000, LogEvent.Waited, (int)lateUs, _waits);
    }

    /// <summary>The next line of the log, or null when there is none.</summary>
    public string? NextLine() => _writer.NextLine();

    /// <summary>Copies what the last scan published, in the order of <see cref="Published"/>.</summary>
    public void CopyPublished(int[] into) => Published.Copy(_outputs, into);

    private int ReadDecideWrite(ZoneController controller, long nowUs)
    {
        int fault = _io.Read();
        if (fault != BoardFault.None)
            return fault;
        _envelope.Apply(_io.Closed, nowUs);
        ImageMap.Fill(_inputs, _plan.InputRoles, _io.Closed);
        controller.Scan(nowUs / 1000, _inputs, _outputs);
        ImageMap.Fill(_on, _plan.OutputRoles, _outputs);
        return _io.Write(_on);
    }

    private void Finish(long begunUs)
    {
        _scans++;
        _scanLog.Note(_outputs);
        if (_outputs.PowerUp)
            _aliveMs = _outputs.ScanMs;
        if (_outputs.ScanMs - _aliveMs >= AliveMs)
        {
            _aliveMs = _outputs.ScanMs;
            _log.Add(_aliveMs, LogEvent.Alive, _scans, _overruns);
        }

        long tookUs = _clock.NowUs() - begunUs;
        if (tookUs > PeriodUs)
        {
            _overruns++;
            _log.Add(_outputs.ScanMs, LogEvent.Overrun, (int)tookUs, _overruns);
            return;
        }

        _beat = !_beat;
        _pins.Write(_plan.HeartbeatPin, _beat);
    }

    private void Fail(int fault, string text)
    {
        if (_opened)
            _io.Safe();
        Fault = fault;
        FaultText = text;
        _writer.FaultText = text;
        TellFault();
    }

    private void StaySafe()
    {
        if (_opened)
            _io.Safe();
        if (Fault != BoardFault.None && NowMs() - _toldMs >= FaultAgainMs)
            TellFault();
    }

    private void TellFault()
    {
        _toldMs = NowMs();
        _log.Add(_toldMs, LogEvent.Fault, Fault, _scans);
    }

    private long NowMs()
    {
        try
        {
            return _clock.NowUs() / 1000;
        }
        catch (Exception)
        {
            return _toldMs;
        }
    }
}
