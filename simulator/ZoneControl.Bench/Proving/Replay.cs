using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>Turns a run that was found with scaled times into a script that breaks the same rule on the bench.</summary>
internal static class Replay
{
    /// <summary>The run of the script, judged; null when no script breaks the rule there.</summary>
    public static Run? Of(
        House house, ControllerSettings real, Func<ControllerSettings, IProvable> build, ProductPlan plan,
        IReadOnlyList<ScaledTime> times, IReadOnlyList<Move> moves, string rule, string why, CancellationToken cancel)
    {
        var unfolding = new Unfolding(real, () => build(Scaling.Copy(real)), rule, times);
        if (unfolding.Find(moves, new Product(plan)) is not { } found)
            return null;
        string title = $"{rule} broken";
        string text = $"Found by prove: {why}. With the times of the house: at {Durations.InWords(found.BrokenMs)}.";

        // A run in which switches are sound teaches more; often it takes no lying switch.
        foreach (bool healthy in (bool[])[true, false])
        {
            Script script = ReplayScript.Of(house, real, found.Moves, found.BrokenMs, title, text, healthy);
            Run run = Runner.Run(house, script, settings => build(settings), cancel: cancel);
            if (run.Rules.Any(verdict => verdict.Rule == rule && verdict.Judgement == Judgement.Broken))
                return run;
        }

        return null;
    }
}
