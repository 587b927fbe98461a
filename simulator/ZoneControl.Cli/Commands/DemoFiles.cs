namespace ZoneControl.Cli.Commands;

/// <summary>The demo's house and script, which travel with the program.</summary>
/// <param name="House">Path of the house file.</param>
/// <param name="Script">Path of the script file.</param>
internal sealed record DemoFiles(string House, string Script)
{
    /// <summary>
    /// The folder with the examples to copy and change: that of a clone when the program runs from one, since a build's own
    /// copies are written over by the next build.
    /// </summary>
    public static string ToCopy()
    {
        for (string? folder = AppContext.BaseDirectory; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            string examples = Path.Combine(folder, "simulator", "examples");
            if (File.Exists(Path.Combine(examples, "pottery.house.toml")))
                return examples;
        }

        return Path.Combine(AppContext.BaseDirectory, "examples");
    }

    public static DemoFiles Find()
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "examples");
        var files = new DemoFiles(
            Path.Combine(folder, "pottery.house.toml"),
            Path.Combine(folder, "pottery-first-cold-morning.script.toml"));
        foreach (string file in (string[])[files.House, files.Script])
        {
            if (!File.Exists(file))
            {
                throw new BadInputException(
                    $"{file}: the demo's file is missing from the program's folder; build or install the program again.");
            }
        }

        return files;
    }
}
