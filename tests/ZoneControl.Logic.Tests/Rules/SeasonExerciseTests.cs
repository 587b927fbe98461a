namespace ZoneControl.Logic.Tests;

[Trait("Rule", "SEASON-EXERCISE")]
public class SeasonExerciseTests
{
    private const int Interval = 60;
    private const int Retry = 60;
    private const int Run = 3000;
    private const int Limit = 9000;

    private static House Exercised(int zones) => House.OfZones(zones).Exercised(Interval, Retry, Run, Limit);

    /// <summary>In lockout since power-up, and a scan short of an exercise.</summary>
    private static Rig Due(House house)
    {
        Rig rig = Rig.BeforePowerUp(house).Lockout().Step();
        rig.Always(o => o is { Valves: 0, Pump: false, Hold: HoldReason.None }, Interval * 1000 - House.Scan);
        return rig;
    }

    [Fact]
    public void Every_zone_is_opened_when_the_pump_has_not_run_for_the_interval_and_not_one_scan_before()
    {
        Rig rig = Due(Exercised(3)).Step();

        Assert.Equal(7, rig.Out.Valves);
        Assert.Equal(HoldReason.Proof, rig.Out.Hold);
    }

    [Fact]
    public void The_pump_runs_its_time_without_heat_under_the_rules_that_bind_a_call()
    {
        Rig rig = Due(Exercised(2)).Step();
        rig.Always(o => o is { Pump: false, Heat: false, Valves: 3 }, House.Opening - House.Scan);
        rig.Always(o => o is { Pump: true, Heat: false, Valves: 3 }, Run + House.Overrun);

        rig.Always(o => o is { Pump: false, Heat: false, Valves: 3 }, House.Rundown);
        rig.Always(o => o is { Pump: false, Heat: false, Valves: 0, Alarms: 0 }, 10_000);
        Assert.Equal(1, rig.Counters.Exercises);
    }

    [Fact]
    public void The_next_one_comes_an_interval_after_the_pump_has_stopped()
    {
        Rig rig = Due(Exercised(1)).Step();
        rig.RunUntil(o => o.Pump, 5000);
        rig.RunUntil(o => !o.Pump, 10_000);

        Assert.Equal(Interval * 1000, rig.RunUntil(o => o.Hold == HoldReason.Proof, Interval * 2000));
    }

    [Fact]
    public void It_goes_on_until_every_healthy_valve_has_moved()
    {
        House house = Exercised(3).Switched(1, 2).Retries(0).With(s => s.ExerciseLimitMs = 60_000);
        Rig rig = Due(house).Step();
        rig.RunFor(1000).Make(1);
        rig.RunUntil(o => o.Pump, 5000);

        // Zone 2 neither makes nor breaks: it is late, then latched, and waited for no longer.
        rig.RunUntil(o => o.LatchedValves == 4, 5000);
        Assert.True(rig.Out.Pump);
        rig.RunUntil(o => o.Valves == 0, 15_000);
        Assert.Equal(1, rig.Counters.Exercises);
    }

