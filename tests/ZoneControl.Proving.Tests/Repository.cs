namespace ZoneControl.Proving.Tests;

/// <summary>Where the sources are.</summary>
internal static class Repository
{
    /// <summary>The folder that the solution stands in.</summary>
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ZoneControl.sln")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException("no folder above the tests holds ZoneControl.sln");
    }
}
