namespace ZoneControl.Logic.Tests;

[Trait("Rule", "VALVE-STAGGER")]
public class ValveStaggerTests
{
    // Held 5 VA, starting 10 VA for 600 ms.
    private const int Inrush = 600;

    private static House Fed(int zones, int deciVa) => House.OfZones(zones).Transformer(deciVa, hold: 50, inrush: 100, Inrush);

    [Fact]
    public void Valves_that_would_overload_the_transformer_wait_until_the_others_have_started()
    {
        Rig rig = Rig.InSeason(Fed(3, 200)).Call(0, 1, 2).Step();
        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);

        rig.Always(o => o.Valves == 3, Inrush - House.Scan);
        Assert.Equal(Bits.Of(0, 1, 2), rig.Step().Out.Valves);
    }

    [Fact]
    public void A_tenth_of_a_volt_ampere_more_or_less_decides()
    {
        Assert.Equal(Bits.Of(0, 1), Rig.InSeason(Fed(2, 200)).Call(0, 1).Step().Out.Valves);
        Assert.Equal(Bits.Of(0), Rig.InSeason(Fed(2, 199)).Call(0, 1).Step().Out.Valves);
    }

    [Fact]
    public void One_after_the_other_all_are_opened_in_the_end()
    {
        Rig rig = Rig.InSeason(Fed(4, 250)).Call(0, 1, 2, 3).Step();
        Assert.Equal(Bits.Of(0, 1), rig.Out.Valves);

        rig.RunFor(Inrush);
        Assert.Equal(Bits.Of(0, 1, 2), rig.Out.Valves);
        rig.RunFor(Inrush);
        Assert.Equal(Bits.Of(0, 1, 2, 3), rig.Out.Valves);
    }

    [Fact]
    public void A_start_that_is_no_whole_number_of_scans_ends_at_the_next_scan()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Transformer(150, 50, 100, 550)).Call(0, 1).Step();

        rig.Always(o => o.Valves == 1, 500);
        Assert.Equal(3, rig.Step().Out.Valves);
    }

    [Fact]
    public void Zones_that_ask_go_before_companions()
    {
        House house = Fed(3, 200).Minimum(3).Companions(0, 1, 2);
        Rig rig = Rig.InSeason(house).Call(2).Step();

        Assert.Equal(Bits.Of(0, 2), rig.Out.Valves);
    }

    [Fact]
    public void No_companion_takes_the_room_that_one_who_asks_waits_for()
    {
        // Zone 1 is large: it waits for zone 0. Zone 2, a companion, would fit beside zone 0 alone.
        House house = Fed(3, 260).Minimum(3).Companions(2, 0, 1).With(s => s.InrushDeciVa = [120, 150, 100]);
        Rig rig = Rig.InSeason(house).Call(0, 1).Step();

        Assert.Equal(Bits.Of(0), rig.Out.Valves);
        rig.Always(o => o.Valves == Bits.Of(0), Inrush - House.Scan);
        rig.Always(o => o.Valves == Bits.Of(0, 1), Inrush);
        Assert.Equal(Bits.Of(0, 1, 2), rig.Step().Out.Valves);
    }

    [Fact]
    public void What_is_released_makes_room_in_the_same_scan()
    {
        House house = Fed(2, 150).Minimum(1).Companions();
        Rig rig = Rig.InSeason(house).Call(0).Step();
        Assert.Equal(Bits.Of(0), rig.Out.Valves);

        rig.EndCall(0).Call(1).Step().RunFor(Inrush);
        Assert.True(rig.IsOpen(1));
    }

    [Fact]
    public void A_transformer_that_nobody_knows_is_not_kept_to()
    {
        Assert.Equal(7, Rig.InSeason(Fed(3, 0)).Call(0, 1, 2).Step().Out.Valves);
    }

    [Fact]
    [Trait("Rule", "ANSWER-ON")]
    public void The_pump_starts_within_stagger_and_opening_time()
    {
        Rig rig = Rig.InSeason(Fed(3, 200).Minimum(3)).Call(0).Step();

        Assert.Equal(Inrush + House.Opening, rig.RunUntil(o => o.Pump, 10_000));
    }
}

[Trait("Rule", "VALVE-SUPPLY")]
public class ValveSupplyTests
{
    private static House Supplied(int zones) => House.OfZones(zones).Fit(Contact.Supply);

    [Fact]
    public void Its_loss_is_a_loss_of_proof_and_a_trip_in_the_scan_that_accepts_it()
    {
        Rig rig = Rig.Running(Supplied(1), 0).Off(Contact.Supply).Step();

        Assert.Equal(new Published { Calls = 1, Hold = HoldReason.Supply, Alarms = Alarm.NoSupply }, Published.Of(rig.Out));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(300)]
    [InlineData(450)]
    public void After_power_up_its_lack_is_told_when_a_closed_contact_would_have_been_accepted_and_not_one_scan_before(int debounce)
    {
        House house = Supplied(1).With(s => s.ContactDebounceMs[6] = debounce);
        int accepted = Rig.BeforePowerUp(house).On(Contact.Supply).Step().RunUntil(o => (o.AcceptedContacts & Contact.Supply) != 0, 1000);
        Rig rig = Rig.BeforePowerUp(house).Off(Contact.Supply).Step();

        Assert.Equal(0, rig.Out.Alarms);
        Assert.Equal(accepted, rig.RunUntil(o => o.Alarms == Alarm.NoSupply, 1000));
    }

