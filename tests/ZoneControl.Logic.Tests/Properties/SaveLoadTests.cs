using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>A controller that takes over a saved state behaves ever after as the one that saved it.</summary>
public class SaveLoadTests
{
    [Fact]
    public void A_loaded_controller_behaves_as_the_saved_one() =>
        Gen.Select(RandomRun.Any, Gen.Int[0, 59]).Sample(
            (run, at) => Verdict.IsClean(Difference(run, at % run.Moments.Length, (_, state) => state)),
            iter: 3000,
            print: c => $"{c.Item1}\nsaved at moment {c.Item2}");

    [Fact]
    public void Every_saved_number_matters_somewhere()
    {
        // A number that could be dropped unnoticed would be no part of the state. Zeroes stand in for what is dropped.
        ControllerSettings settings = House.OfZones(2).Minimum(2).Switched(0, 1).With(s =>
        {
            s.CallDebounceMs = s.SwitchDebounceMs = s.SeasonDebounceMs = 2 * House.Scan;
        }).Settings();
        int length = new ZoneController(settings).StateLength;
        var found = new bool[length];
        RandomRun.Any.Sample(
            run =>
            {
                var scaled = new RandomRun(settings, run.Moments);
                for (int drop = 0; drop < length; drop++)
                {
                    int dropped = drop;
                    if (!found[drop] && Difference(scaled, run.Moments.Length / 2, (i, value) => i == dropped ? 0 : value) != null)
                        found[drop] = true;
                }
            },
            iter: 3000);
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

    /// <summary>The first difference after a load before one of the moments, or null. The change is made to each saved number.</summary>
    private static string? Difference(RandomRun run, int loadAt, Func<int, int, int> change)
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
                loaded.Load(state.Select((value, i) => change(i, value)).ToArray(), now - s.ScanPeriodMs + Ahead);
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
