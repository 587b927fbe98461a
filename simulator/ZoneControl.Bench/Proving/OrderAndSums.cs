namespace ZoneControl.Bench.Proving;

/// <summary>
/// Finds small whole numbers that keep the order of given ones and, as far as a largest number allows, the outcome of every
/// comparison of the sum of two with a third. The numbers themselves are a solution, so one exists; the smallest is not
/// looked for, a small one is.
/// </summary>
/// <param name="values">Rising and distinct; the first stays 1.</param>
/// <param name="most">The largest number to be used, unless the order alone needs more.</param>
/// <param name="roomBefore">Places of values that must lie one more than a scan above what lies that far below them.</param>
internal sealed class OrderAndSums(long[] values, int most, int[] roomBefore)
{
    private const int MostRounds = 500;
    private readonly List<Sum> _kept = [];
    private readonly List<Sum> _lost = [];

    /// <summary>Comparisons that come out as before.</summary>
    public int Kept => _kept.Count;

    /// <summary>Comparisons that do not.</summary>
    public IReadOnlyList<Sum> Lost => _lost;

    /// <summary>The numbers, in the order of the values.</summary>
    public int[] Solve()
    {
        int[] best = new int[values.Length];
        for (int i = 0; i < best.Length; i++)
            best[i] = i + 1;
        int cap = Math.Max(most, best[^1]);

        // Closeness costs little, distance much: each "shorter" may double what follows.
        // What must have room for two scans comes first.
        foreach (Sum sum in Sums().OrderBy(sum => sum.A == 0 && sum.Sign < 0 && roomBefore.Contains(sum.C) ? 0 : 1)
            .ThenBy(sum => sum.Sign < 0).ThenBy(sum => sum.C))
        {
            _kept.Add(sum);
            if (Holds(sum, best) || Relax((int[])best.Clone(), cap) is { } better && Take(ref best, better))
                continue;
            _kept.RemoveAt(_kept.Count - 1);
            _lost.Add(sum);
        }

        return best;
    }

    private static bool Take(ref int[] best, int[] better)
    {
        best = better;
        return true;
    }

    private IEnumerable<Sum> Sums()
    {
        for (int a = 0; a < values.Length; a++)
        {
            for (int b = a; b < values.Length; b++)
            {
                for (int c = b + 1; c < values.Length; c++)
                    yield return new Sum(a, b, c, Math.Sign(values[a] + values[b] - values[c]));
            }
        }
    }

    private int[]? Relax(int[] x, int cap)
    {
        for (int round = 0; round < MostRounds; round++)
        {
            bool changed = false;
            for (int i = 1; i < x.Length; i++)
                changed |= Raise(x, i, x[i - 1] + 1);
            foreach (Sum sum in _kept)
            {
                int left = x[sum.A] + x[sum.B];
                if (sum.Sign < 0)
                    changed |= Raise(x, sum.C, left + 1);
                else if (sum.Sign == 0 && left > x[sum.C])
                    changed |= Raise(x, sum.C, left);
                else if (left < x[sum.C] + sum.Sign)
                    changed |= RaiseSum(x, sum);
            }

            if (x[0] != 1 || x[^1] > cap)
                return null;
            if (!changed)
                return x;
        }

        return null;
    }

    // The larger of the two may grow, but the first, which is one scan.
    private static bool RaiseSum(int[] x, Sum sum)
    {
        int more = x[sum.C] + sum.Sign - x[sum.A] - x[sum.B];
        return Raise(x, sum.B, x[sum.B] + (sum.A == sum.B ? (more + 1) / 2 : more));
    }

    private static bool Raise(int[] x, int i, int least)
    {
        if (x[i] >= least)
            return false;
        x[i] = least;
        return true;
    }

    private static bool Holds(Sum sum, int[] x) => Math.Sign(x[sum.A] + x[sum.B] - x[sum.C]) == sum.Sign;

    /// <summary>The sum of two values compared with a third, by their places.</summary>
    internal readonly record struct Sum(int A, int B, int C, int Sign);
}
