namespace ZoneControl.Logic.Tests;

/// <summary>What is booked about alarms, and counted, apart from the state.</summary>
public class AlarmBookTests
{
    private readonly InputImage _contacts = new();
    private readonly OutputImage _out = new();
    private long _now;

    [Fact]
    public void A_late_valve_is_booked_with_its_zone_and_time_and_counted_again_when_it_is_late_again()
    {
        var controller = new ZoneController(House.OfZones(3).Switched(2).Retries(0).Settings());
        Run(controller, 300);
        _contacts.Calls = 4;
        Run(controller, House.SwitchLimit + House.Scan);

        Assert.Equal(4, controller.AlarmBook.Standing(AlarmKind.Late));
        Assert.Equal(4, controller.AlarmBook.Standing(AlarmKind.Latched));
        Assert.Equal(1, controller.AlarmBook.Times(AlarmKind.Late, 2));
        Assert.Equal(0, controller.AlarmBook.Times(AlarmKind.Late, 1));
        Assert.Equal((int)(_now - 100) / 1000, controller.AlarmBook.RaisedS(AlarmKind.Late, 2));
    }

    [Fact]
    public void An_alarm_of_the_house_is_booked_at_the_place_of_its_bit()
    {
        House house = House.OfZones(1).With(s =>
        {
            s.FittedContacts |= Contact.Limit;
            s.PumpMinOffMs = House.Scan;
        });
        var controller = new ZoneController(house.Settings());
        _contacts.Set(Contact.Limit, true);
        Run(controller, 1000);
        _contacts.Set(Contact.Limit, false);
        Run(controller, 500);

        Assert.Equal(Alarm.LimitLatched, controller.AlarmBook.Standing(AlarmKind.House));
        Assert.Equal(1, controller.AlarmBook.Times(AlarmKind.House, Contact.Place(Alarm.LimitLatched)));
    }

    [Fact]
    public void Starts_strokes_run_time_holds_and_trips_are_counted()
    {
        var controller = new ZoneController(House.OfZones(2).Switched(0).Companions().Settings());
        Run(controller, 300);
        _contacts.Calls = 1;
        Run(controller, 1000);
        _contacts.EndSwitches = 1;
        Run(controller, 3000);
        Assert.True(_out.Pump);
        _contacts.EndSwitches = 0;
        Run(controller, 500);

        Counters counted = controller.Counters;
        Assert.Equal((1, 1, 2), (counted.PumpStarts, counted.Trips, counted.Holds));
        Assert.Equal([1, 0], counted.Strokes);
        Assert.Equal(3, counted.PumpRunS);
    }

    private void Run(ZoneController controller, int ms)
    {
        for (long end = _now + ms; _now < end;)
        {
            _now += House.Scan;
            controller.Scan(_now, _contacts, _out);
        }
    }
}
