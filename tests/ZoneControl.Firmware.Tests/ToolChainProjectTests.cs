using System.Xml.Linq;

namespace ZoneControl.Firmware.Tests;

/// <summary>What the board's tool chain opens compiles the files that are built and tested here, against the versions named here.</summary>
public class ToolChainProjectTests
{
    private static readonly string _folder = Path.Combine(Examples.Root, "firmware", "tool-chain");

    [Fact]
    public void It_compiles_the_same_files()
    {
        IEnumerable<string> built = ((string[])["../ZoneControl.Firmware", "../ZoneControl.Board", "../../shared-logic/ZoneControl.Logic"])
            .Select(folder => Path.GetFullPath(Path.Combine(_folder, folder)))
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories))
            .Where(file => !file.Split(Path.DirectorySeparatorChar).Intersect(["bin", "obj"]).Any());
        IEnumerable<string> listed = Elements("ZoneControl.Firmware.nfproj", "Compile")
            .Select(item => Path.GetFullPath(Path.Combine(_folder, item.Attribute("Include")!.Value.Replace('\\', '/'))));

        Assert.Equal(built.Order(), listed.Order());
    }

    [Fact]
    public void Package_versions_are_those_of_the_central_list_and_hint_paths_name_them()
    {
        Dictionary<string, string> central = XDocument.Load(Path.Combine(Examples.Root, "Directory.Packages.props")).Descendants("PackageVersion")
            .Where(item => item.Attribute("Include")!.Value.StartsWith("nanoFramework.", StringComparison.Ordinal))
            .ToDictionary(item => item.Attribute("Include")!.Value, item => item.Attribute("Version")!.Value);
        Dictionary<string, string> listed = Elements("packages.config", "package")
            .ToDictionary(item => item.Attribute("id")!.Value, item => item.Attribute("version")!.Value);
        IEnumerable<string> hinted = Elements("ZoneControl.Firmware.nfproj", "HintPath").Select(hint => hint.Value.Split('\\')[3]);

        Assert.Equal(central.OrderBy(pair => pair.Key), listed.OrderBy(pair => pair.Key));
        Assert.Equal(central.Select(pair => $"{pair.Key}.{pair.Value}").Order(), hinted.Order());
    }

    private static IEnumerable<XElement> Elements(string file, string name) =>
        XDocument.Load(Path.Combine(_folder, file)).Descendants().Where(element => element.Name.LocalName == name);
}
