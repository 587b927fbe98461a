namespace ZoneControl.Bench.Files;

/// <summary>Finds the known word that somebody may have meant.</summary>
public static class NearestWord
{
    /// <summary>
    /// The known word with the fewest edits, or null when none is near: at most one edit for each three letters, and one
    /// at least. Of two as near, the one that begins alike for longer.
    /// </summary>
    public static string? Find(string word, IEnumerable<string> known)
    {
        string? best = null;
        int bestEdits = Math.Max(1, word.Length / 3) + 1;
        foreach (string candidate in known)
        {
            // Edits are at least the difference in length, so a hopeless candidate need not be measured.
            if (Math.Abs(candidate.Length - word.Length) > bestEdits)
                continue;
            int edits = Edits(word, candidate);
            bool tied = best is not null && edits == bestEdits && BeginAlike(word, candidate) > BeginAlike(word, best);
            if (edits < bestEdits || tied)
                (best, bestEdits) = (candidate, edits);
        }

        return best;
    }

    private static int BeginAlike(string left, string right) =>
        left.Zip(right).TakeWhile(pair => char.ToUpperInvariant(pair.First) == char.ToUpperInvariant(pair.Second)).Count();

    /// <summary>
    /// Least number of letters to insert, delete, change or swap with their neighbour to make one word the other, case
    /// apart (the restricted Damerau-Levenshtein distance).
    /// </summary>
    public static int Edits(string left, string right)
    {
        string a = left.ToUpperInvariant();
        string b = right.ToUpperInvariant();
        int[] beforeLast = new int[b.Length + 1];
        int[] last = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            int[] row = new int[b.Length + 1];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[j] = Math.Min(change, Math.Min(last[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
            }

            (beforeLast, last) = (last, row);
        }

        return last[b.Length];
    }
}
