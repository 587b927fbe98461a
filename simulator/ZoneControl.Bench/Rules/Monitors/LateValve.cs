namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// One zone under VALVE-LATE. An energised, unproven, switched valve that waited for its whole limit is published late
/// within two scans; then, while it is wanted, released for its closing time and tried again, as often as the house says;
/// then latched and not driven. Every alarm needs its cause, and stays until proof (latched: until reset or power-up).
/// A gated valve is alarmed, and no more is asked.
/// </summary>
/// <remarks>
/// "Never inside a rundown" binds the release: while the pump runs down, duties to release, to try again and to latch wait,
/// and a release for a retry is a breach. Latching inside one is let pass: the valve was not counted anyway. A valve is
/// wanted when its zone is asked, or as a late companion where the healthy ones do not suffice. A try that a lost call broke
/// off may be counted by a controller or not; both are let pass, so tries are kept as a least and a most. A valve that rests
/// when the count is reset is tried once more before anything counts.
/// </remarks>
internal sealed class LateValve(int zone, string rule, Evidence seen, IFindings findings)
    : RuleMonitor(rule, seen, findings)
{
    private readonly int _bit = 1 << zone;
    private bool _ranOut;
    private bool _resting;
    private bool _rested;
    private int _leastRetries;
    private int _mostRetries;
    private DutyClock _unsaid;
    private DutyClock _unwarranted;
    private DutyClock _unreleased;
    private DutyClock _unlatched;
    private DutyClock _untried;
    private DutyClock _undropped;

    private string Name => Words.Zone(zone);

    private int Retries => Seen.House.ValveRetries;

    public override void End()
    {
        _ranOut = _resting = _rested = false;
        _leastRetries = _mostRetries = 0;
        _unsaid.Clear();
        _unwarranted.Clear();
        _unreleased.Clear();
        _unlatched.Clear();
        _untried.Clear();
        _undropped.Clear();
    }

    public override void ForgetTimes()
    {
        (int least, int most, bool resting, bool rested) = (_leastRetries, _mostRetries, _resting, _rested);
        End();
        (_leastRetries, _mostRetries, _resting, _rested) = (least, most, resting, rested);
    }

    public override void OnFrame()
    {
        if (Seen.ResetPressed)
            _leastRetries = _mostRetries = _resting ? -1 : 0;
        bool overdue = In(Seen.HeldOverdue);
        if (overdue && !_ranOut)
        {
            _ranOut = true;
            Occasion();
        }

        JudgeAlarms(overdue);
        if (In(Seen.Held))
            Proved();
        if (In(Seen.Released))
            JudgeRelease(overdue);
        if (In(Seen.Opened))
            JudgeTry();
        SetClocks();
    }

    public override void OnTime()
    {
        _rested |= In(Seen.Shut);
        if (In(Seen.Overdue) && !_ranOut)
        {
            _ranOut = true;
            Occasion();
        }

        SetClocks();
    }

    public override void Pass(int ms)
    {
        BrokenIn(_unsaid.Pass(ms, TwoScansMs), () =>
            $"{Name} is energised and not proven for {Words.Seconds(Seen.House.SwitchLimitMs[zone])}, and no alarm says so");
        BrokenIn(_unwarranted.Pass(ms, TwoScansMs), () => $"{Name} has proven, and is still published as late");
        BrokenIn(_unreleased.Pass(ms, TwoScansMs), () => $"{Name} is late and neither released for a retry nor latched");
        BrokenIn(_unlatched.Pass(ms, TwoScansMs), () => $"{Name} is late after {Retries} retries, and not latched");
        BrokenIn(_untried.Pass(ms, TwoScansMs), () =>
            $"{Name} is late, has rested for its closing time, calls, and is not tried again");
        BrokenIn(_undropped.Pass(ms, TwoScansMs), () => $"{Name} is latched, and its valve is still driven");
    }

    public override void Walk(StateWalk walk)
    {
        walk.Bool(ref _ranOut);
        walk.Bool(ref _resting);
        walk.Bool(ref _rested);
        walk.Int(ref _leastRetries);
        walk.Int(ref _mostRetries);
        _unsaid.Walk(walk);
        _unwarranted.Walk(walk);
        _unreleased.Walk(walk);
        _unlatched.Walk(walk);
        _untried.Walk(walk);
        _undropped.Walk(walk);
    }

    private bool In(int mask) => (mask & _bit) != 0;

    private int WantedZones => Seen.Service
        ? Seen.Now.Hands & ~Seen.Now.LatchedValves
        : Seen.Demand ? Seen.Asked | Seen.Plan.LateCompanions : 0;

    private bool Wanted => In(WantedZones & Seen.House.DrivenZones);

    private void JudgeAlarms(bool overdue)
    {
        bool late = In(Seen.Now.LateValves);
        bool latched = In(Seen.Now.LatchedValves);
        bool wasLate = In(Seen.Was.LateValves);
        bool wasLatched = In(Seen.Was.LatchedValves);
        if (late && !wasLate && !overdue)
            Broken($"{Name} is published as late without having waited its limit unproven");
        bool letGo = wasLatched && Seen.ResetPressed;
        if (!late && wasLate && !In(Seen.Held) && !letGo)
            Broken($"{Name} is no longer published as late, and has not proven");
        if (latched && !late)
            Broken($"{Name} is published as latched and not as late");
        if (latched && !wasLatched && (!_ranOut || _mostRetries < Retries))
            Broken($"{Name} is latched after {_mostRetries} of {Retries} retries");
        if (!latched && wasLatched && !letGo)
            Broken($"{Name} is no longer latched, without a power-up or a reset");
    }

    private void JudgeRelease(bool overdue)
    {
        bool late = In(Seen.Now.LateValves);
        bool latched = In(Seen.Now.LatchedValves);
        _rested = false;
        _resting = overdue && late && !latched && Wanted;
        if (_resting && Seen.Settling)
            Broken($"{Name} is released for a retry while the pump runs down");
        if (overdue && !late && In(Seen.Asked) && Seen.Supplied)
            Broken($"{Name} waited its limit unproven and is released without an alarm");
    }

    private void JudgeTry()
    {
        if (In(Seen.Now.LatchedValves))
            Broken($"{Name} is latched, and its valve is driven again");
        if (In(Seen.Now.LateValves))
        {
            if (_resting && !_rested && !In(Seen.ShutBefore))
            {
                Broken($"{Name} is tried again sooner than its closing time of "
                    + $"{Words.Seconds(Seen.House.ClosingMs[zone])}");
            }

            if (_resting && _leastRetries >= Retries)
                Broken($"{Name} is tried again after {Retries} retries; it should be latched");
            if (_resting)
                _leastRetries = Math.Min(_leastRetries + 1, Retries);
            _mostRetries = Math.Min(_mostRetries + 1, Retries);
        }

        _ranOut = _resting = false;
    }

    private void Proved()
    {
        _ranOut = false;
        _leastRetries = _mostRetries = 0;
    }

    private void SetClocks()
    {
        if (In(Seen.Confirmed))
            Proved();

        bool late = In(Seen.Now.LateValves);
        bool latched = In(Seen.Now.LatchedValves);
        bool driven = In(Seen.Now.Valves);
        // Whether an exercise is over is not to be seen while the pump runs; no valve is to blame for want of supply.
        bool due = late && !latched && Wanted && !Seen.Settling && !Seen.DemandUnsure && Seen.Supplied;
        _unsaid.Set(In(Seen.Overdue) && !late);
        _unwarranted.Set(late && In(Seen.Proven));
        _unreleased.Set(due && In(Seen.Overdue));
        bool usedUp = _ranOut && _leastRetries >= Retries;
        _unlatched.Set(due && usedUp);
        bool asked = In(Seen.Service ? Seen.Now.Hands : Seen.Asked);
        bool room = In(Seen.WithRoom(_bit, Seen.Service ? Seen.Now.Hands : Seen.Asked | Seen.Plan.Companions | Seen.Plan.LateCompanions));
        _untried.Set(due && !usedUp && !driven && In(Seen.Shut) && asked && room);
        _undropped.Set(latched && driven);
    }
}
