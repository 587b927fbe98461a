using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>
/// Finds real moments for a run that was found with scaled times: the same moves in the same order, each at a moment that
/// stands to what happens by itself as it did there: at it, just before, just after, or between. Each try is judged with the
/// house's real filters and times; the first that breaks the rule is taken, and moves that it does not need are left out.
/// </summary>
internal sealed class Unfolding(ControllerSettings real, Func<IProvable> build, string rule, IReadOnlyList<ScaledTime> times)
{
    private const int MostTries = 3000;
    private const int MostChoices = 80;
    private const long LongestMs = 7L * 24 * 3600 * 1000;
    private int _tries;

    /// <summary>The moves with their moments, and when the rule is broken; null when none were found.</summary>
    /// <param name="run">The run with scaled times, one move a scan.</param>
    /// <param name="product">What it was found with: to see what happens by itself there.</param>
    public (IReadOnlyList<TimedMove> Moves, long BrokenMs)? Find(IReadOnlyList<Move> run, Product product)
    {
        _tries = 0;
        List<Step> steps = Steps(run, product);
        if (Place([], steps, 0) is not { } found)
            return null;
        return Shrink(found.Moves, found.BrokenMs);
    }

    private (IReadOnlyList<TimedMove> Moves, long BrokenMs)? Place(List<TimedMove> placed, List<Step> steps, int at)
    {
        if (++_tries > MostTries)
            return null;
        RealRun played = Play(placed, LongestMs);
        if (played.BrokenMs is { } broken)
            return ([.. placed.Where(timed => RealRun.EdgeMs(real, timed) <= broken)], broken);
        if (at == steps.Count)
            return null;
        foreach (long choice in Choices(placed, steps[at], played))
        {
            var more = new List<TimedMove>(placed) { new(steps[at].Move, choice) };
            if (Place(more, steps, at + 1) is { } found)
                return found;
            if (_tries > MostTries)
                return null;
        }

        return null;
    }

    private IEnumerable<long> Choices(List<TimedMove> placed, Step step, RealRun played)
    {
        if (step.Move.Kind == MoveKind.ExerciseDue)
            return played.ExerciseDueMs is { } due && due <= LongestMs ? [due] : [];
        int scan = real.ScanPeriodMs;
        long last = placed.Count > 0 ? placed[^1].AtMs : 0;
        List<long> moments = played.Moments;
        long At(int moment) => moment < 0 ? last : moment < moments.Count ? moments[moment] : last;
        var wanted = new List<long>();
        if (step.Moment >= 0 && step.Moment < moments.Count)
            wanted.Add(At(step.Moment) + (step.Beside * scan));
        if (step.Soon)
            wanted.Add(last + scan);
        foreach ((int moment, int ms, int beside) in step.TimesSince)
            wanted.Add(RealRun.OnGrid(real, At(moment) + ms) + (beside * scan));
        if (step.Between >= -1 && step.Between + 1 < moments.Count)
            wanted.Add(RealRun.OnGrid(real, (At(step.Between) + At(step.Between + 1)) / 2));
        wanted.Add(last + scan);
        foreach (long moment in moments.Take(MostChoices))
        {
            foreach ((int _, int ms, int beside) in step.TimesSince)
                wanted.Add(RealRun.OnGrid(real, moment + ms) + (beside * scan));
        }

        foreach (long moment in moments)
            wanted.AddRange([moment, moment + scan, moment - scan]);
        long least = Least(placed, step.Move, last);
        return wanted.Select(ms => Math.Max(ms, least)).Where(ms => ms < LongestMs).Distinct().Take(MostChoices);
    }

    // A contact must have been accepted before it can move again, and must stand for its debounce.
    private long Least(List<TimedMove> placed, Move move, long last)
    {
        long debounce = -RealRun.EdgeMs(real, new TimedMove(move, 0));
        long least = last + real.ScanPeriodMs;
        foreach (TimedMove timed in placed)
        {
            if (timed.Move == move)
                least = Math.Max(least, timed.AtMs + debounce + real.ScanPeriodMs);
        }

        return Math.Max(least, debounce + real.ScanPeriodMs);
    }

