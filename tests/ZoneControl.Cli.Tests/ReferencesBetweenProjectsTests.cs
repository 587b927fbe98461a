using System.Xml.Linq;

namespace ZoneControl.Cli.Tests;

/// <summary>Arrows point one way; this is the whole list of them.</summary>
public class ReferencesBetweenProjectsTests
{
    private static readonly Dictionary<string, string[]> _allowed = new()
    {
        ["ZoneControl.Logic"] = [],
        ["ZoneControl.Plant"] = [],
        ["ZoneControl.Board"] = ["ZoneControl.Logic"],
        ["System.Device.Gpio"] = [],
        ["nanoFramework.Hardware.Esp32"] = [],
        ["ZoneControl.Firmware"] = ["nanoFramework.Hardware.Esp32", "System.Device.Gpio", "ZoneControl.Board", "ZoneControl.Logic"],
        ["ZoneControl.Bench"] = ["ZoneControl.Board", "ZoneControl.Logic", "ZoneControl.Plant"],
        ["ZoneControl.Web"] = ["ZoneControl.Bench"],
        ["ZoneControl.Cli"] = ["ZoneControl.Web"],
    };

    /// <summary>What firmware and bench share, and the stand-ins, are tested with the firmware.</summary>
    private static readonly string[] _testedWithFirmware = ["ZoneControl.Board", "System.Device.Gpio", "nanoFramework.Hardware.Esp32"];

    public static TheoryData<string> SourceProjects => [.. ProjectFiles().Select(f => Path.GetFileNameWithoutExtension(f))];

    [Theory]
    [MemberData(nameof(SourceProjects))]
    public void A_project_references_only_those_below_it(string project)
    {
        string file = ProjectFiles().Single(f => Path.GetFileNameWithoutExtension(f) == project);

        Assert.True(_allowed.ContainsKey(project), $"{project} has no place in the list of allowed references yet.");
        Assert.Equal(_allowed[project].Order(), References(file).Order());
    }

    [Fact]
    public void Every_source_project_is_in_the_list_and_in_the_solution()
    {
        string solution = File.ReadAllText(Path.Combine(SourceTree.Root(), "ZoneControl.sln"));

        Assert.Equal(_allowed.Keys.Order(), ProjectFiles().Select(f => Path.GetFileNameWithoutExtension(f)!).Order());
        Assert.All(ProjectFiles(), file => Assert.Contains(Path.GetFileName(file), solution, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_source_project_has_a_test_project_that_references_it()
    {
        foreach (string project in _allowed.Keys.Except(_testedWithFirmware))
        {
            string file = Path.Combine(SourceTree.Root(), "tests", project + ".Tests", project + ".Tests.csproj");
            Assert.True(File.Exists(file), $"{project} has no test project.");
            Assert.Contains(project, References(file));
        }
    }

    private static IEnumerable<string> References(string projectFile) =>
        XDocument.Load(projectFile).Descendants("ProjectReference")
            .Where(r => r.Attribute("ReferenceOutputAssembly")?.Value != "false") // only built first
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')));

    private static string[] ProjectFiles() =>
        [.. new[] { "shared-logic", "firmware", "simulator" }
            .Select(folder => Path.Combine(SourceTree.Root(), folder))
            .Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*.csproj", SearchOption.AllDirectories))];
}
