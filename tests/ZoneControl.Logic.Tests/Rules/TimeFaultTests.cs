namespace ZoneControl.Logic.Tests;

[Trait("Rule", "TIME-FAULT")]
public class TimeFaultTests
{
    private static House Watched(int zones = 1) => House.OfZones(zones).Fit(Contact.Reset);

    private static void IsFault(Rig rig)
    {
        Assert.False(rig.Out.Pump);
        Assert.False(rig.Out.Heat);
        Assert.Equal(0, rig.Out.ProvenValves);
        Assert.Equal(Alarm.TimeFault, rig.Out.Alarms & Alarm.TimeFault);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(-1_000_000_000_000)]
    public void A_clock_that_jumps_back_has_pump_and_heat_off_and_valves_held_for_a_fresh_rundown(long back)
    {
        Rig rig = Rig.Running(Watched(), 0).RunFor(5000).StepAfter(back);
        IsFault(rig);
        Assert.Equal(1, rig.Out.Valves);

        rig.EndCall(0).Step();
        rig.Always(o => o.Valves == 1, House.Rundown - 2 * House.Scan);
        Assert.Equal(0, rig.Step().Out.Valves);
    }

    [Fact]
    public void Proof_and_delay_begin_again()
    {
        Rig rig = Rig.Running(Watched().With(s => s.PumpStartDelayMs = 5000), 0).RunFor(5000).StepAfter(-100);

        rig.Always(o => o is { Pump: false, ProvenValves: 0, Hold: HoldReason.Proof }, House.Opening - House.Scan);
        rig.Always(o => o is { Pump: false, ProvenValves: 1, Hold: HoldReason.StartDelay }, 5000 - House.Opening);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_made_switch_is_doubted_until_full_opening_time()
    {
        Rig rig = Rig.Running(Watched().Switched(0), 0).RunFor(5000).StepAfter(-100);
        Assert.Equal(1, rig.Out.EarlySwitches);

        rig.Always(o => o.ProvenValves == 0, House.Opening - House.Scan);
        Assert.Equal(1, rig.Step().Out.ProvenValves);
    }

    [Fact]
    public void A_switch_that_makes_in_the_scan_of_the_fault_is_doubted_too()
    {
        House house = Watched().Switched(0).With(s => (s.SwitchDebounceMs, s.SwitchMinMs[0]) = (300, 200));
        Rig rig = Rig.InSeason(house).Call(0).RunFor(1000).Make(0).StepAfter(-100);
        Assert.Equal(1, rig.Out.EarlySwitches);

        rig.Always(o => o.ProvenValves == 0, House.Opening - House.Scan);
    }

    [Fact]
    public void Rest_begins_again()
    {
        Rig rig = Rig.Running(Watched().Standing(1).With(s => (s.PumpMinOffMs, s.PumpStartDelayMs) = (4000, 0)), 0).RunFor(60_000).StepAfter(-100);

        rig.Always(o => o is { Pump: false, Hold: HoldReason.Rest }, 4000 - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_clock_that_stands_still_with_the_pump_on_is_a_fault_after_so_many_scans_and_not_one_before()
    {
        Rig rig = Rig.Running(Watched(), 0).RunFor(1000);
        for (int scan = 1; scan < House.StallScans; scan++)
            Assert.True(rig.StepAfter(0).Out.Pump);

        IsFault(rig.StepAfter(0));
    }

    [Fact]
    public void A_clock_that_stands_still_now_and_then_is_none()
    {
        Rig rig = Rig.Running(Watched(), 0).RunFor(1000);
        for (int i = 0; i < 50; i++)
        {
            rig.StepAfter(0).Step();
            Assert.True(rig.Out.Pump);
        }

        Assert.Equal(0, rig.Out.Alarms);
    }

    [Fact]
    public void With_the_pump_off_standing_still_is_none_and_proves_nothing()
    {
        Rig rig = Rig.InSeason(Watched()).Call(0).RunFor(1000);
        for (int i = 0; i < 100; i++)
            rig.StepAfter(0);

        Assert.Equal(0, rig.Out.Alarms | rig.Out.ProvenValves);
    }

    [Fact]
    public void A_scan_later_than_the_announced_deadline_by_more_than_its_limit_is_a_fault()
    {
        Rig rig = Rig.InSeason(Watched()).Call(0).Step().Step();
        long late = rig.Out.NextDeadlineMs - rig.Now + House.StallLimit;
        Assert.Equal(0, Copy(rig).StepAfter(late).Out.Alarms);

        IsFault(Copy(rig).StepAfter(late + 1));

        static Rig Copy(Rig _) => Rig.InSeason(Watched()).Call(0).Step().Step();
    }

    [Fact]
    public void A_scan_long_after_the_last_is_none_when_nothing_was_due()
    {
        Rig rig = Rig.Running(Watched(), 0).RunFor(5000);
        Assert.Equal(ZoneController.Never, rig.Out.NextDeadlineMs);

        rig.StepAfter(10L * 365 * 24 * 3600 * 1000);
        Assert.True(rig.Out.Pump);
        Assert.Equal(0, rig.Out.Alarms);
    }

    [Fact]
    public void The_alarm_stays_until_reset_and_the_pump_runs_meanwhile()
    {
        Rig rig = Rig.Running(Watched(), 0).StepAfter(-100).RunFor(10_000);
        Assert.True(rig.Out.Pump);
        Assert.Equal(Alarm.TimeFault, rig.Out.Alarms);

        Assert.Equal(0, rig.Reset().Out.Alarms);
    }

    [Fact]
    public void Latches_stay()
    {
        House house = House.OfZones(2).Switched(0).Retries(0).Companions(1).Fit(Contact.Limit);
        Rig rig = Rig.InSeason(house).Call(0).RunFor(House.SwitchLimit + House.Scan).On(Contact.Limit).Step().Off(Contact.Limit).RunFor(1000);
        rig.StepAfter(-100).RunFor(5000);

        Assert.Equal(Bits.Of(0), rig.Out.LatchedValves);
        Assert.Equal(Alarm.LimitLatched | Alarm.TimeFault, rig.Out.Alarms);
    }

    [Fact]
    public void Contacts_on_their_way_begin_again()
    {
        Rig rig = Rig.InSeason(Watched().With(s => s.CallDebounceMs = 1000)).Call(0).RunFor(900).StepAfter(-100);

        rig.Always(o => o.AcceptedCalls == 0, 900);
        Assert.Equal(1, rig.Step().Out.AcceptedCalls);
    }

    [Fact]
    public void So_do_senses_hands_and_contacts_of_the_house()
    {
        House house = House.OfZones(2).Gated(1).Fit(Contact.Priority)
            .With(s => (s.CallDebounceMs, s.SwitchDebounceMs, s.ContactDebounceMs[Contact.Place(Contact.Priority)]) = (500, 500, 500));
        Rig rig = Rig.InSeason(house).Sense(1).Hand(0).On(Contact.Priority).RunFor(400).StepAfter(-100);

        rig.Always(o => (o.AcceptedSenses | o.AcceptedHands | o.AcceptedContacts) == 0, 400);
        rig.Step();
        Assert.Equal((2, 1, Contact.Priority), (rig.Out.AcceptedSenses, rig.Out.AcceptedHands, rig.Out.AcceptedContacts));
    }

    [Fact]
    public void A_hand_that_was_ignored_and_a_priority_that_was_too_long_stay_ignored()
    {
        House house = House.OfZones(1).Fit(Contact.Priority | Contact.ServicePump)
            .With(s => (s.PriorityMaxMs, s.ServiceLimitMs) = (5000, 5000));
        Rig rig = Rig.InSeason(house).Call(0).Hand(0).On(Contact.Priority | Contact.ServicePump).RunFor(10_000);
        Assert.Equal(Alarm.PriorityLong | Alarm.ServiceEnded, rig.Out.Alarms);

        rig.StepAfter(-100).Step();
        rig.Always(o => o.Alarms == (Alarm.PriorityLong | Alarm.ServiceEnded | Alarm.TimeFault), 10_000);
        Assert.True(rig.Out.Heat);
    }

    [Fact]
    public void A_hand_that_governs_has_its_time_anew()
    {
        House house = House.OfZones(1).With(s => s.ServiceLimitMs = 5000);
        Rig rig = Rig.InSeason(house).Hand(0).RunFor(4000).StepAfter(-100);

        rig.Always(o => o is { Valves: 1, Alarms: Alarm.TimeFault }, 5000 - House.Scan);
        Assert.Equal(Alarm.TimeFault | Alarm.ServiceEnded, rig.Step().Out.Alarms);
    }

    [Fact]
    public void Idleness_before_it_still_counts()
    {
        House house = Watched().Exercised(60, 60, 1000, 5000);
        Rig rig = Rig.BeforePowerUp(house).Lockout().Step().RunFor(50_000).StepAfter(-100);

        rig.Always(o => o.Valves == 0, 10_000 - House.Scan);
        Assert.Equal(1, rig.Step().Out.Valves);
    }
}
