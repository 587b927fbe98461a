using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// FREEZE, where the contact is fitted: while it asks, and no hand governs, every driven zone that is neither late nor
/// latched is opened within two scans, whatever season and priority say; that it asks in lockout is alarmed within two
/// scans; and heat demand in lockout lasts no longer in all than its limit and two scans.
/// </summary>
internal sealed class Freeze : RuleMonitor
{
    private readonly ZoneDuties _shut;
    private readonly int _mostMs;
    private DutyClock _untold;
    private int _heatMs;
    private bool _asking;

    public Freeze(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _shut = new ZoneDuties(seen.House.ZoneCount);
        _mostMs = seen.House.FreezeHeatMaxMs + TwoScansMs;
    }

    public override void End()
    {
        ForgetTimes();
        _heatMs = 0;
        _asking = false;
    }

    public override void ForgetTimes()
    {
        _shut.Clear();
        _untold.Clear();
    }

    public override void OnFrame()
    {
        bool asks = Seen.Is(Contact.Freeze);
        if (asks && !_asking)
            Occasion();
        _asking = asks;
        if (!asks)
            _heatMs = 0;
        _untold.Set(Seen.Alarmed(Alarm.FrostInLockout) != InLockout);
        SetClocks();
    }

    public override void OnTime() => SetClocks();

    public override void Pass(int ms)
    {
        PassZones(_shut, ms, TwoScansMs, zone => $"{Words.Zone(zone)} is not opened though the freeze contact asks");
        BrokenIn(_untold.Pass(ms, TwoScansMs), () => InLockout
            ? "the freeze contact asks in lockout, and no alarm says so"
            : "the alarm says that the freeze contact asks in lockout, and it does not");
        if (!Seen.Now.Heat || !InLockout)
            return;
        int left = _mostMs - _heatMs;
        BrokenIn(left >= 0 && left < ms ? left : -1, () =>
            $"frost in lockout has had heat for more than {Words.Seconds(Seen.House.FreezeHeatMaxMs)}");
        ValveStretches.Age(ref _heatMs, ms, _mostMs + 1);
    }

    public override void Walk(StateWalk walk)
    {
        _shut.Walk(walk);
        _untold.Walk(walk);
        walk.Int(ref _heatMs);
        walk.Bool(ref _asking);
    }

    private void SetClocks()
    {
        int all = Seen.House.DrivenZones & ~(Seen.Now.LateValves | Seen.Now.LatchedValves);
        bool owed = _asking && !Seen.Service && Seen.Supplied;
        _shut.Set(owed ? Seen.WithRoom(all & ~Seen.Now.Valves, Seen.Asked & Seen.House.DrivenZones) : 0);
    }

    private bool InLockout => _asking && Seen.Now.Lockout;
}
