using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>The list of conditions between "wanted" and "on", and the time left to each.</summary>
public class ConditionTests
{
    private readonly InputImage _contacts = new();
    private readonly OutputImage _out = new();
    private readonly ConditionList _pump = new();
    private readonly ConditionList _heat = new();
    private ZoneController _controller = null!;
    private long _now;

    [Fact]
    public void A_call_waits_for_proof_then_for_the_delay_and_time_says_how_long()
    {
        Start(House.OfZones(2).Minimum(2).With(s => s.PumpStartDelayMs = 5000));
        _contacts.Calls = 1;
        Run(House.Scan);

        Assert.Equal((false, House.Opening), Pump(Condition.Proof));
        Assert.Equal((false, 5000), Pump(Condition.StartDelay));

        Run(House.Opening);

        Assert.Equal((true, 0), Pump(Condition.Proof));
        Assert.Equal((false, 5000 - House.Opening), Pump(Condition.StartDelay));
        Assert.Equal((false, ConditionList.Unknown), Heat(Condition.PumpOn));
        Assert.Equal((true, 0), Heat(Condition.HeatAsked));

        Run(5000 - House.Opening);

        Assert.True(_out.Pump);
        _controller.ExplainPump(_pump);
        _controller.ExplainHeat(_heat);
        Assert.Equal([], Unmet(_pump));
        Assert.Equal([], Unmet(_heat));
    }

    [Fact]
    public void A_switch_that_has_not_made_is_nothing_that_time_can_promise()
    {
        Start(House.OfZones(1).Switched(0));
        _contacts.Calls = 1;
        Run(House.Scan);

        Assert.Equal((false, ConditionList.Unknown), Pump(Condition.Proof));
    }

    [Fact]
    public void The_soonest_set_of_valves_that_reaches_minimum_open_gives_the_time_left()
    {
        Start(House.OfZones(3).Minimum(2).With(s => s.OpeningMs = [1000, 3000, 2000]));
        _contacts.Calls = 7;
        Run(House.Scan);

        Assert.Equal((false, 2000), Pump(Condition.Proof));
    }

    [Fact]
    public void A_set_of_valves_that_reaches_it_later_does_not_put_off_the_time_left()
    {
        Start(House.OfZones(3).Minimum(2).With(s => s.OpeningMs = [1000, 2000, 3000]));
        _contacts.Calls = 7;
        Run(House.Scan);
        Assert.Equal((false, 2000), Pump(Condition.Proof));

        Run(700);
        Assert.Equal((false, 1300), Pump(Condition.Proof));
    }

    [Fact]
    public void A_switch_that_made_too_soon_leaves_it_to_time_for_as_long_as_it_stays_made()
    {
        Start(House.OfZones(1).Switched(0));
        _contacts.Calls = 1;
        Run(House.Scan);
        _contacts.EndSwitches = 1;
        Run(2 * House.Scan);
        Assert.Equal(1, _out.EarlySwitches);
        Assert.Equal((false, House.Opening - 2 * House.Scan), Pump(Condition.Proof));

        _contacts.EndSwitches = 0;
        Run(House.Scan);
        Assert.Equal(1, _out.EarlySwitches);
        Assert.Equal((false, ConditionList.Unknown), Pump(Condition.Proof));
    }

    [Fact]
    public void A_switch_that_is_stuck_promises_nothing()
    {
        Start(House.OfZones(1).Switched(0));
        _contacts.EndSwitches = 1;
        Run(House.Closing + 2 * House.Scan);
        Assert.Equal(1, _out.StuckSwitches);
        _contacts.Calls = 1;
        Run(2 * House.Scan);

        Assert.Equal((1, 1), (_out.StuckSwitches, _out.Valves));
        Assert.Equal((false, ConditionList.Unknown), Pump(Condition.Proof));
    }

    [Fact]
    public void Lists_hold_every_condition_in_its_order()
    {
        Start(House.OfZones(1));
        _controller.ExplainPump(_pump);
        _controller.ExplainHeat(_heat);

        Assert.Equal(
            Enum.GetValues<Condition>(),
            [.. _pump.Which.Take(_pump.Count), .. _heat.Which.Take(_heat.Count)]);
    }

    [Fact]
    public void A_start_delay_that_nobody_waits_for_has_no_time_left()
    {
        Start(House.OfZones(1).With(s => s.PumpStartDelayMs = 2 * House.Overrun));

        Assert.Equal((false, ConditionList.Unknown), Pump(Condition.StartDelay));
    }

    [Fact]
    public void Heat_waits_for_flow_and_for_the_limit_to_close()
    {
        _contacts.Contacts = Contact.Limit; // closed: all is well
        Start(House.OfZones(1).Fit(Contact.Flow | Contact.Limit));
        _contacts.Calls = 1;
        Run(House.Opening + 3 * House.Scan);
        Assert.True(_out.Pump);
        Assert.Equal((false, ConditionList.Unknown), Heat(Condition.Flow));
        Assert.Equal((true, 0), Heat(Condition.LimitClosed));

        _contacts.Contacts |= Contact.Flow;
        Run(2 * House.Scan);
        Assert.Equal((true, 0), Heat(Condition.Flow));
        Assert.True(_out.Heat);

        _contacts.Contacts = Contact.Flow;
        Run(2 * House.Scan);
        Assert.Equal((false, ConditionList.Unknown), Heat(Condition.LimitClosed));
    }

