namespace ZoneControl.Logic.Tests;

/// <summary>Proof, early, stuck and late switches as the judge sees them: from the moments at which valves and contacts changed.</summary>
internal sealed class JudgedValves(ControllerSettings s, JudgedInputs inputs)
{
    private readonly long[] _switched = new long[s.ZoneCount]; // when last energised or released
    private readonly long[] _unproven = new long[s.ZoneCount]; // when last energised or proof lost
    private int _on; // driven ones that are energised, gated ones that are sensed so
    private long _now;
    private long _last;

    /// <summary>Driven valves energised before this scan.</summary>
    public int OnBefore { get; private set; }

    /// <summary>Proven by this scan's contacts, before this scan released anything.</summary>
    public int ProvenBefore { get; private set; }

    /// <summary>Proven and still energised after this scan.</summary>
    public int Proven { get; private set; }

    public int Early { get; private set; }

    public int Stuck { get; private set; }

    /// <summary>Energised and unproven for longer than the limit, this time.</summary>
    public int Overdue { get; private set; }

    /// <summary>Overdue in the scan before already.</summary>
    public int OverdueBefore { get; private set; }

    public int Late { get; private set; }

    /// <summary>ms since the zone's valve was energised or released.</summary>
    public long Age(int zone) => _now - _switched[zone];

    /// <summary>A scan that only looks. Valves that are energised stay so, but their times begin anew.</summary>
    public void Begin(long now)
    {
        _last = now;
        _now = now;
        Array.Fill(_switched, now);
        Array.Fill(_unproven, now);
        Early = _on & (inputs.Switches.Accepted | inputs.RawSwitches);
        Proven = 0;
        Overdue = 0;
    }

    /// <summary>What the contacts of this scan prove about the valves as they were energised until now.</summary>
    public void LookAtContacts(long now)
    {
        _last = _now;
        _now = now;
        int gated = (_on ^ inputs.Senses.Accepted) & s.GatedZones;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if (Bits.Has(gated, zone))
                Switch(zone, Bits.Has(inputs.Senses.Accepted, zone));
        }

        OnBefore = _on & ~s.GatedZones;
        OverdueBefore = Overdue;
        Overdue = 0;
        int provenLast = Proven;
        ProvenBefore = 0;
        Stuck &= inputs.Switches.Accepted;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if (Bits.Has(_on, zone))
                LookAtOpen(zone, provenLast);
            else if (Bits.Has(inputs.Switches.Accepted, zone) && Age(zone) >= s.ClosingMs[zone])
                Stuck |= 1 << zone;
        }
    }

    /// <summary>What the scan then did with them, and whether a reset let late alarms of latched valves go.</summary>
    public void LookAtOutputs(int valves)
    {
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if (Bits.Has((valves ^ _on) & ~s.GatedZones, zone))
                Switch(zone, Bits.Has(valves, zone));
        }

        Proven = ProvenBefore & _on;
    }

    public void Forget(int late) => Late &= ~late;

    private void Switch(int zone, bool on)
    {
        int bit = 1 << zone;
        _switched[zone] = _now;
        _unproven[zone] = _now;
        Early &= ~bit;
        _on = on ? _on | bit : _on & ~bit;
        if (on)
            Early |= (inputs.Switches.Accepted | inputs.RawSwitches) & bit;
    }

    private void LookAtOpen(int zone, int provenLast)
    {
        int bit = 1 << zone;
        bool fully = Age(zone) >= s.OpeningMs[zone];
        bool supplied = inputs.Supplied || Bits.Has(s.GatedZones, zone);
        if (!Bits.Has(s.SwitchedZones, zone))
        {
            ProvenBefore |= fully && supplied ? bit : 0;
            return;
        }

        if (Bits.Has(inputs.Switches.Rose, zone) && Age(zone) < s.SwitchMinMs[zone])
            Early |= bit;
        bool made = Bits.Has(inputs.Switches.Accepted & ~Stuck, zone);
        if (made && supplied && (fully || !Bits.Has(Early, zone)))
        {
            ProvenBefore |= bit;
            Late &= ~bit;
            return;
        }

        // What passes without supply does not count.
        if (Bits.Has(provenLast, zone))
            _unproven[zone] = _now;
        else if (Bits.Has(_on, zone) && _unproven[zone] != _now && !inputs.SuppliedBefore)
            _unproven[zone] += _now - _last;
        if (inputs.Supplied && _now - _unproven[zone] >= s.SwitchLimitMs[zone])
            Overdue |= bit;
        Late |= Overdue & bit;
    }
}
