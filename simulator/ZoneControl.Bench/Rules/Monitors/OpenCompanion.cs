namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// OPEN-COMPANION, both halves. A valve opens only for its zone's own call or as a companion: healthy zones in the house's
/// order until minimum open is met and, where those do not suffice, late ones that may be tried again. And every asked zone
/// and every healthy companion that is needed is energised within two scans; a late valve may rest.
/// </summary>
/// <remarks>
/// A valve that is open already may stay while demand remains and proven capacity without it is below minimum open
/// (retained), and, without demand, while the pump is on or runs down; after that it has two scans to go. That an overrun
/// keeps only the zones which were proven is not asked here: an unproven valve that stays until then does no harm.
/// </remarks>
internal sealed class OpenCompanion : RuleMonitor
{
    private readonly DutyClock[] _lingering;
    private readonly DutyClock[] _missing;
    private bool _needed;

    public OpenCompanion(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings)
    {
        _lingering = new DutyClock[seen.House.ZoneCount];
        _missing = new DutyClock[seen.House.ZoneCount];
    }

    public override void End()
    {
        Array.Clear(_lingering);
        Array.Clear(_missing);
        _needed = false;
    }

    public override void OnFrame()
    {
        bool needed = Seen.Demand && !Seen.Plan.CallsSuffice;
        if (needed && !_needed)
            Occasion();
        _needed = needed;
        int unlawful = Seen.Energised & ~MayOpen;
        if (unlawful != 0)
            Broken($"{Words.Zones(unlawful)} opened without a call and without being the companion that is needed");
        SetClocks();
    }

    public override void OnTime() => SetClocks();

    public override void Pass(int ms)
    {
        for (int zone = 0; zone < _missing.Length; zone++)
        {
            int named = zone;
            BrokenIn(
                _missing[zone].Pass(ms, TwoScansMs),
                () => $"{Words.Zone(named)} is not opened though "
                    + ((Seen.Asked & (1 << named)) != 0 ? "it calls" : "it is the companion that makes up minimum open"));
            BrokenIn(
                _lingering[zone].Pass(ms, TwoScansMs),
                () => $"{Words.Zone(named)} stays open though it has no call and is not needed as a companion");
        }
    }

    public override void Walk(StateWalk walk)
    {
        for (int zone = 0; zone < _missing.Length; zone++)
        {
            _missing[zone].Walk(walk);
            _lingering[zone].Walk(walk);
        }

        walk.Bool(ref _needed);
    }

    private int MayOpen => Seen.Asked | Seen.Plan.Companions | Seen.Plan.LateCompanions;

    private void SetClocks()
    {
        int late = Seen.Now.LateValves | Seen.Now.LatchedValves;
        int missing = ((Seen.Asked & ~late) | Seen.Plan.Companions) & ~Seen.Now.Valves;
        for (int zone = 0; zone < _missing.Length; zone++)
        {
            int bit = 1 << zone;
            bool open = (Seen.Now.Valves & bit) != 0;
            _missing[zone].Set((missing & bit) != 0);
            _lingering[zone].Set(open && (MayOpen & bit) == 0 && !MayStay(bit));
        }
    }

    private bool MayStay(int bit) => Seen.Demand
        ? Seen.CapacityOf(Seen.Proven & ~bit) < Seen.MinimumOpen
        : Seen.Now.Pump || Seen.InRundown;
}
