namespace ZoneControl.Cli.Commands;

/// <summary>A result must not replace what it was made from, nor another result.</summary>
internal static class ResultPaths
{
    /// <summary>Refuses results that are something else as well.</summary>
    /// <exception cref="BadInputException">Two are one; the message names both.</exception>
    public static void Check(IReadOnlyList<(string What, string? Path)> inputs, IReadOnlyList<(string What, string? Path)> results)
    {
        for (int i = 0; i < results.Count; i++)
        {
            foreach ((string what, string? path) in inputs.Concat(results.Take(i)))
            {
                if (Same(results[i].Path, path))
                    throw new BadInputException($"{results[i].What} {results[i].Path}: is also {what}; choose another name.");
            }
        }
    }

    private static bool Same(string? a, string? b) =>
        !string.IsNullOrWhiteSpace(a) && !string.IsNullOrWhiteSpace(b) &&
        string.Equals(Path.GetFullPath(a), Path.GetFullPath(b),
            OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal);
}
