using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PRIORITY, where the contact is fitted: while it withholds calls, and neither frost nor a hand asks, heat demand is off in
/// two scans and the pump in the heat lead and two scans, without overrun, and no valve opens and no pump starts. Held for
/// its limit it is alarmed and ignored until it releases.
/// </summary>
internal sealed class Priority : RuleMonitor
{
    private Overlong _held;
    private DutyClock _heating;
    private DutyClock _pumping;

    public Priority(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings) => _held = new Overlong(seen.House.PriorityMaxMs, TwoScansMs);

    public override void End()
    {
        _held.Clear();
        _heating.Clear();
        _pumping.Clear();
    }

    public override void ForgetTimes()
    {
        _held.ForgetTimes();
        _heating.Clear();
        _pumping.Clear();
    }

    public override void OnFrame()
    {
        if (Seen.Is(Contact.Priority) && (Seen.Was.Contacts & Contact.Priority) == 0)
            Occasion();
        if (_held.Judge(Seen.Is(Contact.Priority), Seen.Alarmed(Alarm.PriorityLong)))
            Broken($"priority is ignored after {Words.Seconds(_held.Ms)} of {Words.Seconds(Seen.House.PriorityMaxMs)}");
        if (Seen.Alarmed(Alarm.PriorityLong) && Seen.Now.Hold == HoldReason.Priority)
            Broken("priority has lasted too long and is to be ignored, and the pump is still held for it");
        bool withholds = Seen.PriorityHolds && !Seen.Is(Contact.Freeze) && !Seen.Service;
        if (withholds && Seen.PumpWentOn)
            Broken("the pump was started while hot water has priority");
        if (withholds && Seen.Energised != 0 && !Seen.Alarmed(Alarm.PumpStuck))
            Broken($"{Words.Zones(Seen.Energised)} opened while hot water has priority");
        _heating.Set(withholds && Seen.Now.Heat);
        _pumping.Set(withholds && Seen.Now.Pump);
    }

    public override void Pass(int ms)
    {
        BrokenIn(_held.Pass(ms), () => Seen.Alarmed(Alarm.PriorityLong)
            ? "the alarm says that priority lasts too long, and it does not"
            : $"priority has lasted for {Words.Seconds(Seen.House.PriorityMaxMs)}, and no alarm says so");
        BrokenIn(_heating.Pass(ms, TwoScansMs), () => "hot water has priority, and heat demand stays on");
        BrokenIn(_pumping.Pass(ms, Seen.House.HeatLeadMs + TwoScansMs), () =>
            $"hot water has priority, and the pump is still on after the heat lead of {Words.Seconds(Seen.House.HeatLeadMs)}");
    }

    public override void Walk(StateWalk walk)
    {
        _held.Walk(walk);
        _heating.Walk(walk);
        _pumping.Walk(walk);
    }
}
