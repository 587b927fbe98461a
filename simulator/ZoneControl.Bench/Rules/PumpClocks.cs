using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// How long the pump has been on or off, without flow, and without a run. Ages are ms and capped where nothing more depends
/// on them; idleness is whole seconds and the rest of one, since ms of a month overflow an int.
/// </summary>
internal sealed class PumpClocks(ControllerSettings house)
{
    // An exercise may be months away; looking in between harms nobody.
    private const int LongestLookMs = 1_000_000_000;

    private int _offMs;
    private int _restMs;
    private int _startMs;
    private int _noFlowMs;
    private bool _flowSeen;
    private int _idleS;
    private int _idlePartMs;
    private int _creditS;

    /// <summary>The pump is off and still runs down.</summary>
    public bool InRundown { get; private set; }

    /// <summary>The pump is on and has been without accepted flow for as long as PUMP-FLOW lets it.</summary>
    public bool FlowOverdue { get; private set; }

    /// <summary>Of the times that PUMP-REST asks for, the longer one still to pass, ms; 0 or less when both have.</summary>
    public int RestLeftMs => Math.Max(house.PumpMinOffMs - _restMs, house.PumpStartIntervalMs - _startMs);

    /// <summary>Time since the pump stopped, capped at its least time off, ms.</summary>
    public int RestedMs => _restMs;

    /// <summary>At a frame that starts the pump: the time since it last started, capped at the least that it must be, ms.</summary>
    public int SinceLastStartMs { get; private set; }

    /// <summary>How long flow may be missing now, ms.</summary>
    public int FlowLimitMs => _flowSeen ? house.FlowLossMs : house.FlowProofMs;

    /// <summary>The pump had been off for its rundown before this frame.</summary>
    public bool RanDownBefore { get; private set; }

    /// <summary>An exercise may begin: <see cref="ExerciseDue"/>, or one that ran the pump and was put off is due again.</summary>
    public bool ExerciseMayBegin => house.ExerciseIntervalS > 0 && _idleS + _creditS >= house.ExerciseIntervalS;

    /// <summary>The pump has not run for the exercise interval.</summary>
    public bool ExerciseDue => house.ExerciseIntervalS > 0 && _idleS >= house.ExerciseIntervalS;

    /// <summary>Power-up: nothing runs down, and the pump counts as just stopped and just started.</summary>
    public void Forget()
    {
        _offMs = house.PumpRundownMs;
        _restMs = _startMs = _noFlowMs = _idleS = _idlePartMs = _creditS = 0;
        _flowSeen = false;
        InRundown = FlowOverdue = false;
    }

    /// <summary>The pump as this frame has it: it has rested and run down, and an exercise may come at any time.</summary>
    public void Presume(in Frame now)
    {
        Forget();
        _restMs = house.PumpMinOffMs;
        _startMs = Math.Max(house.PumpStartIntervalMs, house.ScanPeriodMs + 1);
        _creditS = now.Pump ? 0 : house.ExerciseIntervalS;
        _flowSeen = Flow(now);
        Derive(now);
    }

    /// <summary>TIME-FAULT: a fresh rundown, and every rest begins again.</summary>
    public void ForgetTimes(in Frame now)
    {
        _offMs = _restMs = _startMs = _noFlowMs = 0;
        _flowSeen = false;
        Derive(now);
    }

    /// <summary>A scan reads the flow switch, with the pump as it stood before it.</summary>
    public void ReadFlow(in Frame was, in Frame now)
    {
        RanDownBefore = !was.Pump && _offMs >= house.PumpRundownMs;
        bool before = Flow(was);
        bool flow = Flow(now);
        if (was.Pump)
        {
            // Flow that stood only between the scan of the start and the next was seen by no scan of a running pump.
            _flowSeen |= flow || (before && _startMs > house.ScanPeriodMs);
            if (flow || before)
                _noFlowMs = 0;
        }

        FlowOverdue = was.Pump && house.Has(Contact.Flow) && !flow && _noFlowMs >= FlowLimitMs;
    }

