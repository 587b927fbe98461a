using CsCheck;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>Properties that hold for every trace, lawful or wild.</summary>
public class SplittingTests
{
    private static readonly int[] _gaps =
        [0, 1, 99, 100, 101, 199, 200, 201, 400, 1_000, 2_000, 3_000, 5_000, 8_000, 10_000, 12_000, 15_000, 20_000, 27_400, 28_300];

    /// <summary>A few changes at a time, so that a trace stays near what a controller might do and often breaks late.</summary>
    private static readonly Gen<(int Gap, int What, int Zone)> _change =
        Gen.Select(Gen.Int[0, _gaps.Length - 1], Gen.Int[0, 31], Gen.Int[0, 3]);

    private static readonly Gen<Trace> _wild =
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 12], _change.Array[0, 40]).Select((scene, kept, changes) => Written(scene, kept, changes));

    /// <summary>The controller in a house with every contact, and a few of its frames spoilt.</summary>
    private static readonly Gen<Tale> _spoilt =
        Gen.Select(Gen.Int[0, 999], Gen.Select(Gen.Int[0, 399], Gen.Int[0, 41], Gen.Int[0, 4]).Array[0, 6]).Select(Spoilt);

    private static readonly Gen<Tale> _tales = Gen.OneOf(_wild.Select(trace => new Tale(Workshop.Settings(), trace)), _spoilt);

    [Fact]
    public void Splitting_frames_changes_no_verdict() =>
        Gen.Select(_tales, Gen.Int[0, 60_000].Array[0, 30]).Sample((tale, cuts) =>
            Assert.Equal(Verdicts(tale), Verdicts(tale with { Trace = Split(tale.Trace, cuts) })), iter: 1_000);

    [Fact]
    public void A_frame_at_every_scan_changes_no_verdict() => _tales.Sample(tale =>
        Assert.Equal(Verdicts(tale), Verdicts(tale with { Trace = Split(tale.Trace, EveryScan(tale.Trace)) })), iter: 100);

    [Fact]
    public void Saving_and_loading_between_frames_changes_no_finding() => _tales.Sample(tale =>
    {
        (ControllerSettings house, Trace trace) = tale;
        var straight = new List<string>();
        var moved = new List<string>();
        var one = new MonitorSet(house, NameOf, new Log(straight));
        long ms = 0;
        var other = new MonitorSet(house, NameOf, new Log(moved));
        int[] saved = new int[other.StateInts];
        foreach (Frame frame in trace.Frames)
        {
            int gap = (int)(frame.Ms - ms);
            one.Step(gap, frame);
            other.Save(saved);
            other = new MonitorSet(house, NameOf, new Log(moved)) { NowMs = ms };
            other.Load(saved);
            other.Step(gap, frame);
            ms = frame.Ms;
        }

        Assert.Equal(straight, moved);
        Assert.Equal(State(one), State(other));
    }, iter: 1_000);

    [Fact]
    public void Wild_traces_break_and_keep_every_rule()
    {
        // Otherwise the properties above would say little.
        var seen = new System.Collections.Concurrent.ConcurrentDictionary<(string, Judgement), bool>();
        _tales.Sample(tale =>
        {
            foreach (RuleVerdict v in Judge.Verdicts(tale.House, tale.Trace, NameOf))
                seen[(v.Rule, v.Judgement)] = true;
        }, iter: 2_000);
        foreach (Rule rule in RuleBook.Rules)
        {
            Assert.Contains((rule.Id, Judgement.Broken), seen.Keys);
            Assert.Contains((rule.Id, Judgement.Kept), seen.Keys);
        }
    }

    private static string NameOf(int zone) => $"zone {zone}";

    private static string Verdicts(Tale tale) => string.Join("\n", Judge.Verdicts(tale.House, tale.Trace, NameOf));

    private static Tale Spoilt(int seed, (int At, int What, int Zone)[] changes)
    {
        // Every third house has every contact, a clock that never fails, and only the frames that show something new.
        var house = new RandomHouse((3 * seed) + 2);
        // A frame repeated at its moment is no scan of a clock that stands still.
        house.Settings.StallScans = 1_000;
        List<Frame> frames = [.. house.Run(settings => new LibraryController(settings), 3_000).Frames];
        foreach ((int at, int what, int zone) in changes)
            frames[at % frames.Count] = Changed(frames[at % frames.Count], what, 1 << zone);
        return new Tale(house.Settings, new Trace(frames, [], frames[^1].Ms + 30_000));
    }

    private static Trace Written(int scene, int kept, (int Gap, int What, int Zone)[] changes)
    {
        TraceBuilder begun = scene switch
        {
            0 => Scene.KilnDay(),
            1 => Scene.LoftDay(),
            2 => Scene.LoftTrips(),
            3 => Scene.GlazeRuns(),
            4 => Scene.Handover(),
            5 => Scene.LoftIsLatched(),
            6 => Scene.LoftIsEarly(),
            7 => Scene.LockoutWhileRunning(),
            8 => Scene.PowerCutWhileRunning(),
            _ => Scene.Quiet(),
        };
        List<Frame> frames = [.. begun.Trace().Frames.Take(Math.Max(1, kept))];
        foreach ((int gap, int what, int zone) in changes)
        {
            Frame last = frames[^1];
            frames.Add(Changed(last with { Ms = last.Ms + _gaps[gap], PowerUp = false }, what, 1 << zone));
        }

        return new Trace(frames, [], frames[^1].Ms + 30_000);
    }

    private static Frame Changed(Frame f, int what, int bit) => what switch
    {
        0 or 1 or 2 => f with { Calls = f.Calls ^ bit },
        3 or 4 or 5 => f with { Calls = f.Calls ^ bit, Valves = f.Valves ^ bit },
        6 or 7 or 8 => f with { EndSwitches = f.EndSwitches ^ bit },
        9 or 10 or 11 => f with { Valves = f.Valves ^ bit },
        12 or 13 => f with { Valves = f.Valves | bit, EndSwitches = f.EndSwitches | bit },
        14 or 15 or 16 => f with { Pump = !f.Pump, Hold = HoldReason.None },
        17 or 18 => f with { Heat = !f.Heat },
        19 => f with { LateValves = f.LateValves ^ bit },
        20 => f with { LateValves = f.LateValves | bit, Valves = f.Valves & ~bit },
        21 => f with { LatchedValves = f.LatchedValves ^ bit },
        22 => f with { EarlySwitches = f.EarlySwitches ^ bit },
        23 => f with { Lockout = !f.Lockout },
        24 => f with { Unpowered = !f.Unpowered },
        25 or 26 => new Frame { Ms = f.Ms, PowerUp = true, Calls = f.Calls },
        27 => f with { Contacts = f.Contacts ^ (bit << 3) },
        28 => f with { Alarms = f.Alarms ^ bit },
        29 or 30 => f with { Alarms = f.Alarms ^ (bit << 5) },
        32 => f with { Contacts = f.Contacts ^ bit },
        33 => f with { Senses = f.Senses ^ bit },
        34 => f with { Hands = f.Hands ^ bit },
        35 => f with { StuckSwitches = f.StuckSwitches ^ bit },
        36 => f with { Contacts = f.Contacts ^ Contact.Supply },
        37 => f with { Pump = true },
        38 => f with { Valves = (1 << 5) - 1 },
        _ => f with { Hold = (HoldReason)((what + bit) % 14) },
    };

    /// <summary>The same trace with frames repeated at those moments, without the power-up mark, which is an event.</summary>
    private static Trace Split(Trace trace, IEnumerable<int> cuts)
    {
        var frames = trace.Frames.ToList();
        foreach (long ms in cuts.Select(cut => frames[0].Ms + cut).Where(ms => ms <= trace.EndMs))
        {
            int at = frames.FindLastIndex(f => f.Ms <= ms);
            frames.Insert(at + 1, frames[at] with { Ms = ms, PowerUp = false, NextDeadlineMs = ms + 5 });
        }

        return trace with { Frames = frames };
    }

    private static IEnumerable<int> EveryScan(Trace trace)
    {
        for (int ms = 0; ms <= trace.EndMs - trace.Frames[0].Ms; ms += 100)
            yield return ms;
    }

    private static int[] State(MonitorSet monitors)
    {
        int[] ints = new int[monitors.StateInts];
        monitors.Save(ints);
        return ints;
    }

    private sealed record Tale(ControllerSettings House, Trace Trace);

    private sealed class Log(List<string> lines) : IFindings
    {
        public void Occasion(string rule) => lines.Add(rule);

        public void Broken(string rule, long ms, string why) => lines.Add($"{rule} {ms} {why}");
    }
}
