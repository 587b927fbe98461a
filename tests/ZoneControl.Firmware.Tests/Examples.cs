using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Firmware.Tests;

/// <summary>The example houses and scripts, found by their names: a script belongs to the house whose name it begins with.</summary>
internal static class Examples
{
    /// <summary>The source tree.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The examples' folder.</summary>
    public static string Folder { get; } = Path.Combine(Root, "simulator", "examples");

    /// <summary>Names of the houses.</summary>
    public static IEnumerable<string> Houses =>
        Directory.GetFiles(Folder, "*.house.toml").Select(path => Path.GetFileName(path)[..^".house.toml".Length]).Order();

    /// <summary>Names of the scripts.</summary>
    public static IEnumerable<string> Scripts =>
        Directory.GetFiles(Folder, "*.script.toml").Select(path => Path.GetFileName(path)[..^".script.toml".Length]).Order();

    /// <summary>A house.</summary>
    public static House House(string name) => Good(HouseFile.Read(Path.Combine(Folder, name + ".house.toml")));

    /// <summary>A script with its house.</summary>
    public static (House House, Script Script) Script(string name)
    {
        House house = House(Houses.Single(candidate => name.StartsWith(candidate + "-", StringComparison.Ordinal)));
        ScriptReading reading = ScriptFile.Read(Path.Combine(Folder, name + ".script.toml"), house);
        Assert.Empty(reading.Mistakes);
        return (house, reading.Script!);
    }

    /// <summary>An example house with text added to its file.</summary>
    public static HouseReading WithBoard(string name, string board) =>
        HouseFile.Parse(File.ReadAllText(Path.Combine(Folder, name + ".house.toml")) + "\n" + board, name + ".house.toml");

    private static House Good(HouseReading reading)
    {
        Assert.Empty(reading.Mistakes);
        return reading.House!;
    }

    private static string FindRoot()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder)!;
        return folder;
    }
}