    /// <summary>The same scan switches the pump.</summary>
    public void Move(in Frame was, in Frame now)
    {
        if (now.Pump && !was.Pump)
        {
            SinceLastStartMs = _startMs;
            _startMs = _noFlowMs = 0;
            _flowSeen = false;
        }

        if (now.Pump)
        {
            _offMs = house.PumpRundownMs;
            _idleS = _idlePartMs = _creditS = 0;
        }
        else if (was.Pump)
        {
            _offMs = _restMs = 0;
        }

        Derive(now);
    }

    /// <summary>Idle for the exercise interval, or not at all.</summary>
    public void SetIdle(bool due)
    {
        _idleS = due ? house.ExerciseIntervalS : 0;
        _idlePartMs = _creditS = 0;
    }

    /// <summary>An exercise was given up: the next may come after the retry time, though this one may have run the pump.</summary>
    public void PutOff() => _creditS = Math.Max(0, house.ExerciseIntervalS - house.ExerciseRetryS - _idleS);

    public int MsToNextChange(in Frame now)
    {
        int next = int.MaxValue;
        ValveStretches.Sooner(ref next, house.PumpStartIntervalMs - _startMs);
        if (now.Pump)
        {
            if (house.Has(Contact.Flow) && !Flow(now))
                ValveStretches.Sooner(ref next, FlowLimitMs - _noFlowMs);
            return next;
        }

        ValveStretches.Sooner(ref next, house.PumpRundownMs - _offMs);
        ValveStretches.Sooner(ref next, house.PumpMinOffMs - _restMs);
        long idle = ((house.ExerciseIntervalS - _idleS) * 1000L) - _idlePartMs;
        if (house.ExerciseIntervalS > 0)
            ValveStretches.Sooner(ref next, (int)Math.Min(idle, LongestLookMs));
        return next;
    }

    /// <summary>Lets time pass, no further than <see cref="MsToNextChange"/>.</summary>
    public void Pass(int ms, in Frame now)
    {
        ValveStretches.Age(ref _startMs, ms, Math.Max(house.PumpStartIntervalMs, house.ScanPeriodMs + 1));
        if (now.Pump)
        {
            if (!Flow(now))
                ValveStretches.Age(ref _noFlowMs, ms, FlowLimitMs);
        }
        else
        {
            ValveStretches.Age(ref _offMs, ms, house.PumpRundownMs);
            ValveStretches.Age(ref _restMs, ms, house.PumpMinOffMs);
            PassIdle(ms);
        }

        Derive(now);
    }

    /// <summary>Names the state for saving and loading.</summary>
    public void Walk(StateWalk walk, in Frame now)
    {
        walk.Int(ref _offMs);
        walk.Int(ref _restMs);
        walk.Int(ref _startMs);
        walk.Int(ref _noFlowMs);
        walk.Bool(ref _flowSeen);
        walk.Int(ref _idleS);
        walk.Int(ref _idlePartMs);
        walk.Int(ref _creditS);
        Derive(now);
    }

    private static bool Flow(in Frame frame) => (frame.Contacts & Contact.Flow) != 0;

    private void PassIdle(int ms)
    {
        if (house.ExerciseIntervalS == 0)
            return;
        long all = (_idleS * 1000L) + _idlePartMs + ms;
        _idleS = (int)Math.Min(all / 1000, house.ExerciseIntervalS);
        _idlePartMs = _idleS == house.ExerciseIntervalS ? 0 : (int)(all % 1000);
    }

    private void Derive(in Frame now)
    {
        InRundown = !now.Pump && _offMs < house.PumpRundownMs;
        FlowOverdue = now.Pump && house.Has(Contact.Flow) && !Flow(now) && _noFlowMs >= FlowLimitMs;
    }
}
