using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-STUCK, where a flow switch is fitted: flow accepted while the pump has been off for its rundown raises the alarm,
/// none for a rundown ends it, each within two scans; meanwhile no start, no heat demand, and, unless a hand governs, the
/// zones that make up minimum open are opened within two scans.
/// </summary>
/// <remarks>With demand, opening them is OPEN-COMPANION's to judge already.</remarks>
internal sealed class PumpStuck : RuleMonitor
{
    private readonly ZoneDuties _shut;
    private DutyClock _untold;
    private DutyClock _unseen;
    private bool _stuck;
    private int _quietMs;

    public PumpStuck(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings) => _shut = new ZoneDuties(seen.House.ZoneCount);

    public override void End()
    {
        ForgetTimes();
        _stuck = false;
    }

    public override void ForgetTimes()
    {
        _shut.Clear();
        _untold.Clear();
        _unseen.Clear();
        _quietMs = 0;
    }

    public override void OnFrame()
    {
        if (!Seen.House.Has(Contact.Flow))
            return;
        bool flow = Seen.Is(Contact.Flow);
        if (flow || (Seen.Was.Contacts & Contact.Flow) != 0)
            _quietMs = 0;
        // A start is judged by what this scan's contacts say of the time before it.
        if (flow && Seen.Pump.RanDownBefore)
            Raise();
        else if (!flow && _quietMs >= Seen.House.PumpRundownMs)
            _stuck = false;
        if (_stuck && Seen.PumpWentOn)
            Broken("the pump was started while flow without it is unexplained");
        if (_stuck && Seen.Now.Heat)
            Broken("heat is asked for while flow with the pump off is unexplained");
        SetClocks();
    }

    public override void OnTime()
    {
        if (Seen.House.Has(Contact.Flow))
            SetClocks();
    }

    public override void Pass(int ms)
    {
        // Flow after the rundown that no frame shows has been seen by a scan when it has stood for a scan period.
        if (_unseen.Pass(ms, Seen.House.ScanPeriodMs) >= 0)
            Raise();
        BrokenIn(_untold.Pass(ms, TwoScansMs), () => _stuck
            ? "flow is seen with the pump off for its rundown, and no alarm says so"
            : "the alarm says that there is flow with the pump off, and there has been none for a rundown");
        PassZones(_shut, ms, TwoScansMs, zone =>
            $"{Words.Zone(zone)} is not opened though water moves with the pump off and has nowhere to go");
        if (!_stuck || Seen.Is(Contact.Flow) || Seen.Now.Pump)
            return;
        int left = Seen.House.PumpRundownMs - _quietMs;
        _quietMs = (int)Math.Min((long)_quietMs + ms, Seen.House.PumpRundownMs);
        if (left > ms)
            return;
        // Ended within the span: what is left of it is late for the alarm already.
        _stuck = false;
        _untold.Set(Seen.Alarmed(Alarm.PumpStuck));
        int ranOut = _untold.Pass(ms - left, TwoScansMs);
        BrokenIn(ranOut < 0 ? -1 : left + ranOut, () =>
            "the alarm says that there is flow with the pump off, and there has been none for a rundown");
    }

    public override void Walk(StateWalk walk)
    {
        _shut.Walk(walk);
        _untold.Walk(walk);
        _unseen.Walk(walk);
        walk.Bool(ref _stuck);
        walk.Int(ref _quietMs);
    }

    private void Raise()
    {
        if (!_stuck)
            Occasion();
        _stuck = true;
    }

    private void SetClocks()
    {
        _unseen.Set(!_stuck && Seen.Is(Contact.Flow) && !Seen.Now.Pump && !Seen.InRundown);
        _untold.Set(Seen.Alarmed(Alarm.PumpStuck) != _stuck && !_unseen.Owed);
        bool owed = Seen.Alarmed(Alarm.PumpStuck) && !Seen.Demand && !Seen.Service && Seen.Supplied;
        CompanionPlan plan = Seen.Plan;
        _shut.Set(owed ? Seen.WithRoom(plan.Companions & ~Seen.Now.Valves, plan.Companions | plan.LateCompanions) : 0);
    }
}
