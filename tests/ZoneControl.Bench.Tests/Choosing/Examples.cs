using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Tests.Choosing;

/// <summary>The example houses.</summary>
internal static class Examples
{
    public static IEnumerable<string> Names => ["pottery", "toolworks", "two-rooms", "retrofit"];

    public static string Folder { get; } = Path.Combine(Root(), "simulator", "examples");

    public static House House(string name)
    {
        HouseReading reading = HouseFile.Read(Path.Combine(Folder, name + ".house.toml"));
        Assert.DoesNotContain(reading.Mistakes, mistake => mistake.IsError);
        return reading.House!;
    }

    private static string Root()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder)!;
        return folder;
    }
}