    [Fact]
    public void Frost_in_lockout_waits_for_nothing_when_its_time_is_used_up_and_out_of_it_has_all_the_time()
    {
        Start(House.OfZones(1).Fit(Contact.Freeze | Contact.Lockout));
        _contacts.Contacts = Contact.Lockout; // frost opens its contact
        Run(House.Opening + 3 * House.Scan);
        Assert.True(_out.Heat);
        Assert.Equal((true, 0), Heat(Condition.FrostTime));

        Run(House.FreezeHeatMax);
        Assert.False(_out.Heat);
        Assert.Equal((false, ConditionList.Unknown), Heat(Condition.FrostTime));

        _contacts.ServiceValves = 1; // a hand asks instead of the frost
        Run(House.Scan);
        Assert.Equal((true, 0), Heat(Condition.FrostTime));
        _contacts.ServiceValves = 0;
        _contacts.Contacts = 0; // in season
        Run(2 * House.Scan);
        Assert.Equal((true, 0), Heat(Condition.FrostTime));
    }

    [Fact]
    public void Stray_flow_has_to_cease_for_a_rundown()
    {
        Start(House.OfZones(1).Fit(Contact.Flow));
        _contacts.Contacts = Contact.Flow;
        Run(House.Rundown + 2 * House.Scan);
        Assert.Equal((false, ConditionList.Unknown), Pump(Condition.NoStrayFlow));

        _contacts.Contacts = 0;
        Run(3 * House.Scan);
        Assert.Equal((false, House.Rundown - 2 * House.Scan), Pump(Condition.NoStrayFlow));
        Run(House.Rundown - 2 * House.Scan);
        Assert.Equal((true, 0), Pump(Condition.NoStrayFlow));
    }

    [Fact]
    public void Nobody_who_calls_is_the_first_thing_missing()
    {
        Start(House.OfZones(1));

        Assert.Equal((false, ConditionList.Unknown), Pump(Condition.Wanted));
        Assert.Equal((false, ConditionList.Unknown), Pump(Condition.Proof));
        Assert.Equal((false, ConditionList.Unknown), Heat(Condition.HeatAsked));
    }

    [Fact]
    public void The_pumps_rest_is_told_with_its_time_left()
    {
        Start(House.OfZones(1).With(s => s.PumpMinOffMs = 60_000));

        (bool met, int left) = Pump(Condition.Rested);
        Assert.False(met);
        Run(left);
        Assert.Equal((true, 0), Pump(Condition.Rested));
    }

    [Fact]
    public void The_published_reason_is_the_first_unmet_condition_in_random_runs() =>
        RandomRun.Any.Sample(
            run => Verdict.IsClean(FirstDisagreement(run)),
            iter: 1000,
            print: run => run.ToString());

    private static string? FirstDisagreement(RandomRun run)
    {
        ZoneController controller = null!;
        var world = new RandomWorld(run);
        var outputs = new OutputImage();
        var pump = new ConditionList();
        foreach (Tick tick in world.Ticks(outputs))
        {
            if (tick.PowerUp)
                controller = new ZoneController(run.Settings);
            controller.Scan(tick.Now, world.Contacts, outputs);
            controller.ExplainPump(pump);
            HoldReason expected = Reason(pump);
            if (outputs.Hold >= HoldReason.Limit && outputs.Hold != HoldReason.Reset && outputs.Hold != expected)
                return $"at {tick.Now} ms: published {outputs.Hold}, first unmet condition is {expected}";
        }

        return null;
    }

    private static HoldReason Reason(ConditionList list)
    {
        foreach (Condition which in Unmet(list))
        {
            return which switch
            {
                Condition.NoLimit => HoldReason.Limit,
                Condition.NoFlowLatch => HoldReason.FlowLatched,
                Condition.NoStrayFlow => HoldReason.PumpStuck,
                Condition.Supply => HoldReason.Supply,
                Condition.EnoughValves => HoldReason.TooFewValves,
                Condition.Proof => HoldReason.Proof,
                Condition.StartDelay => HoldReason.StartDelay,
                Condition.Rested => HoldReason.Rest,
                _ => HoldReason.None,
            };
        }

        return HoldReason.None;
    }

    private static IEnumerable<Condition> Unmet(ConditionList list) =>
        Enumerable.Range(0, list.Count).Where(i => !list.Met[i]).Select(i => list.Which[i]);

    /// <summary>Powered up, in season.</summary>
    private void Start(House house)
    {
        _controller = new ZoneController(house.Settings());
        Run(3 * House.Scan);
    }

    private void Run(int ms)
    {
        for (long end = _now + ms; _now < end;)
        {
            _now += House.Scan;
            _controller.Scan(_now, _contacts, _out);
        }
    }

    private (bool Met, int WaitMs) Pump(Condition which)
    {
        _controller.ExplainPump(_pump);
        return In(_pump, which);
    }

    private (bool Met, int WaitMs) Heat(Condition which)
    {
        _controller.ExplainHeat(_heat);
        return In(_heat, which);
    }

    private static (bool Met, int WaitMs) In(ConditionList list, Condition which)
    {
        int at = Array.IndexOf(list.Which, which, 0, list.Count);
        Assert.True(at >= 0, $"{which} is not in the list");
        return (list.Met[at], list.WaitMs[at]);
    }
}