    private (IReadOnlyList<TimedMove> Moves, long BrokenMs) Shrink(IReadOnlyList<TimedMove> moves, long brokenMs)
    {
        for (int i = moves.Count - 1; i >= 0; i--)
        {
            List<TimedMove> fewer = [.. moves.Where((_, at) => at != i)];
            if (Play(fewer, brokenMs + real.ScanPeriodMs).BrokenMs is not { } broken)
                continue;
            moves = fewer;
            brokenMs = broken;
        }

        return (moves, brokenMs);
    }

    private RealRun Play(IReadOnlyList<TimedMove> moves, long untilMs)
    {
        var run = new RealRun(real, build(), rule);
        run.Play(moves, untilMs);
        return run;
    }

    /// <summary>Where each move of the scaled run stands to what would have happened by itself since the one before.</summary>
    private List<Step> Steps(IReadOnlyList<Move> run, Product product)
    {
        var steps = new List<Step>();
        product.Begin();
        var moments = Alone(product, run.Count + 1);
        int since = 0;
        foreach (Move move in run)
        {
            since++;
            product.Continue();
            product.Step(move);
            if (move.Kind == MoveKind.Wait)
                continue;
            int at = moments.IndexOf(since);
            int after = moments.IndexOf(since - 1);
            int before = moments.IndexOf(since + 1);
            (int moment, int beside) = at >= 0 ? (at, 0) : after >= 0 ? (after, 1) : (before, -1);
            steps.Add(new Step(move, moment, beside, since == 1, moments.FindLastIndex(m => m < since), TimesSince(moments, since)));
            int[] world = [.. product.WorldAfter], subject = [.. product.SubjectAfter], monitors = [.. product.MonitorsAfter];
            moments = Alone(product, run.Count + 1);
            world.CopyTo(product.WorldAfter, 0);
            subject.CopyTo(product.SubjectAfter, 0);
            monitors.CopyTo(product.MonitorsAfter, 0);
            since = 0;
        }

        return steps;
    }

    // A time of the house since the move before, or since something that happened by itself: right at its end or beside it.
    private List<(int Moment, int Ms, int Beside)> TimesSince(List<int> moments, int since)
    {
        var found = new List<(int, int, int)>();
        for (int moment = -1; moment < moments.Count && (moment < 0 || moments[moment] < since); moment++)
        {
            int passed = since - (moment < 0 ? 0 : moments[moment]);
            foreach (ScaledTime time in times.Where(t => t.Scans > 0).DistinctBy(t => t.Ms))
            {
                if (Math.Abs(passed - time.Scans) <= 1)
                    found.Add((moment, time.Ms, passed - time.Scans));
            }
        }

        return [.. found.OrderByDescending(t => t.Item1).Take(12)];
    }

    /// <summary>Scans from now on at which something changes though nothing moves.</summary>
    private static List<int> Alone(Product product, int scans)
    {
        int[] world = [.. product.WorldAfter], subject = [.. product.SubjectAfter], monitors = [.. product.MonitorsAfter];
        var moments = new List<int>();
        for (int scan = 1; scan <= scans + 1; scan++)
        {
            bool due = product.MonitorsWaitMs <= Scaling.ScanMs;
            Running.Frame before = product.Shown;
            product.Continue();
            product.Step(new Move(MoveKind.Wait));
            if (due || !product.Shown.ShowsTheSameAs(before))
                moments.Add(scan);
        }

        world.CopyTo(product.WorldAfter, 0);
        subject.CopyTo(product.SubjectAfter, 0);
        monitors.CopyTo(product.MonitorsAfter, 0);
        return moments;
    }

    private sealed record Step(
        Move Move, int Moment, int Beside, bool Soon, int Between, List<(int Moment, int Ms, int Beside)> TimesSince);
}
