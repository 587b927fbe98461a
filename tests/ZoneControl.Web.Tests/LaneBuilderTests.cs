using CsCheck;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests;

public class LaneBuilderTests
{
    private static readonly ZoneView[] _two = [new("North", "timed"), new("South", "timed")];

    [Fact]
    public void Contacts_that_were_ever_asserted_and_alarms_that_were_ever_raised_get_a_lane()
    {
        Trace trace = new Sketch(2)
            .At(0, f => f)
            .At(1, f => f with { Contacts = Contact.Freeze | Contact.Supply })
            .At(2, f => f with { Alarms = Alarm.FrostInLockout, Hands = 2, StuckSwitches = 2 })
            .At(3, f => f with { Contacts = 0, Alarms = 0, Hands = 0, StuckSwitches = 0 })
            .Finish(5);
        RunLanes lanes = LaneBuilder.From(trace, _two);
        Assert.Equal(["Frost", "Hand switches", "Frost in lockout"], lanes.House.Select(lane => lane.Name));
        Assert.Equal([false, false, true], lanes.House.Select(lane => lane.IsAlarm));
        Assert.Equal([new Stretch(60_000, 180_000)], lanes.House[0].When);
        Assert.Equal([new Stretch(120_000, 180_000)], lanes.House[2].When);
        Assert.Empty(lanes.Zones[0].Stuck);
        Assert.Equal([new Stretch(120_000, 180_000)], lanes.Zones[1].Stuck);
    }

    [Fact]
    public void A_gated_zone_shows_its_sensed_valve_as_call_and_as_energised()
    {
        Trace trace = new Sketch(2).At(0, f => f).At(1, f => f with { Senses = 2 }).Finish(2);
        ZoneLane south = LaneBuilder.From(trace, _two).Zones[1];
        Assert.Equal([new Stretch(60_000, 120_000)], south.Calls);
        Assert.Equal([new Stretch(60_000, 120_000)], south.Energised);
    }

    [Fact]
    public void A_frame_holds_until_the_next_one_and_the_last_until_the_end()
    {
        Trace trace = new Sketch(2)
            .At(0, f => f)
            .At(1, f => f with { Pump = true })
            .At(2, f => f with { Heat = true })
            .At(3, f => f with { Pump = false })
            .At(4, f => f with { Pump = true })
            .Finish(5);
        RunLanes lanes = LaneBuilder.From(trace, _two);
        Assert.Equal([new Stretch(60_000, 180_000), new Stretch(240_000, 300_000)], lanes.Pump);
        Assert.Equal([new Stretch(120_000, 300_000)], lanes.Heat);
        Assert.Equal(300_000, lanes.EndMs);
    }

    [Fact]
    public void Each_zone_shows_its_own_bit_of_every_mask()
    {
        Trace trace = new Sketch(2)
            .At(0, f => f with { Calls = 1, Valves = 2 })
            .At(1, f => f with { ProvenValves = 2, LateValves = 1, LatchedValves = 1, EarlySwitches = 2 })
            .Finish(2);
        RunLanes lanes = LaneBuilder.From(trace, _two);
        ZoneLane north = lanes.Zones[0];
        ZoneLane south = lanes.Zones[1];
        Assert.Equal([new Stretch(0, 120_000)], north.Calls);
        Assert.Empty(south.Calls);
        Assert.Empty(north.Energised);
        Assert.Equal([new Stretch(0, 120_000)], south.Energised);
        Assert.Empty(north.Proven);
        Assert.Equal([new Stretch(60_000, 120_000)], south.Proven);
        Assert.Equal([new Stretch(60_000, 120_000)], north.Late);
        Assert.Empty(south.Late);
        Assert.Equal([new Stretch(60_000, 120_000)], north.Latched);
        Assert.Empty(south.Latched);
        Assert.Empty(north.Early);
        Assert.Equal([new Stretch(60_000, 120_000)], south.Early);
    }

    [Fact]
    public void Deadhead_lasts_wherever_the_plant_counts_it()
    {
        PlantSample Sample(long ms, double deadheadS) => new()
        {
            Ms = ms,
            RawCalls = 0,
            RawSwitches = 0,
            Travel = [0],
            ZoneFlowM3s = [0],
            PumpFlowM3s = 0,
            BypassFlowM3s = 0,
            PumpHeadM = 0,
            TrappedWaterC = 20,
            DeadheadS = deadheadS,
        };
        var trace = new Trace(
            [new Frame { Ms = 0 }],
            [Sample(0, 0), Sample(1000, 0), Sample(2000, 1), Sample(3000, 2), Sample(4000, 2), Sample(5000, 2.5)],
            5000);
        Assert.Equal([new Stretch(1000, 3000), new Stretch(4000, 5000)], LaneBuilder.From(trace, [_two[0]]).Deadhead);
    }

    [Fact]
    public void Stretches_of_a_thing_and_of_its_opposite_cover_the_run_once()
    {
        Gen.Select(Gen.Int[1, 1000], Gen.Bool).Array[1, 40].Sample(steps =>
        {
            var frames = new List<Frame>();
            long ms = 0;
            foreach ((int length, bool pump) in steps)
            {
                frames.Add(new Frame { Ms = ms, Pump = pump });
                ms += length;
            }

            var trace = new Trace(frames, [], ms);
            Stretch[] all = [.. LaneBuilder.When(trace, f => f.Pump).Concat(LaneBuilder.When(trace, f => !f.Pump)).OrderBy(s => s.FromMs)];
            Assert.Equal(0, all[0].FromMs);
            Assert.Equal(ms, all[^1].ToMs);
            for (int i = 1; i < all.Length; i++)
                Assert.Equal(all[i - 1].ToMs, all[i].FromMs);
        });
    }

    [Fact]
    public void Neighbouring_holds_of_one_reason_are_one_and_no_hold_is_none()
    {
        HoldSpan[] spans =
        [
            new(0, 1000, HoldReason.Proof),
            new(1000, 2000, HoldReason.Proof),
            new(2000, 3000, HoldReason.None),
            new(3500, 4000, HoldReason.Proof),
            new(4000, 5000, HoldReason.StartDelay),
            new(5000, 5000, HoldReason.Lockout),
        ];
        Assert.Equal(
            [
                new HoldView(new Stretch(0, 2000), HoldReason.Proof),
                new HoldView(new Stretch(3500, 4000), HoldReason.Proof),
                new HoldView(new Stretch(4000, 5000), HoldReason.StartDelay),
            ],
            ViewBuilder.Merge(spans));
    }

    [Fact]
    public void Alarms_stand_among_the_events_in_order_of_time()
    {
        RunView run = Morning.Controlled();
        Assert.Equal(run.Happenings.Select(h => h.Ms).Order(), run.Happenings.Select(h => h.Ms));
        Happening alarm = Assert.Single(run.Happenings, h => h.IsAlarm);
        Assert.Equal("Shop: valve late, not counted as open", alarm.Text);
        Assert.Equal(44 * 60_000, alarm.Ms);
    }
}
