using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>A controller that takes over a saved state behaves ever after as the one that saved it.</summary>
public class SaveLoadTests
{
    [Fact]
    public void A_loaded_controller_behaves_as_the_saved_one() =>
        Gen.Select(RandomRun.Any, Gen.Int[0, 59], Gen.Int[0, 3]).Sample(
            (run, at, scan) => Verdict.IsClean(Difference(run, at % run.Moments.Length, scan)),
            iter: 3000,
            print: c => $"{c.Item1}\nsaved at moment {c.Item2}, scan {c.Item3}");

    [Fact]
    public void Every_saved_number_matters_somewhere()
    {
        // A number that could be dropped unnoticed would be no part of the state. Zeroes stand in for what is dropped.
        ControllerSettings[] houses = [Everything(100), Everything(1000)];
        int length = new ZoneController(houses[0]).StateLength;
        var found = new bool[length];
        foreach (int place in _alwaysZero)
            found[place] = true;
        Gen.Select(Gen.OneOf(houses), RandomRun.AnyMoments, Gen.Int[0, 3]).Sample(
            (settings, moments, scan) =>
            {
                // A clock that stands still just then is rare, and bears on one of the numbers.
                if (scan == 2)
                    moments[moments.Length / 2] = new Moment(6, Happening.ClockStall, 5);
                var run = new RandomRun(settings, moments);
                for (int drop = 0; drop < length && !found.All(f => f); drop++)
                {
                    if (!found[drop] && Difference(run, moments.Length / 2, scan, drop) != null)
                        found[drop] = true;
                }
            },
            iter: 60_000); // most find nothing left to do; a few numbers are rarely more than 0
        Assert.Equal([], Enumerable.Range(0, length).Where(i => !found[i]));
    }

    /// <summary>How long contacts have stood that these houses do not have: calls and hands of a gated zone, switches of a
    /// timed one, senses of driven ones; and lateness of a timed zone, tries of a gated one.</summary>
    private static readonly int[] _alwaysZero = [4, 8, 12, 13, 19, 61, 62, 65];

    /// <summary>Three zones, driven and gated, timed and switched, with every contact and short times.</summary>
    private static ControllerSettings Everything(int period) => House.OfZones(3).Minimum(2).Switched(0, 2).Gated(2)
        .Fit(Contact.Flow | Contact.Limit | Contact.Freeze | Contact.Priority | Contact.Reset | Contact.Supply | Contact.ServicePump)
        .Transformer(deciVa: 40, hold: 10, inrush: 30, inrushMs: 3 * period)
        .Exercised(intervalS: 60, retryS: 60, runMs: 3 * period, limitMs: 30 * period)
        .With(s =>
        {
            s.ScanPeriodMs = period;
            s.CallDebounceMs = 2 * period;
            s.SwitchDebounceMs = Math.Min(2 * period, 500);
            s.ContactDebounceMs = Enumerable.Range(0, Contact.Count).Select(place => Bits.Has(Contact.Tripping, place) ? 300 : 2 * period).ToArray();
            for (int zone = 0; zone < 3; zone++)
                (s.OpeningMs[zone], s.SwitchMinMs[zone], s.SwitchLimitMs[zone], s.ClosingMs[zone]) = (5 * period, period, 9 * period, 4 * period);
            (s.PumpStartDelayMs, s.PumpOverrunMs, s.PumpRundownMs, s.HeatLeadMs) = (7 * period, 6 * period, 5 * period, 3 * period);
            (s.PumpMinOffMs, s.PumpStartIntervalMs, s.FlowProofMs, s.FlowLossMs) = (8 * period, 20 * period, 6 * period, 4 * period);
            (s.FreezeHeatMaxMs, s.PriorityMaxMs, s.ServiceLimitMs) = (8 * period, 30 * period, 40 * period);
            (s.StallLimitMs, s.StallScans) = (period, 2);
        }).Settings();

