using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// VALVE-SUPPLY, where the actuators' supply is sensed: without it no driven valve is energised, the ones that were are
/// released within two scans, the alarm stands, and the pump does not run on them. That opening time counts anew with the
/// supply back is in what every monitor takes for proven.
/// </summary>
internal sealed class ValveSupply(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private DutyClock _energised;
    private DutyClock _untold;
    private Reliance _relying;

    public override void End()
    {
        _energised.Clear();
        _untold.Clear();
        _relying.Clear();
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
        _untold.Set(Seen.Alarmed(Alarm.NoSupply) == Seen.Supplied);
        if (_relying.Judge(Seen, Dead))
            Broken(Why());
    }

    public override void OnTime() => _relying.Judge(Seen, Dead);

    public override void Pass(int ms)
    {
        BrokenIn(_energised.Pass(ms, TwoScansMs), () =>
            $"the actuators have no supply, and {Words.Zones(Seen.Now.Valves & Seen.House.DrivenZones)} stay energised");
        BrokenIn(_untold.Pass(ms, TwoScansMs), () => Seen.Supplied
            ? "the alarm says that the actuators have no supply, and they have"
            : "the actuators have no supply, and no alarm says so");
        BrokenIn(_relying.Pass(ms, TwoScansMs), Why);
    }

    public override void Walk(StateWalk walk)
    {
        _energised.Walk(walk);
        _untold.Walk(walk);
        _relying.Walk(walk);
    }

    private int Dead => Seen.Supplied ? 0 : Seen.House.DrivenZones;

    private string Why() => $"the pump runs on {Words.Zones(Dead)}, whose actuators have no supply";
}
