using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// VALVE-SUPPLY, where the actuators' supply is sensed: without it no driven valve is energised, the ones that were are
/// released within two scans, the alarm stands, and the pump does not run on them. After power-up the alarm waits until a
/// closed contact could have been accepted. That opening time counts anew with the supply back is in what every monitor
/// takes for proven.
/// </summary>
internal sealed class ValveSupply(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private DutyClock _energised;
    private DutyClock _untold;
    private DutyClock _awaited; // since power-up, until the supply has been accepted or its lack been told
    private Reliance _relying;

    public override void End()
    {
        _energised.Clear();
        _untold.Clear();
        _awaited.Clear();
        _relying.Clear();
    }

    public override void ForgetTimes()
    {
        bool awaited = _awaited.Owed;
        End();
        _awaited.Restart(awaited);
    }

    public override void OnFrame()
    {
        if (!Seen.House.Has(Contact.Supply))
            return;
        bool lost = !Seen.Supplied && (Seen.Was.Contacts & Contact.Supply) != 0;
        int driven = Seen.House.DrivenZones;
        if (lost)
            Occasion();
        if (!Seen.Supplied && (Seen.Energised & driven) != 0)
            Broken($"{Words.Zones(Seen.Energised & driven)} opened though the actuators have no supply");
        _energised.Set(!Seen.Supplied && (Seen.Now.Valves & driven) != 0);
        JudgeAlarm();
        if (_relying.Judge(Seen, Dead))
            Broken(Why());
    }

    private void JudgeAlarm()
    {
        bool alarmed = Seen.Alarmed(Alarm.NoSupply);
        if (Seen.Now.PowerUp || Seen.AfterOutage)
            _awaited.Restart(true);
        bool tooSoon = _awaited.Owed && _awaited.Ms < DebounceMs;
        if (alarmed && tooSoon && !Seen.Supplied)
            Broken("the alarm says that the actuators have no supply, and a closed contact could not have been accepted yet");
        if (Seen.Supplied || (alarmed && !tooSoon))
            _awaited.Clear();
        _untold.Set(alarmed == Seen.Supplied);
    }

    public override void OnTime() => _relying.Judge(Seen, Dead);

    public override void Pass(int ms)
    {
        BrokenIn(_energised.Pass(ms, TwoScansMs), () =>
            $"the actuators have no supply, and {Words.Zones(Seen.Now.Valves & Seen.House.DrivenZones)} stay energised");
        int waitMs = _awaited.Owed ? DebounceMs : 0;
        _awaited.Pass(ms, DebounceMs);
        BrokenIn(_untold.Pass(ms, waitMs + TwoScansMs), () => Seen.Supplied
            ? "the alarm says that the actuators have no supply, and they have"
            : "the actuators have no supply, and no alarm says so");
        BrokenIn(_relying.Pass(ms, TwoScansMs), Why);
    }

    public override void Walk(StateWalk walk)
    {
        _energised.Walk(walk);
        _untold.Walk(walk);
        _awaited.Walk(walk);
        _relying.Walk(walk);
    }

    private int DebounceMs => Seen.House.ContactDebounceMs[Contact.Place(Contact.Supply)];

    private int Dead => Seen.Supplied ? 0 : Seen.House.DrivenZones;

    private string Why() => $"the pump runs on {Words.Zones(Dead)}, whose actuators have no supply";
}