    [Fact]
    public void Nothing_opens_or_proves_while_it_is_not_yet_accepted()
    {
        House house = Supplied(1).With(s => s.ContactDebounceMs[6] = 500);
        Rig rig = Rig.BeforePowerUp(house).Season().On(Contact.Supply).Call(0).Step();

        rig.Always(o => o is { Valves: 0, ProvenValves: 0, Pump: false, Alarms: 0 }, 400);
        Assert.Equal((1, HoldReason.Proof), (rig.Step().Out.Valves, rig.Out.Hold));
    }

    [Fact]
    public void A_clock_that_fails_meanwhile_begins_that_wait_anew()
    {
        House house = Supplied(1).With(s => s.ContactDebounceMs[6] = 300);
        Rig rig = Rig.BeforePowerUp(house).Off(Contact.Supply).Step().RunFor(200).StepAfter(-1000);

        rig.Always(o => o.Alarms == Alarm.TimeFault, 200);
        Assert.Equal(Alarm.TimeFault | Alarm.NoSupply, rig.Step().Out.Alarms);
    }

    [Fact]
    public void Once_accepted_its_loss_is_told_at_once()
    {
        House house = Supplied(1).With(s => s.ContactDebounceMs[6] = 300);
        Rig rig = Rig.BeforePowerUp(house).On(Contact.Supply).Step().RunFor(300).Off(Contact.Supply).Step();

        rig.Always(o => o.Alarms == 0, 200);
        Assert.Equal(Alarm.NoSupply, rig.Step().Out.Alarms);
    }

    [Fact]
    public void With_debounce_that_is_when_it_has_been_away_for_so_long()
    {
        Rig rig = Rig.InSeason(Supplied(1).With(s => s.ContactDebounceMs[6] = 300)).RunFor(1000).Call(0);
        rig.RunUntil(o => o.Pump, 5000);
        rig.Off(Contact.Supply).Step();

        rig.Always(o => o.Pump, 200);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void Opening_time_counts_only_with_supply_and_begins_anew_when_it_is_back()
    {
        Rig rig = Rig.InSeason(Supplied(1)).Call(0).RunFor(1500).Off(Contact.Supply).RunFor(10_000);
        Assert.Equal(HoldReason.Supply, rig.Out.Hold);

        rig.On(Contact.Supply).Step();
        rig.Always(o => o is { Pump: false, Valves: 1, Hold: HoldReason.Proof }, House.Opening - House.Scan);
        Assert.True(rig.Step().Out.Pump);
    }

    [Fact]
    public void When_it_is_back_valves_are_opened_under_the_transformers_limit()
    {
        House house = Supplied(3).Transformer(200, hold: 50, inrush: 100, inrushMs: 600);
        Rig rig = Rig.InSeason(house).Call(0, 1, 2).RunFor(2000);
        Assert.Equal(7, rig.Out.Valves);

        rig.Off(Contact.Supply).RunFor(500).On(Contact.Supply).Step();
        Assert.Equal(3, rig.Out.Valves);
        rig.RunFor(600);
        Assert.Equal(7, rig.Out.Valves);
    }

    [Fact]
    public void A_made_switch_proves_nothing_without_supply_and_no_valve_is_late_for_want_of_it()
    {
        Rig rig = Rig.InSeason(Supplied(1).Switched(0)).Call(0).RunFor(House.SwitchLimit).Off(Contact.Supply).RunFor(20_000);
        Assert.Equal(0, rig.Out.LateValves);

        rig.On(Contact.Supply).Step().Always(o => o.LateValves == 0, House.SwitchLimit - House.Scan);
        Assert.Equal(1, rig.Step().Out.LateValves);
    }

    [Fact]
    public void A_valve_whose_limit_is_up_in_the_very_scan_that_loses_supply_is_not_to_blame()
    {
        Rig rig = Rig.InSeason(Supplied(1).Switched(0).Retries(0)).Call(0).Step().RunFor(House.SwitchLimit - House.Scan).Off(Contact.Supply).Step();

        rig.Always(o => o is { LateValves: 0, LatchedValves: 0 }, 10_000);
    }

    [Fact]
    public void Capacity_that_needs_no_actuator_lets_the_pump_run_on()
    {
        Rig rig = Rig.InSeason(Supplied(1).Standing(1)).Call(0);
        rig.RunUntil(o => o.Pump, 5000);
        rig.Off(Contact.Supply);

        rig.Always(o => o is { Pump: true, Heat: true, Valves: 0, Alarms: Alarm.NoSupply }, 10_000);
    }

    [Fact]
    public void A_panels_valve_proves_without_our_supply_but_its_lateness_waits_for_it()
    {
        House house = Supplied(2).Gated(1).Switched(1);
        Rig rig = Rig.InSeason(house).Sense(1).RunFor(1000).Off(Contact.Supply).RunFor(60_000);
        Assert.Equal(0, rig.Out.LateValves);
        rig.On(Contact.Supply).Step().Always(o => o.LateValves == 0, House.SwitchLimit - 1000 - House.Scan);
        Assert.Equal(Bits.Of(1), rig.Step().Out.LateValves);

        rig = Rig.InSeason(house).Off(Contact.Supply).Sense(1).RunFor(House.SwitchMin + House.Scan).Make(1);
        rig.RunUntil(o => o.Pump, 5000);
        Assert.Equal(Bits.Of(1), rig.Out.ProvenValves);
    }
}
