using ZoneControl.Bench.Proving;
using ZoneControl.Logic;

namespace ZoneControl.Proving.Tests;

/// <summary>
/// The prover and an independent checker (spin, on a model written by hand) agree about a small house, whole and with
/// protections taken away. What spin said is in tests/reference/spin/verdicts.txt; its README says how it was made.
/// </summary>
public class IndependentModelTests
{
    private static readonly (string, string) _noProof =
        ("bool proven = x.ProvenCapacity >= s.MinimumOpen;", "bool proven = true;");

    private static readonly (string, string) _noDelay = ("x.Service ? 0 : s.PumpStartDelayMs - x.DemandAgeMs", "0");

    [Theory]
    [InlineData("whole")]
    [InlineData("without-proof")]
    [InlineData("without-delay")]
    [InlineData("without-proof-and-delay")]
    public void Prover_and_checker_agree(string variant)
    {
        (string, string)[] places = variant switch
        {
            "without-proof" => [_noProof],
            "without-delay" => [_noDelay],
            "without-proof-and-delay" => [_noProof, _noDelay],
            _ => [],
        };
        var options = new ProveOptions
        {
            Build = PlantedController.With("PumpSequence", places),
            Rules = new HashSet<string> { "PUMP-PROOF", "PUMP-DELAY", "HEAT-FLOW" },
            Except = new HashSet<MoveKind> { MoveKind.Power, MoveKind.ClockBack },
        };
        ProofResult result = Prover.Run(SmallHouses.Of("three"), options, cancel: TestContext.Current.CancellationToken);

        Assert.Equal(Said(variant), result.Verdict == ProofVerdict.Proven ? "proven" : "broken");
        Assert.NotEqual(ProofVerdict.Explored, result.Verdict);
    }

    [Fact]
    public void The_model_has_the_scaled_times_of_the_house()
    {
        string model = File.ReadAllText(Path.Combine(Repository.Root, "tests", "reference", "spin", "three-rooms.pml"));
        ProofResult result = Prover.Run(
            SmallHouses.Of("three"), new ProveOptions { MaxStates = 10 }, cancel: TestContext.Current.CancellationToken);
        ControllerSettings scaled = result.Scaling.Settings;
        (string Name, int Ms)[] times =
        [
            ("OPENING", scaled.OpeningMs[0]), ("DELAY", scaled.PumpStartDelayMs), ("OVERRUN", scaled.PumpOverrunMs),
            ("RUNDOWN", scaled.PumpRundownMs), ("REST", scaled.PumpMinOffMs), ("LEAD", scaled.HeatLeadMs),
        ];

        Assert.All(times, time => Assert.Contains($"#define {time.Name} {time.Ms / scaled.ScanPeriodMs}\n", model, StringComparison.Ordinal));
    }

    private static string Said(string variant) =>
        File.ReadLines(Path.Combine(Repository.Root, "tests", "reference", "spin", "verdicts.txt"))
            .Select(line => line.Split(' ')).First(words => words[0] == variant)[1];
}