    [Fact]
    public void Saving_twice_writes_the_same_and_disturbs_nothing()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Minimum(2)).Call(0).RunFor(700);
        int[] once = rig.State;

        Assert.Equal(once, rig.State);
        Assert.Equal(House.Opening - 700 + House.Scan, rig.RunUntil(o => o.Pump, 5000));
    }

    [Fact]
    public void What_was_saved_before_any_scan_powers_up()
    {
        ControllerSettings settings = House.OfZones(1).Settings();
        var fresh = new ZoneController(settings);
        int[] state = new int[fresh.StateLength];
        fresh.Save(state);
        ZoneController loaded = Spoilt(settings);
        loaded.Load(state, 1000);
        var outputs = new OutputImage();
        loaded.Scan(1100, new InputImage { Calls = 1 }, outputs);

        Assert.True(outputs.PowerUp);
        Assert.Equal(0, outputs.AcceptedCalls | outputs.Valves);
    }

    [Theory]
    [InlineData(true, House.FlowLoss)]
    [InlineData(false, House.FlowProof - House.Scan)] // one scan of it has passed
    public void A_loaded_controller_knows_whether_flow_was_seen_since_the_start(bool seen, int tripsAfterMs)
    {
        Rig rig = Rig.Running(House.OfZones(1).Fit(Contact.Flow), 0);
        rig.FlowFollows = false;
        if (seen)
            rig.On(Contact.Flow).RunFor(1000).Off(Contact.Flow);
        rig.Off(Contact.Flow).Reload().Step();

        rig.Always(o => o.Pump, tripsAfterMs - House.Scan);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_loaded_controller_knows_that_heat_was_asked_for_until_then()
    {
        Rig rig = Rig.Running(House.OfZones(1).Fit(Contact.Priority), 0).RunFor(5000);
        Assert.True(rig.Out.Heat);
        rig.Reload().On(Contact.Priority).Step();
        Assert.False(rig.Out.Heat);

        rig.Always(o => o.Pump, House.HeatLead - House.Scan);
        Assert.False(rig.Step().Out.Pump);
    }

    [Fact]
    public void A_loaded_controller_knows_when_its_next_scan_is_due()
    {
        Rig due = Rig.InSeason(House.OfZones(1)).Call(0).Step().Step();
        long late = due.Out.NextDeadlineMs - due.Now + House.StallLimit + 1;
        due.Reload().StepAfter(late);
        Assert.Equal(Alarm.TimeFault, due.Out.Alarms);

        Rig never = Rig.Running(House.OfZones(1), 0).RunFor(5000);
        Assert.Equal(ZoneController.Never, never.Out.NextDeadlineMs);
        never.Reload().StepAfter(24L * 3600 * 1000);
        Assert.Equal((0, true), (never.Out.Alarms, never.Out.Pump));
    }

    [Fact]
    public void A_loaded_controller_goes_on_with_the_exercise_that_was_begun()
    {
        static Rig Exercising()
        {
            Rig rig = Rig.InSeason(House.OfZones(1).Exercised(60, 60, 3000, 20_000));
            rig.RunUntil(o => o.Pump, 70_000);
            return rig.RunFor(1000);
        }

        int left = Exercising().RunUntil(o => !o.Pump, 10_000);
        Assert.True(left > House.Scan);
        Assert.Equal(left, Exercising().Reload().RunUntil(o => !o.Pump, 10_000));
    }

    [Fact]
    public void The_idle_seconds_stand_where_it_says()
    {
        Rig rig = Rig.InSeason(House.OfZones(3).Switched(0).Gated(1).Exercised(600, 60, 1000, 5000)).RunFor(60_000);
        int place = new ZoneController(House.OfZones(3).Switched(0).Gated(1).Exercised(600, 60, 1000, 5000).Settings()).IdlePlace;
        int[] before = rig.State;
        int[] after = rig.RunFor(7_300).State;

        Assert.Equal(7_300, (after[place] - before[place]) * 1000 + after[place + 1] - before[place + 1]);
        Assert.True(before[place] >= 60);
    }

    /// <summary>The first difference after a load before one of a moment's scans, or null; one saved number may be dropped on the way.</summary>
    private static string? Difference(RandomRun run, int loadAt, int loadScan, int drop = -1)
    {
        ControllerSettings s = run.Settings;
        ZoneController original = null!;
        ZoneController loaded = Spoilt(s);
        bool follows = false;
        var world = new RandomWorld(run);
        var expected = new OutputImage();
        var actual = new OutputImage();
        int[] state = new int[loaded.StateLength];
        int[] other = new int[loaded.StateLength];
        int moment = -1;
        int scan = 0;
        long last = 0;

        // The second board's clock shows another time.
        const long Ahead = 123_456_789_000;
        foreach (Tick tick in world.Ticks(expected))
        {
            moment += tick.First ? 1 : 0;
            scan = tick.First ? 0 : scan + 1;
            if (tick.PowerUp)
                original = new ZoneController(s);
            if (tick.PowerUp && follows)
                loaded = new ZoneController(s);
            if (moment == loadAt && scan == loadScan && !tick.PowerUp)
            {
                original.Save(state);
                if (drop >= 0 && state[drop] == 0)
                    return null;
                if (drop >= 0)
                    state[drop] = 0;
                loaded.Load(state, last + Ahead);
                follows = true;
                if (drop < 0 && Explained(original) != Explained(loaded))
                    return $"at {last} the loaded one explains {Explained(loaded)}, not {Explained(original)}";
            }

            last = tick.Now;
            original.Scan(last, world.Contacts, expected);
            if (!follows)
                continue;
            loaded.Scan(last + Ahead, world.Contacts, actual);
            if (drop < 0 && !SameState(original, loaded, state, other))
                return $"at {last} {string.Join(' ', other)} is not {string.Join(' ', state)}";
            if (Published.Of(expected) != Published.Of(actual))
                return $"at {last} the loaded one shows {Published.Of(actual)}, not {Published.Of(expected)}";
        }

        if (!follows)
            return null;
        return SameState(original, loaded, state, other) ? null : $"{string.Join(' ', other)} is not {string.Join(' ', state)}";
    }

    private static string Explained(ZoneController controller)
    {
        var pump = new ConditionList();
        var heat = new ConditionList();
        controller.ExplainPump(pump);
        controller.ExplainHeat(heat);
        return string.Join(' ', ((ConditionList[])[pump, heat]).SelectMany(list =>
            Enumerable.Range(0, list.Count).Select(i => $"{list.Which[i]}:{list.Met[i]}:{list.WaitMs[i]}")));
    }

    private static bool SameState(ZoneController original, ZoneController loaded, int[] state, int[] other)
    {
        original.Save(state);
        loaded.Save(other);
        return state.AsSpan().SequenceEqual(other);
    }

    /// <summary>A controller that has lived through something before it loads: nothing of that may remain.</summary>
    private static ZoneController Spoilt(ControllerSettings s)
    {
        var controller = new ZoneController(s);
        var contacts = new InputImage { Calls = -1, EndSwitches = -1, Senses = -1, ServiceValves = -1, Contacts = -1 };
        var outputs = new OutputImage();
        for (int i = 0; i < 30; i++)
            controller.Scan(i * (long)s.ScanPeriodMs, contacts, outputs);
        return controller;
    }
}
