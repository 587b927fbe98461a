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

    [Fact]
    public void Each_kind_of_alarm_has_places_of_its_own()
    {
        var controller = new ZoneController(House.OfZones(3).Switched(2).Retries(1).Settings());
        Run(controller, 300);
        _contacts.Calls = 4;
        Run(controller, House.SwitchLimit + House.Scan);

        Assert.Equal((4, 0), (controller.AlarmBook.Standing(AlarmKind.Late), controller.AlarmBook.Standing(AlarmKind.Latched)));
        Assert.Equal(
            [1, 0, 0, 0, 0],
            Enum.GetValues<AlarmKind>().Select(kind => controller.AlarmBook.Times(kind, 2)));
        Assert.Equal(
            [(int)_now / 1000, 0, 0, 0, 0],
            Enum.GetValues<AlarmKind>().Select(kind => controller.AlarmBook.RaisedS(kind, 2)));
    }

    [Fact]
    public void Early_and_stuck_switches_are_booked_each_in_its_kind()
    {
        var controller = new ZoneController(House.OfZones(2).Switched(0, 1).Settings());
        Run(controller, 300);
        _contacts.EndSwitches = 2; // the second one's valve is shut
        Run(controller, House.Closing + 300);
        _contacts.Calls = 1;
        Run(controller, 200);
        _contacts.EndSwitches = 3;
        Run(controller, 200);

        Assert.Equal((1, 2), (controller.AlarmBook.Standing(AlarmKind.Early), controller.AlarmBook.Standing(AlarmKind.StuckSwitch)));
        Assert.Equal((1, 0), (controller.AlarmBook.Times(AlarmKind.Early, 0), controller.AlarmBook.Times(AlarmKind.Early, 1)));
        Assert.Equal((0, 1), (controller.AlarmBook.Times(AlarmKind.StuckSwitch, 0), controller.AlarmBook.Times(AlarmKind.StuckSwitch, 1)));
    }

    [Fact]
    public void A_hold_counts_once_whatever_its_reasons_become_and_an_orderly_stop_is_no_trip()
    {
        Rig rig = Rig.InSeason(House.OfZones(1).With(s => s.PumpStartDelayMs = House.Opening + 1000)).Call(0);
        rig.RunUntil(o => o.Hold == HoldReason.Proof, 1000);
        rig.RunUntil(o => o.Hold == HoldReason.StartDelay, 5000);
        rig.RunUntil(o => o.Pump, 5000);
        rig.EndCall(0).RunUntil(o => o.Valves == 0, 20_000);

        Assert.Equal((1, 1, 0), (rig.Counters.PumpStarts, rig.Counters.Holds, rig.Counters.Trips));
    }

    [Fact]
    public void Want_of_flow_an_open_limit_and_lost_proof_are_a_trip_each()
    {
        House house = House.OfZones(1).Fit(Contact.Flow).With(s => s.FlowRetries = 5);
        Rig flow = Rig.Running(house, 0).RunFor(1000);
        flow.FlowFollows = false;
        flow.Off(Contact.Flow).RunUntil(o => !o.Pump, House.FlowLoss + 2 * House.Scan);
        Assert.Equal(1, flow.Counters.Trips);

        Rig limit = Rig.Running(House.OfZones(1).Fit(Contact.Limit), 0).On(Contact.Limit);
        limit.RunUntil(o => !o.Pump, 1000);
        Assert.Equal(1, limit.Counters.Trips);
    }

    [Fact]
    public void Time_and_run_time_are_whole_seconds_however_they_are_cut()
    {
        var controller = new ZoneController(House.OfZones(1).Settings());
        Run(controller, 100 + 400);
        Whole(controller, 599);
        Assert.Equal(0, controller.AlarmBook.UptimeS);
        Whole(controller, 1);
        Assert.Equal(1, controller.AlarmBook.UptimeS);
        Whole(controller, 2999);
        Assert.Equal(3, controller.AlarmBook.UptimeS);
        Whole(controller, 1);
        Assert.Equal(4, controller.AlarmBook.UptimeS);
    }

    [Fact]
    public void Uptime_and_run_time_stop_at_the_largest_number_rather_than_turn_negative()
    {
        const int Week = ControllerSettings.LongestMs;
        var controller = new ZoneController(House.OfZones(1).Settings());
        Run(controller, 300);
        _contacts.Calls = 1;
        Run(controller, 10_000);
        Assert.True(_out.Pump);
        for (int i = 0; i < 3600; i++)
            Whole(controller, Week);

        Assert.True(_out.Pump);
        Assert.Equal(int.MaxValue, controller.AlarmBook.UptimeS);
        Assert.Equal(int.MaxValue, controller.Counters.PumpRunS);
    }

    [Fact]
    public void Strokes_are_counted_for_each_zone_that_is_energised_and_no_other()
    {
        var controller = new ZoneController(House.OfZones(4).Companions().Settings());
        Run(controller, 300);
        _contacts.Calls = 0b1010;
        Run(controller, 1000);

        Assert.Equal([0, 1, 0, 1], controller.Counters.Strokes);
    }

    /// <summary>One whole scan so long after the last.</summary>
    private void Whole(ZoneController controller, long ms)
    {
        _now += ms;
        controller.ScanWhole(_now, _contacts, _out);
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
