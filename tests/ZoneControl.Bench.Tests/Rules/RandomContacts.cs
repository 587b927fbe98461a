using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>
/// Contacts that come and go at random, in quiet spells and busy ones: a contact changes every few scans or every few
/// thousand. Flow mostly follows the pump.
/// </summary>
#pragma warning disable CA5394 // which numbers come is the same in every run of one seed; nothing here is secret
internal sealed class RandomContacts(Random random, ControllerSettings house)
{
    // How seldom each contact is asserted, and how soon it is let go again, in scans; the supply is there to begin with.
    private static readonly (int Contact, int On, int Off)[] _habits =
    [
        (Contact.Lockout, 4_000, 300),
        (Contact.Limit, 6_000, 200),
        (Contact.Freeze, 4_000, 400),
        (Contact.Priority, 2_000, 200),
        (Contact.Reset, 400, 20),
        (Contact.Supply, 50, 4_000),
        (Contact.ServicePump, 2_500, 150),
    ];

    private readonly int _calm = random.Next(3) == 0 ? 12 : 1;
    private int _asserted = Contact.Supply;
    private int _senses;
    private int _flowFault;

    public void Disturb(InputImage inputs, bool pump)
    {
        int calls = inputs.Calls ^ house.InvertedCalls;
        if (Odds(400 * _calm))
            calls ^= 1 << random.Next(house.ZoneCount);
        if (Odds(1_500 * _calm))
            calls = random.Next(1 << house.ZoneCount);
        if (Odds(2_000))
            calls = 0;
        inputs.Calls = calls ^ house.InvertedCalls;
        if (Odds(500 * _calm))
            _senses ^= 1 << random.Next(house.ZoneCount);
        if (Odds(2_000))
            _senses = 0;
        inputs.Senses = (Odds(900) ? _senses ^ (1 << random.Next(house.ZoneCount)) : _senses) ^ house.InvertedSenses;
        if (Odds(2_500))
            inputs.ServiceValves = random.Next(1 << house.ZoneCount);
        if (inputs.ServiceValves != 0 && Odds(150))
            inputs.ServiceValves = Odds(2) ? 0 : random.Next(1 << house.ZoneCount);
        SetContacts(inputs, pump);
    }

    private void SetContacts(InputImage inputs, bool pump)
    {
        foreach ((int contact, int on, int off) in _habits)
        {
            if (Odds((_asserted & contact) == 0 ? on : contact == Contact.Lockout ? off * _calm : off))
                _asserted ^= contact;
        }

        if (Odds(1_000))
            _flowFault = random.Next(4);
        bool flow = _flowFault switch
        {
            0 => Odds(1_000),
            1 => !Odds(1_000),
            _ => pump,
        };
        _asserted = flow ^ Odds(500) ? _asserted | Contact.Flow : _asserted & ~Contact.Flow;
        inputs.Contacts = _asserted ^ ((house.InvertedContacts | Contact.AssertedOpen) & house.FittedContacts);
    }

    private bool Odds(int one) => random.Next(one) == 0;
}
#pragma warning restore CA5394
