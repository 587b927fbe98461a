namespace ZoneControl.Logic.Tests;

/// <summary>All contacts as the judge sees them: what they mean, and what is accepted.</summary>
internal sealed class JudgedInputs(ControllerSettings s)
{
    private readonly JudgedContacts _calls = JudgedContacts.OfZones(s.ZoneCount, s.CallDebounceMs);
    private readonly JudgedContacts _switches = JudgedContacts.OfZones(s.ZoneCount, s.SwitchDebounceMs);
    private readonly JudgedContacts _senses = JudgedContacts.OfZones(s.ZoneCount, s.SwitchDebounceMs);
    private readonly JudgedContacts _hands = JudgedContacts.OfZones(s.ZoneCount, s.CallDebounceMs);
    private readonly JudgedContacts _contacts = new(s.ContactDebounceMs, s.FittedContacts & Contact.Lockout);

    public JudgedContacts Contacts => _contacts;

    public JudgedContacts Switches => _switches;

    public JudgedContacts Senses => _senses;

    /// <summary>End switches made in this very scan, accepted or not.</summary>
    public int RawSwitches { get; private set; }

    /// <summary>Zones that call: a gated valve that is energised is its zone's call.</summary>
    public int Calls => _calls.Accepted | _senses.Accepted;

    public int Hands => _hands.Accepted;

    public bool AnyHand => _hands.Accepted != 0 || Is(Contact.ServicePump);

    public bool AnyHandBefore => _hands.Before != 0 || Was(Contact.ServicePump);

    public bool Is(int contact) => (_contacts.Accepted & contact) != 0;

    public bool Was(int contact) => (_contacts.Before & contact) != 0;

    public bool Supplied => (s.FittedContacts & Contact.Supply) == 0 || Is(Contact.Supply);

    public bool SuppliedBefore => (s.FittedContacts & Contact.Supply) == 0 || Was(Contact.Supply);

    public bool FlowFitted => (s.FittedContacts & Contact.Flow) != 0;

    public bool Flow => FlowFitted && Is(Contact.Flow);

    public void Look(long now, InputImage raw, bool onlyLook)
    {
        int zones = (1 << s.ZoneCount) - 1;
        int driven = zones & ~s.GatedZones;
        RawSwitches = (raw.EndSwitches ^ s.InvertedSwitches) & s.SwitchedZones;
        Take(_calls, (raw.Calls ^ s.InvertedCalls) & driven);
        Take(_switches, RawSwitches);
        Take(_senses, (raw.Senses ^ s.InvertedSenses) & s.GatedZones);
        Take(_hands, raw.ServiceValves & driven);
        Take(_contacts, (raw.Contacts ^ Quiet.Inverted(s)) & s.FittedContacts);

        void Take(JudgedContacts contacts, int asserted)
        {
            if (onlyLook)
                contacts.Begin(now, asserted);
            else
                contacts.Look(now, asserted);
        }
    }

    /// <summary>What the outputs say was accepted and was not, or null.</summary>
    public string? Mistake(OutputImage o)
    {
        if (o.AcceptedCalls != _calls.Accepted)
            return $"debounce: calls accepted should be {_calls.Accepted}";
        if (o.AcceptedSwitches != _switches.Accepted)
            return $"debounce: switches accepted should be {_switches.Accepted}";
        if (o.AcceptedSenses != _senses.Accepted)
            return $"debounce: senses accepted should be {_senses.Accepted}";
        if (o.AcceptedHands != _hands.Accepted)
            return $"debounce: hands accepted should be {_hands.Accepted}";
        return o.AcceptedContacts == _contacts.Accepted ? null : $"debounce: contacts accepted should be {_contacts.Accepted:b}";
    }
}
