using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Proving.Tests;

/// <summary>Every planted fault is found, and the script that shows it fails on the bench with the house's filters and times.</summary>
public class PlantedFaultTests
{
    public static TheoryData<string> Names => [.. PlantedFaults.All.Select(fault => fault.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_planted_fault_is_found_with_a_script_that_fails_on_the_bench(string name)
    {
        PlantedFault fault = PlantedFaults.All.Single(planted => planted.Name == name);
        House house = SmallHouses.Of(fault.House);
        Func<ControllerSettings, IProvable> build = PlantedController.With(fault.File, fault.Whole, fault.Broken);
        ProofResult result = Prover.Run(
            house,
            new ProveOptions
            {
                Build = build,
                Rules = new HashSet<string> { fault.Rule },
                MaxTime = TimeSpan.FromMinutes(2),
                MostScans = fault.House == "starts" ? 40 : 1, // shows only where sums of times are kept as well
            },
            cancel: TestContext.Current.CancellationToken);

        Assert.Equal(ProofVerdict.Broken, result.Verdict);
        Assert.Equal(fault.Rule, result.Rule);
        Assert.True(result.Replay is not null, $"{result.Why}: {string.Join(' ', result.ScaledRun.Select(move => $"{move.Kind}{move.Number}"))}");

        // As a file, read back: it fails with the fault and passes without.
        ScriptReading reading = ScriptFile.Parse(ScriptWriter.Write(result.Replay!.Script, house), "found.script.toml", house);
        Assert.True(reading.Script is not null, string.Join('\n', reading.Mistakes));
        Assert.Contains(fault.Rule, Broken(house, reading.Script!, build));
        Assert.DoesNotContain(fault.Rule, Broken(house, reading.Script!, settings => new LibraryController(settings)));
    }

    [Fact]
    public void Every_rule_of_the_book_has_a_planted_fault()
    {
        Assert.Equal(
            RuleBook.Rules.Select(rule => rule.Id).Order(),
            PlantedFaults.All.Select(fault => fault.Rule).Distinct().Order());
        Assert.True(PlantedFaults.All.Count >= 30);
    }

    private static IEnumerable<string> Broken(House house, Script script, Func<ControllerSettings, IController> build) =>
        Runner.Run(house, script, build, cancel: TestContext.Current.CancellationToken)
            .Rules.Where(verdict => verdict.Judgement == Judgement.Broken).Select(verdict => verdict.Rule);
}
