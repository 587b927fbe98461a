using Spectre.Console;
using ZoneControl.Cli.Commands;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>The end of the demo: what to try, and what this is not.</summary>
internal static class NextSteps
{
    public static void Write(IAnsiConsole console, DemoFiles files)
    {
        Screen.Heading(console, "Where to look next");
        Step(console, "zonecontrol --report morning.html", "the same with pictures, in any browser");
        Step(console, "zonecontrol --trace morning.csv", "everything recorded, for a spreadsheet");
        Step(console, "zonecontrol --controller straight", "the verdict on the plain wiring");
        Step(console, "zonecontrol run HOUSE SCRIPT", "your own house and script");
        Step(console, "zonecontrol --help", "everything it takes");
        console.WriteLine();
        Screen.Say(console, "The demo's house and script, to copy and change, are in the folder");
        // The path stands unwrapped, so that it can be copied whole.
        console.Profile.Out.Writer.WriteLine($"  {Shorter(DemoFiles.ToCopy())}");
        foreach (string file in (string[])[files.House, files.Script])
            console.Profile.Out.Writer.WriteLine($"    {Path.GetFileName(file)}");
        Screen.Say(console, "In a clone, 'dotnet run --project simulator/ZoneControl.Cli --' stands for zonecontrol.");
        Screen.Heading(console, "Caution");
        Screen.Say(console, Sayings.Supervisory);
        Screen.Say(console, Sayings.Wiring);
        Screen.Say(console, Sayings.Model);
    }

    /// <summary>The path from where the person stands, when that is shorter.</summary>
    private static string Shorter(string path)
    {
        string relative = Path.GetRelativePath(Environment.CurrentDirectory, path);
        return relative.Length < path.Length ? relative : path;
    }

    private static void Step(IAnsiConsole console, string command, string what)
    {
        console.Write(new Text($"  {command,-36}", new Style(decoration: Decoration.Bold)));
        console.Write(new Text(what + "\n"));
    }
}
