using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Web.Tests.Live;

/// <summary>The examples that ship, read from the source tree.</summary>
internal static class Examples
{
    public static string Root { get; } = Find();

    public static string Folder { get; } = Path.Combine(Root, "simulator", "examples");

    public static House Pottery { get; } = House("pottery");

    public static House Toolworks { get; } = House("toolworks");

    public static House House(string name) => HouseFile.Read(Path.Combine(Folder, $"{name}.house.toml")).House!;

    public static Script Script(string name, House house) => ScriptFile.Read(Path.Combine(Folder, $"{name}.script.toml"), house).Script!;

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The tests do not lie in the source tree.");
    }
}
