using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>A controller that takes over a saved state behaves ever after as the one that saved it.</summary>
public class SaveLoadTests
{
    [Fact]
    public void A_loaded_controller_behaves_as_the_saved_one() =>
        Gen.Select(RandomRun.Any, Gen.Int[0, 59]).Sample(
            (run, at) => Verdict.IsClean(Difference(run, at % run.Moments.Length)),
            iter: 3000,
            print: c => $"{c.Item1}\nsaved at moment {c.Item2}");

    [Fact]
    public void Every_saved_number_matters_somewhere()
    {
        // A number that could be dropped unnoticed would be no part of the state. Zeroes stand in for what is dropped.
        ControllerSettings settings = House.OfZones(2).Minimum(2).Switched(0, 1).With(s =>
        {
            s.CallDebounceMs = s.SwitchDebounceMs = s.SeasonDebounceMs = 2 * House.Scan;
            for (int zone = 0; zone < 2; zone++)
                (s.OpeningMs[zone], s.SwitchLimitMs[zone], s.ClosingMs[zone]) = (500, 900, 400); // late often
        }).Settings();
        int length = new ZoneController(settings).StateLength;
        var found = new bool[length];
        RandomRun.AnyMoments.Sample(
            moments =>
            {
                var run = new RandomRun(settings, moments);
                for (int drop = 0; drop < length && !found.All(f => f); drop++)
                {
                    if (!found[drop] && Difference(run, moments.Length / 2, drop) != null)
                        found[drop] = true;
                }
            },
            iter: 10_000); // most find nothing left to do
        Assert.Equal([], Enumerable.Range(0, length).Where(i => !found[i]));
    }

    [Fact]
    public void Saving_twice_writes_the_same_and_disturbs_nothing()
    {
        Rig rig = Rig.InSeason(House.OfZones(2).Minimum(2)).Call(0).RunFor(700);
        int[] once = rig.State;

        Assert.Equal(once, rig.State);
        Assert.Equal(House.Opening - 700 + House.Scan, rig.RunUntil(o => o.Pump, 5000));
    }

    /// <summary>The first difference after a load before one of the moments, or null; one saved number may be dropped on the way.</summary>
    private static string? Difference(RandomRun run, int loadAt, int drop = -1)
    {
        ControllerSettings s = run.Settings;
        var original = new ZoneController(s);
        var loaded = new ZoneController(s);
        bool follows = false;
        var contacts = new InputImage();
        var expected = new OutputImage();
        var actual = new OutputImage();
        int[] state = new int[original.StateLength];
        long now = 1000;

        // The second board's clock shows another time.
        const long Ahead = 123_456_789_000;
        for (int m = 0; m < run.Moments.Length; m++)
        {
            if (m == loadAt)
            {
                original.Save(state);
                if (drop >= 0 && state[drop] == 0)
                    return null;
                if (drop >= 0)
                    state[drop] = 0;
                loaded.Load(state, now - s.ScanPeriodMs + Ahead);
                follows = true;
            }

            run.Apply(run.Moments[m], contacts, expected.Valves);
            for (int i = 0; i < run.Moments[m].Scans; i++, now += s.ScanPeriodMs)
            {
                original.Scan(now, contacts, expected);
                if (!follows)
                    continue;
                loaded.Scan(now + Ahead, contacts, actual);
                if (Published.Of(expected) != Published.Of(actual))
                    return $"at {now} the loaded one shows {Published.Of(actual)}, not {Published.Of(expected)}";
            }
        }

        if (!follows)
            return null;
        original.Save(state);
        int[] other = new int[state.Length];
        loaded.Save(other);
        return state.AsSpan().SequenceEqual(other) ? null : $"{string.Join(' ', other)} is not {string.Join(' ', state)}";
    }
}
