using System.Text;
using System.Text.RegularExpressions;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Cli.Tests;

/// <summary>Where each rule is implemented, monitored, tested and called upon, read off the sources and off runs of the examples.</summary>
internal sealed partial class RuleEvidence(string root)
{
    public IReadOnlyList<RuleRow> Rows()
    {
        // Settings, images and tables of words name rules too, but keep none.
        string[] logic = [.. Files("shared-logic", "*.cs").Where(file => Mechanism().IsMatch(File.ReadAllText(file)))];
        string[] monitors = Files("simulator/ZoneControl.Bench/Rules/Monitors", "*.cs");
        string[] logicTests = Files("tests/ZoneControl.Logic.Tests", "*.cs");
        string[] monitorTests = Files("tests/ZoneControl.Bench.Tests/Rules", "*.cs");
        string[] planted = File.ReadAllLines(Path.Combine(root, "tests", "ZoneControl.Proving.Tests", "PlantedFaults.cs"));
        ILookup<string, string> scripts = CalledUpon();
        return
        [
            .. RuleBook.Rules.Select(rule => new RuleRow(
                rule.Id,
                Naming(logic, rule.Id, line => line.StartsWith("///", StringComparison.Ordinal)),
                [.. monitors.Select(file => Path.GetFileNameWithoutExtension(file)!).Where(name => name == Pascal(rule.Id))],
                [
                    .. Naming(logicTests, rule.Id, line => line.StartsWith("[Trait(\"Rule\"", StringComparison.Ordinal)),
                    .. Naming(monitorTests, rule.Id, _ => true).Select(name => "monitor " + name),
                ],
                [.. planted.Where(line => line.Contains($"\", \"{rule.Id}\", \"", StringComparison.Ordinal)).Select(line => line.Split('"')[1])],
                [.. scripts[rule.Id].Order()])),
        ];
    }

    public static string Table(IEnumerable<RuleRow> rows)
    {
        var text = new StringBuilder();
        text.AppendLine("| rule | kept by | monitored by | tested by | proof finds the fault | called upon by |");
        text.AppendLine("| --- | --- | --- | --- | --- | --- |");
        foreach (RuleRow row in rows)
            text.AppendLine($"| {row.Rule} | {In(row.KeptBy)} | {In(row.MonitoredBy)} | {In(row.TestedBy)} | {In(row.FoundByProof)} | {In(row.CalledUponBy)} |");
        return text.ToString().ReplaceLineEndings("\n");
    }

    private static string In(IEnumerable<string> names) => string.Join(", ", names);

    private string[] Files(string folder, string pattern) =>
        [.. Directory.EnumerateFiles(Path.Combine(root, folder), pattern, SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)];

    private static IReadOnlyList<string> Naming(IEnumerable<string> files, string rule, Func<string, bool> counts) =>
        [.. files.Where(file => File.ReadLines(file).Any(line => counts(line.TrimStart()) && Names(line, rule)))
            .Select(file => Path.GetFileNameWithoutExtension(file)!)];

    /// <summary>PUMP-FLOW is not named by PUMP-FLOW-SOMETHING, nor HEAT-LIMIT by a longer word.</summary>
    private static bool Names(string line, string rule) => Regex.IsMatch(line, $@"(?<![A-Z-]){rule}(?![A-Z-])");

    /// <summary>A monitor's class is named after its rule: "PUMP-PROOF", "PumpProof".</summary>
    private static string Pascal(string rule) =>
        string.Concat(rule.Split('-').Select(word => word[..1] + word[1..].ToLowerInvariant()));

    [GeneratedRegex("internal static class|class ZoneController")]
    private static partial Regex Mechanism();

    /// <summary>Rules that an example script gives something to judge, by running them all.</summary>
    private ILookup<string, string> CalledUpon()
    {
        string folder = Path.Combine(root, "simulator", "examples");
        var found = new List<(string Rule, string Script)>();
        foreach (string houseFile in Directory.EnumerateFiles(folder, "*.house.toml").Order(StringComparer.Ordinal))
        {
            House house = HouseFile.Read(houseFile).House!;
            string stem = Path.GetFileName(houseFile).Replace(".house.toml", "", StringComparison.Ordinal);
            foreach (string scriptFile in Directory.EnumerateFiles(folder, stem + "-*.script.toml"))
            {
                Script script = ScriptFile.Read(scriptFile, house).Script!;
                Run run = Runner.Run(house, script, settings => new LibraryController(settings));
                string name = Path.GetFileName(scriptFile).Replace(".script.toml", "", StringComparison.Ordinal);
                found.AddRange(run.Rules.Where(rule => rule.Judgement == Judgement.Kept).Select(rule => (rule.Rule, name)));
            }
        }

        return found.ToLookup(pair => pair.Rule, pair => pair.Script);
    }
}

/// <summary>One rule's evidence: names of files, without folders and endings.</summary>
internal sealed record RuleRow(
    string Rule,
    IReadOnlyList<string> KeptBy,
    IReadOnlyList<string> MonitoredBy,
    IReadOnlyList<string> TestedBy,
    IReadOnlyList<string> FoundByProof,
    IReadOnlyList<string> CalledUponBy);
