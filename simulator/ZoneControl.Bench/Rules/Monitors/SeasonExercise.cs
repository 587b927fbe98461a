using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// SEASON-EXERCISE, where the house has an interval: when the pump has not run for it, and nothing else asks, an exercise is
/// to be seen within two scans, or the alarm that it was put off; a put-off one within the retry time once nothing forbids
/// it. It runs the pump for its time, without heat, ends by itself, and does not begin before its time.
/// </summary>
/// <remarks>
/// What an exercise opens and starts is bound by all other rules; one that begins too soon is no exercise to any monitor, and
/// is caught as a start or an opening that nobody asked for. Its run may last for its overrun longer.
/// </remarks>
internal sealed class SeasonExercise : RuleMonitor
{
    private readonly int _longestMs;
    private readonly int _retryMs;
    private DutyClock _due;
    private DutyClock _lasting;
    private int _ranMs;
    private bool _putOff;

    public SeasonExercise(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        ControllerSettings house = seen.House;
        _longestMs = (int)Math.Min(
            ControllerSettings.LongestMs * 2L,
            (long)house.ExerciseLimitMs + house.PumpOverrunMs + house.HeatLeadMs + TwoScansMs);
        _retryMs = (int)Math.Min(house.ExerciseRetryS * 1000L, 1_000_000_000);
    }

    public override void End()
    {
        _due.Clear();
        _lasting.Clear();
        _ranMs = 0;
        _putOff = false;
    }

    // The clocks that are asked here do not begin again with a fault of the clock, or only later.
    public override void ForgetTimes()
    {
        _due.Restart(_due.Owed);
        _lasting.Restart(_lasting.Owed);
    }

    public override void OnFrame()
    {
        if (Seen.House.ExerciseIntervalS == 0)
            return;
        if (Seen.Exercising && !Seen.ExercisingBefore)
            Occasion();
        if (Seen.Exercising && Seen.Now.Heat)
            Broken("heat is asked for in an exercise");
        bool orderly = Seen.ExercisingBefore && Seen.PumpWentOff && !Seen.ForcedStop && Seen.AskedBefore != 0
            && Seen.Callers == 0 && !Seen.Service && !Seen.PriorityHolds;
        if (orderly && _ranMs < Seen.House.ExerciseRunMs && !Seen.Alarmed(Alarm.ExercisePutOff))
        {
            Broken($"the exercise ran the pump for {Words.Seconds(_ranMs)} of "
                + $"{Words.Seconds(Seen.House.ExerciseRunMs)} and was not reported as put off");
        }

        if (!Seen.Exercising)
            _ranMs = 0;
        SetClocks();
    }

    public override void OnTime() => SetClocks();

    public override void Pass(int ms)
    {
        if (Seen.DemandUnsure)
            ValveStretches.Age(ref _ranMs, ms, Seen.House.ExerciseRunMs);
        BrokenIn(_lasting.Pass(ms, _longestMs), () =>
            $"an exercise has lasted for {Words.Seconds(_longestMs)}, its limit and overrun");
        BrokenIn(_due.Pass(ms, LimitMs), () => _putOff
            ? $"a put-off exercise has not come within {Words.Seconds(_retryMs)}, and nothing forbids it"
            : $"the pump has not run for {Seen.House.ExerciseIntervalS} s, and there is neither an exercise nor an alarm");
    }

    public override void Walk(StateWalk walk)
    {
        _due.Walk(walk);
        _lasting.Walk(walk);
        walk.Int(ref _ranMs);
        walk.Bool(ref _putOff);
    }

    private int LimitMs => _putOff ? _retryMs + TwoScansMs : TwoScansMs;

    private bool Forbidden => Seen.Alarmed(Alarm.LimitLatched | Alarm.FlowLatched | Alarm.PumpStuck) || Seen.PriorityHolds
        || !Seen.Supplied || (Seen.House.DrivenZones & ~Seen.Now.LatchedValves) == 0;

    private void SetClocks()
    {
        bool due = Seen.Pump.ExerciseDue && !Seen.Now.Pump;
        bool before = _putOff;
        _putOff = !Seen.Now.Pump && (_putOff || Seen.Alarmed(Alarm.ExercisePutOff));
        bool owed = due && !Seen.Demand && !Seen.Service && !(_putOff && Forbidden);
        if (_putOff && !before)
            _due.Restart(owed);
        else
            _due.Set(owed);
        _lasting.Set(Seen.Exercising);
    }
}
