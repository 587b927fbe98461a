namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// OPEN-COMPANION, both halves. A valve opens only for its zone's own call or as a companion: healthy zones in the house's
/// order until minimum open is met and, where those do not suffice, late ones that may be tried again. And every asked zone
/// and every healthy companion that is needed is energised within two scans; a late valve may rest, and nothing opens without
/// supply or without room on the transformer.
/// </summary>
/// <remarks>
/// A valve that is open already may stay while demand remains and proven capacity without it is below minimum open
/// (retained), and, without demand, while the pump is on or runs down; after that it has two scans to go. That an overrun
/// keeps only the zones which were proven is not asked here: an unproven valve that stays until then does no harm.
/// What a hand opens is SERVICE's to judge, what flow with the pump off needs open is PUMP-STUCK's.
/// </remarks>
internal sealed class OpenCompanion : RuleMonitor
{
    private readonly ZoneDuties _lingering;
    private readonly ZoneDuties _missing;
    private bool _needed;

    public OpenCompanion(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _lingering = new ZoneDuties(seen.House.ZoneCount);
        _missing = new ZoneDuties(seen.House.ZoneCount);
    }

    public override void End()
    {
        _lingering.Clear();
        _missing.Clear();
        _needed = false;
    }

    public override void OnFrame()
    {
        bool needed = Seen.Demand && !Seen.Plan.CallsSuffice;
        if (needed && !_needed)
            Occasion();
        _needed = needed;
        int unlawful = Seen.Energised & ~MayOpen;
        if (unlawful != 0 && !Seen.Service)
            Broken($"{Words.Zones(unlawful)} opened without a call and without being the companion that is needed");
        SetClocks();
    }

    public override void OnTime() => SetClocks();

    public override void Pass(int ms)
    {
        PassZones(_missing, ms, TwoScansMs, zone => $"{Words.Zone(zone)} is not opened though "
            + ((Seen.Asked & (1 << zone)) != 0 ? "it calls" : "it is the companion that makes up minimum open"));
        PassZones(_lingering, ms, TwoScansMs, zone =>
            $"{Words.Zone(zone)} stays open though it has no call and is not needed as a companion");
    }

    public override void Walk(StateWalk walk)
    {
        _missing.Walk(walk);
        _lingering.Walk(walk);
        walk.Bool(ref _needed);
    }

    private int MayOpen => (Seen.Asked & Seen.House.DrivenZones) | Seen.Plan.Companions | Seen.Plan.LateCompanions;

    private void SetClocks()
    {
        int late = Seen.Now.LateValves | Seen.Now.LatchedValves;
        int needed = (Seen.Asked & Seen.House.DrivenZones & ~late) | Seen.Plan.Companions;
        bool owed = Seen.Demand && !Seen.DemandUnsure && Seen.Supplied;
        _missing.Set(owed ? Seen.WithRoom(needed & ~Seen.Now.Valves, MayOpen) : 0);
        int lingering = 0;
        for (int rest = Seen.Now.Valves & ~MayOpen; rest != 0; rest &= rest - 1)
        {
            int bit = rest & -rest;
            if (!MayStay(bit))
                lingering |= bit;
        }

        _lingering.Set(Seen.Service ? 0 : lingering);
    }

    private bool MayStay(int bit) => Seen.Demand
        ? Seen.CapacityOf(Seen.Proven & ~bit) < Seen.MinimumOpen
        : Seen.Now.Pump || Seen.Settling;
}
