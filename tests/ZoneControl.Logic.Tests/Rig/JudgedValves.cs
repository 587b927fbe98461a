namespace ZoneControl.Logic.Tests;

/// <summary>Proof, early switches and lateness of valves as the judge sees them: from the moments at which they changed.</summary>
internal sealed class JudgedValves(ControllerSettings s)
{
    private readonly long[] _switched = new long[s.ZoneCount]; // when last energised or released
    private readonly long[] _unproven = new long[s.ZoneCount]; // when last energised or proof lost
    private int _on;
    private int _switchesBefore;
    private int _overdue;
    private long _now;

    /// <summary>Energised before this scan.</summary>
    public int OnBefore { get; private set; }

    /// <summary>Proven by this scan's contacts, before this scan released anything.</summary>
    public int ProvenBefore { get; private set; }

    /// <summary>Proven and still energised after this scan.</summary>
    public int Proven { get; private set; }

    public int Early { get; private set; }

    /// <summary>Energised and unproven for longer than the limit, this time, and so already in the scan before.</summary>
    public int OverdueBefore { get; private set; }

    public int Late { get; private set; }

    /// <summary>ms since the zone's valve was released.</summary>
    public long OffFor(int zone) => _now - _switched[zone];

    public void Look(long now, OutputImage o, int rawSwitches)
    {
        _now = now;
        OnBefore = _on;
        OverdueBefore = _overdue;
        _overdue = 0;
        int provenLast = Proven;
        ProvenBefore = 0;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if (Bits.Has(_on, zone))
                LookAtOpen(zone, o.AcceptedSwitches, provenLast);
            int bit = 1 << zone;
            if (((o.Valves ^ _on) & bit) == 0)
                continue;
            _switched[zone] = now;
            _unproven[zone] = now;
            Early &= ~bit;
            if (Bits.Has(o.Valves, zone))
                Early |= (o.AcceptedSwitches | rawSwitches) & s.SwitchedZones & bit;
        }

        Proven = ProvenBefore & o.Valves;
        _overdue &= o.Valves;
        _on = o.Valves;
        _switchesBefore = o.AcceptedSwitches;
    }

    private void LookAtOpen(int zone, int switches, int provenLast)
    {
        int bit = 1 << zone;
        long open = _now - _switched[zone];
        bool fully = open >= s.OpeningMs[zone];
        if (!Bits.Has(s.SwitchedZones, zone))
        {
            ProvenBefore |= fully ? bit : 0;
            return;
        }

        bool made = Bits.Has(switches, zone);
        if (made && !Bits.Has(_switchesBefore, zone) && open < s.SwitchMinMs[zone])
            Early |= bit;
        if (made && (fully || !Bits.Has(Early, zone)))
        {
            ProvenBefore |= bit;
            Late &= ~bit;
            return;
        }

        if (Bits.Has(provenLast, zone))
            _unproven[zone] = _now;
        if (_now - _unproven[zone] >= s.SwitchLimitMs[zone])
            _overdue |= bit;
        Late |= _overdue & bit;
    }
}
