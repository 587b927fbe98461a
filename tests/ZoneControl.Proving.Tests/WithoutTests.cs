using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Rules;

namespace ZoneControl.Proving.Tests;

/// <summary>With a protection taken away a rule breaks, by a short script that fails on the bench as well.</summary>
public class WithoutTests
{
    [Theory]
    [InlineData(Protection.Proof, "slow", "PUMP-PROOF")]
    [InlineData(Protection.Companion, "companion", "PUMP-PROOF")]
    [InlineData(Protection.Handover, "two", "OPEN-HANDOVER")]
    [InlineData(Protection.Delay, "one", "PUMP-DELAY")]
    public void Without_a_protection_there_is_a_short_way_to_harm(Protection without, string house, string rule)
    {
        var options = new ProveOptions { Without = without, Rules = new HashSet<string> { rule } };
        ProofResult result = Prover.Run(SmallHouses.Of(house), options, cancel: TestContext.Current.CancellationToken);

        Assert.Equal(ProofVerdict.Broken, result.Verdict);
        Assert.Equal(rule, result.Rule);
        Assert.True(result.Replay is not null, result.Why);
        Assert.Contains(result.Replay!.Rules, verdict => verdict.Rule == rule && verdict.Judgement == Judgement.Broken);
    }
}
