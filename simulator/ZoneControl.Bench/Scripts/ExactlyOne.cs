using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Scripts;

/// <summary>Tables that must have exactly one of several keys.</summary>
internal static class ExactlyOne
{
    /// <summary>The one key that is there; null after noting that there is none, or a second one.</summary>
    public static string? Of(TableReader table, IReadOnlyList<string> keys, string what)
    {
        string[] found = [.. keys.Where(table.Has)];
        if (found.Length == 1)
            return found[0];
        string expected = $"exactly one {what}: {string.Join(", ", keys)}";
        if (found.Length > 1)
            table.Error(found[1], $"\"{found[0]}\" and \"{found[1]}\" together", expected);
        else if (!table.Mistakes.LostText)
            table.Mistakes.Error(table.Start, table.Path, $"no {what}", expected);
        return null;
    }
}
