namespace ZoneControl.Logic.Tests;

/// <summary>What a contact means when it is closed is a setting, for each.</summary>
public class PolarityTests
{
    private const int Free = Contact.Lockout | Contact.Flow | Contact.Priority | Contact.Reset | Contact.Supply | Contact.ServicePump;

    [Fact]
    public void A_closed_contact_is_asserted_unless_the_settings_say_otherwise()
    {
        House house = House.OfZones(2).Fit((1 << Contact.Count) - 1);
        Rig rig = Rig.BeforePowerUp(house);
        rig.Contacts.Contacts = -1;
        Assert.Equal(Free, rig.RunFor(200).Out.AcceptedContacts);

        rig = Rig.BeforePowerUp(house.With(s => s.InvertedContacts = Free));
        rig.Contacts.Contacts = 0;
        Assert.Equal((1 << Contact.Count) - 1, rig.RunFor(200).Out.AcceptedContacts);
        rig.Contacts.Contacts = -1;
        Assert.Equal(0, rig.Step().Out.AcceptedContacts);
    }

    [Fact]
    public void The_season_contact_by_itself_is_its_bit_and_no_other()
    {
        const int Others = ~Contact.Lockout;
        var inputs = new InputImage { Contacts = Others };
        Assert.False(inputs.Lockout);
        inputs.Lockout = true;
        Assert.Equal((true, -1), (inputs.Lockout, inputs.Contacts));
        inputs.Lockout = false;
        Assert.Equal((false, Others), (inputs.Lockout, inputs.Contacts));

        var outputs = new OutputImage { AcceptedContacts = Others };
        Assert.False(outputs.AcceptedLockout);
        outputs.AcceptedLockout = true;
        Assert.Equal((true, -1), (outputs.AcceptedLockout, outputs.AcceptedContacts));
        outputs.AcceptedLockout = false;
        Assert.Equal((false, Others), (outputs.AcceptedLockout, outputs.AcceptedContacts));
    }

    [Fact]
    public void Contacts_that_are_not_wired_are_never_asserted()
    {
        Rig rig = Rig.BeforePowerUp(House.OfZones(1).With(s => (s.FittedContacts, s.InvertedContacts) = (0, -1)));
        rig.Contacts.Contacts = 0;
        rig.RunFor(500);
        Assert.Equal(0, rig.Out.AcceptedContacts | rig.Out.Alarms);

        rig.Contacts.Contacts = -1;
        rig.RunFor(500);
        Assert.Equal(0, rig.Out.AcceptedContacts | rig.Out.Alarms);
    }

    [Fact]
    public void Thermostats_switches_and_senses_have_their_polarity_zone_by_zone()
    {
        House house = House.OfZones(3).Gated(2).Switched(1, 2).With(s =>
            (s.InvertedCalls, s.InvertedSwitches, s.InvertedSenses) = (Bits.Of(0), Bits.Of(1), Bits.Of(2)));
        Rig rig = Rig.BeforePowerUp(house);
        (rig.Contacts.Calls, rig.Contacts.EndSwitches, rig.Contacts.Senses) = (0, 0, 0);
        rig.RunFor(200);
        Assert.Equal((Bits.Of(0), Bits.Of(1), Bits.Of(2)), (rig.Out.AcceptedCalls, rig.Out.AcceptedSwitches, rig.Out.AcceptedSenses));

        (rig.Contacts.Calls, rig.Contacts.EndSwitches, rig.Contacts.Senses) = (-1, -1, -1);
        rig.Step();
        Assert.Equal((Bits.Of(1), Bits.Of(2), 0), (rig.Out.AcceptedCalls, rig.Out.AcceptedSwitches, rig.Out.AcceptedSenses));
    }

    [Fact]
    public void A_house_that_is_wired_the_other_way_round_behaves_the_same()
    {
        House house = House.OfZones(2).Switched(1).With(s => (s.InvertedCalls, s.InvertedSwitches) = (3, 2));
        Rig rig = Rig.Running(house, 0, 1).RunFor(2000);
        Assert.True(rig.Out.Heat);

        rig.EndCall(0, 1);
        Assert.Equal(House.Overrun + House.Rundown + House.Scan, rig.RunUntil(o => o.Valves == 0, 10_000));
    }

    [Theory]
    [InlineData(Contact.Lockout, 0)]
    [InlineData(Contact.Flow, 1)]
    [InlineData(Contact.Limit, 2)]
    [InlineData(Contact.Freeze, 3)]
    [InlineData(Contact.Priority, 4)]
    [InlineData(Contact.Reset, 5)]
    [InlineData(Contact.Supply, 6)]
    [InlineData(Contact.ServicePump, 7)]
    public void Each_contact_has_its_own_place_and_debounce(int contact, int place)
    {
        Assert.Equal(place, Contact.Place(contact));
        House house = House.OfZones(1).Fit(contact).With(s => (s.ContactDebounceMs[place], s.PumpMinOffMs) = (400, 500));
        Rig rig = Rig.BeforePowerUp(house).Off(contact).RunFor(1000).On(contact).Step();

        rig.Always(o => (o.AcceptedContacts & contact) == 0, 300);
        Assert.Equal(contact, rig.Step().Out.AcceptedContacts & contact);
    }
}
