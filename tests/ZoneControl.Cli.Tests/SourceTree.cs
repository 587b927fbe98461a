namespace ZoneControl.Cli.Tests;

/// <summary>The source tree that the tests run from.</summary>
internal static class SourceTree
{
    /// <summary>Its top folder.</summary>
    public static string Root()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The tests do not run from inside the source tree.");
    }
}
