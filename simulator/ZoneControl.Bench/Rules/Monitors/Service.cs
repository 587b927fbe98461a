using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// SERVICE: while a hand governs, its zones are opened within two scans (late and latched ones apart) and no others; others
/// stay only while water may move through them and proven capacity would fall short; the pump starts only by hand and stops
/// within the heat lead and two scans when no hand asks for it. After its limit it is alarmed and ignored until all is let go.
/// </summary>
internal sealed class Service : RuleMonitor
{
    private readonly ZoneDuties _shut;
    private readonly ZoneDuties _lingering;
    private Overlong _held;
    private DutyClock _pumping;

    public Service(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _shut = new ZoneDuties(seen.House.ZoneCount);
        _lingering = new ZoneDuties(seen.House.ZoneCount);
        _held = new Overlong(seen.House.ServiceLimitMs, TwoScansMs);
    }

    public override void End()
    {
        _held.Clear();
        ForgetDuties();
    }

    public override void ForgetTimes()
    {
        _held.ForgetTimes();
        ForgetDuties();
    }

    public override void OnFrame()
    {
        bool hands = Seen.Now.Hands != 0 || Seen.Is(Contact.ServicePump);
        bool before = Seen.Was.Hands != 0 || (Seen.Was.Contacts & Contact.ServicePump) != 0;
        if (hands && !before)
            Occasion();
        if (_held.Judge(hands, Seen.Alarmed(Alarm.ServiceEnded)))
            Broken($"hands are ignored after {Words.Seconds(_held.Ms)} of {Words.Seconds(Seen.House.ServiceLimitMs)}");
        if (Seen.Service)
            JudgeStep();
        SetClocks();
    }

    public override void OnTime() => SetClocks();

    public override void Pass(int ms)
    {
        BrokenIn(_held.Pass(ms), () => Seen.Alarmed(Alarm.ServiceEnded)
            ? "the alarm says that hands are ignored, and they are not to be"
            : $"a hand has governed for {Words.Seconds(Seen.House.ServiceLimitMs)}, and no alarm says so");
        PassZones(_shut, ms, TwoScansMs, zone => $"{Words.Zone(zone)} is not opened though a hand asks for it");
        PassZones(_lingering, ms, TwoScansMs, zone => $"{Words.Zone(zone)} stays open though no hand asks for it");
        BrokenIn(_pumping.Pass(ms, Seen.House.HeatLeadMs + TwoScansMs), () =>
            $"no hand asks for the pump, and it is still on after the heat lead of {Words.Seconds(Seen.House.HeatLeadMs)}");
    }

    public override void Walk(StateWalk walk)
    {
        _held.Walk(walk);
        _shut.Walk(walk);
        _lingering.Walk(walk);
        _pumping.Walk(walk);
    }

    private int MayOpen => Seen.Now.Hands & ~Seen.Now.LatchedValves;

    private void ForgetDuties()
    {
        _shut.Clear();
        _lingering.Clear();
        _pumping.Clear();
    }

    private void JudgeStep()
    {
        if (Seen.PumpWentOn && !Seen.Is(Contact.ServicePump))
            Broken("the pump was started while a hand governs and does not ask for it");
        if ((Seen.Energised & ~MayOpen) != 0)
            Broken($"{Words.Zones(Seen.Energised & ~MayOpen)} opened while a hand governs and does not ask for it");
    }

    private void SetClocks()
    {
        bool owed = Seen.Service && Seen.Supplied;
        _shut.Set(owed ? Seen.WithRoom(MayOpen & ~Seen.Now.LateValves & ~Seen.Now.Valves, MayOpen) : 0);
        _pumping.Set(Seen.Service && Seen.Now.Pump && !Seen.Is(Contact.ServicePump));
        bool waterMoves = Seen.Now.Pump || Seen.Settling;
        int lingering = 0;
        for (int rest = Seen.Service ? Seen.Now.Valves & ~MayOpen : 0; rest != 0; rest &= rest - 1)
        {
            int bit = rest & -rest;
            if (!waterMoves || Seen.CapacityOf(Seen.Proven & ~bit) >= Seen.MinimumOpen)
                lingering |= bit;
        }

        _lingering.Set(lingering);
    }
}
