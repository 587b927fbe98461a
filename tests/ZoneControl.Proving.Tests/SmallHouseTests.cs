using ZoneControl.Bench.Proving;

namespace ZoneControl.Proving.Tests;

/// <summary>The whole controller keeps every rule in every reachable state of small houses.</summary>
public class SmallHouseTests
{
    public static TheoryData<string> Houses =>
        ["one", "timed", "two", "companion", "starts", "flow", "limit", "freeze", "priority", "supply", "stagger", "service", "gate", "exercise"];

    [Theory]
    [MemberData(nameof(Houses))]
    public void A_small_house_is_proven_whole(string name)
    {
        ProofResult result = Prover.Run(SmallHouses.Of(name), new ProveOptions(), cancel: TestContext.Current.CancellationToken);

        Assert.True(result.Verdict == ProofVerdict.Proven,
            $"{result.Verdict} {result.Rule}: {result.Why}\n{string.Join(' ', result.ScaledRun.Select(move => $"{move.Kind}{move.Number}"))}");
    }
}