    [Fact]
    public void A_valve_that_proves_late_lengthens_the_run()
    {
        House house = Exercised(2).Switched(1).With(s => s.SwitchLimitMs[1] = 8000);
        Rig rig = Due(house).Step().RunFor(House.Opening + Run + 1000);
        Assert.True(rig.Out.Pump);

        rig.Make(1).Step();
        rig.Always(o => o.Pump, House.Overrun - House.Scan);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void In_season_long_idleness_is_exercised_away_too()
    {
        Rig rig = Rig.InSeason(Exercised(2));

        Assert.Equal(Interval * 1000 - House.Scan, rig.RunUntil(o => o.Valves == 3, Interval * 2000));
    }

    [Fact]
    public void A_call_takes_over_at_once_and_keeps_the_running_pump()
    {
        Rig rig = Due(Exercised(2)).Step();
        rig.RunUntil(o => o.Pump, 5000);
        rig.Season().Call(1).Step();

        rig.Always(o => o is { Pump: true, Heat: true, Valves: 2 }, 10_000);
        Assert.Equal(0, rig.Counters.Exercises);
    }

    [Fact]
    public void One_that_a_call_cut_short_before_the_pump_ran_is_made_up_for_when_the_call_ends()
    {
        Rig rig = Due(Exercised(2)).Step().RunFor(500);
        rig.Season().Call(1).Step().EndCall(1).Step();

        Assert.Equal(3, rig.Out.Valves);
        rig.RunUntil(o => o.Pump, 5000);
        rig.RunUntil(o => o.Valves == 0, 10_000);
        Assert.Equal(1, rig.Counters.Exercises);
    }

    [Fact]
    public void A_hand_cuts_it_short()
    {
        Rig rig = Due(Exercised(2)).Step().RunFor(500).Hand(1).Step();

        Assert.Equal(Bits.Of(1), rig.Out.Valves);
        rig.EndHand(1).Step();
        Assert.Equal(3, rig.Out.Valves);
    }

    [Theory]
    [InlineData(Contact.Limit)]
    [InlineData(Contact.Priority)]
    [InlineData(Contact.Flow)]
    public void What_something_forbids_is_put_off_and_reported_until_it_has_been_done(int contact)
    {
        House house = Exercised(1).Fit(contact).With(s => (s.PriorityMaxMs, s.PumpMinOffMs) = (Interval * 4000, House.Scan));
        Rig rig = Rig.BeforePowerUp(house).Lockout().Step().RunFor(1000).On(contact).RunFor(Interval * 1000 - 1000 - House.Scan);
        Assert.Equal(0, rig.Out.Alarms & Alarm.ExercisePutOff);
        Assert.NotEqual(0, rig.Step().Out.Alarms & Alarm.ExercisePutOff);

        rig.Always(o => o.Hold == HoldReason.None && !o.Pump, Retry * 1000);
        Assert.NotEqual(0, rig.Out.Alarms & Alarm.ExercisePutOff);
    }

    [Fact]
    public void It_is_put_off_without_supply_and_tried_again_when_that_time_has_passed()
    {
        House house = Exercised(1).Fit(Contact.Supply).With(s => s.ExerciseIntervalS = 100);
        Rig rig = Rig.BeforePowerUp(house).Lockout().Off(Contact.Supply).Step().RunFor(100_000);
        Assert.Equal(Alarm.NoSupply | Alarm.ExercisePutOff, rig.Out.Alarms);

        rig.On(Contact.Supply).Always(o => o is { Valves: 0, Alarms: Alarm.ExercisePutOff }, Retry * 1000 - House.Scan);
        Assert.Equal(1, rig.Step().Out.Valves);
        rig.RunUntil(o => o.Pump, 5000);
        rig.RunUntil(o => o.Alarms == 0, Run + House.Scan);
    }

    [Fact]
    public void Reset_takes_the_report_back()
    {
        House house = Exercised(1).Fit(Contact.Supply | Contact.Reset);
        Rig rig = Rig.BeforePowerUp(house).Lockout().Off(Contact.Supply).Step().RunFor(Interval * 1000);
        Assert.Equal(Alarm.NoSupply | Alarm.ExercisePutOff, rig.Out.Alarms);

        Assert.Equal(Alarm.NoSupply, rig.Reset().Out.Alarms);
    }

    [Fact]
    public void One_that_is_not_done_in_its_time_is_given_up_and_put_off()
    {
        House house = Exercised(1).Switched(0).Retries(50);
        Rig rig = Due(house).Step();

        rig.Always(o => (o.Alarms & Alarm.ExercisePutOff) == 0, Limit - House.Scan);
        Assert.Equal(Alarm.ExercisePutOff, rig.Step().Out.Alarms);
        Assert.Equal(0, rig.Out.Valves);
        Assert.Equal(0, rig.Counters.Exercises);
        Assert.Equal(Retry * 1000, rig.RunUntil(o => o.Valves == 1, Retry * 2000));
    }

    [Fact]
    public void The_time_until_the_next_try_counts_from_the_giving_up_and_not_from_a_trip_before()
    {
        Rig rig = Due(Exercised(1).Switched(0).Retries(50)).Step().RunFor(1000).Make(0);
        rig.RunUntil(o => o.Pump, 5000);
        rig.RunFor(500).Break(0).RunFor(2700);
        Assert.False(rig.Out.Pump);
        rig.RunUntil(o => o.Alarms == Alarm.ExercisePutOff, Limit);

        rig.Always(o => o.Hold == HoldReason.None, Retry * 1000 - House.Scan);
        Assert.Equal(HoldReason.TooFewValves, rig.Step().Out.Hold);
    }

    [Fact]
    public void What_forbids_it_ends_one_that_is_under_way()
    {
        House house = Exercised(1).Fit(Contact.Limit);
        Rig rig = Due(house).Step();
        rig.RunUntil(o => o.Pump, 5000);
        rig.On(Contact.Limit).Step();

        Assert.Equal(Alarm.LimitLatched | Alarm.ExercisePutOff, rig.Out.Alarms);
        Assert.Equal(HoldReason.None, rig.Out.Hold);
        rig.Always(o => o.Valves == 1, House.Rundown - House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void A_house_without_exercises_has_none()
    {
        Rig rig = Rig.BeforePowerUp(House.OfZones(1)).Lockout().Step().RunFor(1000);

        Assert.Equal(ZoneController.Never, rig.Out.NextDeadlineMs);
    }

    [Theory]
    [InlineData(28 * 24 * 3600)] // more ms than an int holds
    [InlineData(366 * 24 * 3600)]
    public void Weeks_of_idleness_are_counted_to_the_second_though_scans_are_days_apart(int interval)
    {
        House house = Exercised(1).With(s => (s.ExerciseIntervalS, s.ExerciseRetryS, s.StallLimitMs) = (interval, 3600, 5000));
        var controller = new ZoneController(house.Settings());
        var contacts = new InputImage { Contacts = Contact.Lockout };
        var outputs = new OutputImage();
        long now = 1234;
        controller.Scan(now, contacts, outputs);
        long due = now + 1000L * interval;
        int scans = 0;
        while (outputs.Valves == 0)
        {
            Assert.True(outputs.NextDeadlineMs <= due, $"the deadline {outputs.NextDeadlineMs} is past {due}");
            // As late as a scan may lawfully be.
            now = Math.Min(outputs.NextDeadlineMs + 5000, due);
            controller.Scan(now, contacts, outputs);
            scans++;
        }

        Assert.Equal(due, now);
        Assert.Equal(0, outputs.Alarms);
        Assert.InRange(scans, 2, 200);
    }
}
