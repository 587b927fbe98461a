namespace ZoneControl.Cli.Tests;

/// <summary>
/// Every rule of the rule book is kept by code that names it, watched by a monitor, tested, and called upon by an example
/// script. The table is made from the sources: `WRITE_EVIDENCE=1 dotnet test --project tests/ZoneControl.Cli.Tests` writes it
/// anew. Its proof column names the faults, planted in the controller's sources, that a proof of that rule finds.
/// </summary>
public class RuleEvidenceTests
{
    private const string TableFile = "tests/rule-evidence.md";

    private const string Head = "# Rule evidence\n\nMade by `RuleEvidenceTests` from the sources and from runs of the examples. Do not edit.\n\n";

    private static readonly IReadOnlyList<RuleRow> _rows = new RuleEvidence(SourceTree.Root()).Rows();

    public static TheoryData<string> Rules => [.. _rows.Select(row => row.Rule)];

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_has_an_implementation_a_monitor_tests_and_an_example(string rule)
    {
        RuleRow row = _rows.Single(r => r.Rule == rule);

        Assert.True(row.KeptBy.Count > 0, $"no file of shared-logic names {rule}");
        Assert.True(row.MonitoredBy.Count > 0, $"no monitor names {rule}");
        Assert.True(row.TestedBy.Count > 0, $"no test names {rule}");
        Assert.True(row.FoundByProof.Count > 0, $"no planted fault breaks {rule} in a proof");
        Assert.True(row.CalledUponBy.Count > 0, $"no script in simulator/examples calls upon {rule}");
    }

    [Fact]
    public void The_table_in_the_tree_is_the_one_that_the_sources_give()
    {
        string path = Path.Combine(SourceTree.Root(), TableFile);
        string table = Head + RuleEvidence.Table(_rows);
        if (Environment.GetEnvironmentVariable("WRITE_EVIDENCE") == "1")
            File.WriteAllText(path, table);

        Assert.Equal(table, File.ReadAllText(path));
    }
}
