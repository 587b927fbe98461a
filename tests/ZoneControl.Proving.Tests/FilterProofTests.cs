using ZoneControl.Bench.Proving;

namespace ZoneControl.Proving.Tests;

/// <summary>The debounce filter is proven by itself, and faults in it are seen there: rules judge accepted contacts only.</summary>
public class FilterProofTests
{
    [Fact]
    public void The_filter_accepts_what_has_stood_for_its_debounce_and_nothing_else()
    {
        FrontEnd filter = FilterProof.Run(settings => new LibrarySubject(settings));

        Assert.Null(filter.Fault);
        Assert.True(filter.States > 60, $"{filter.States} states are too few to be all of them");
    }

    [Theory]
    [InlineData("lost debounce", "            if (wait <= 0)", "            if (wait <= debounceMs[i])")]
    [InlineData("a scan too soon", "            if (wait <= 0)", "            if (wait <= dt)")]
    [InlineData("a scan too late", "            if (wait <= 0)", "            if (wait < 0)")]
    [InlineData("counts from the last change of mind", "(stood & bit) != 0 ? ages[i] + dt : 0", "ages[i] + dt")]
    public void A_fault_in_the_filter_is_seen(string name, string whole, string broken)
    {
        FrontEnd filter = FilterProof.Run(PlantedController.With("ContactFilter", whole, broken));

        Assert.True(filter.Fault is not null, name);
    }

    [Fact]
    public void A_proof_with_a_broken_filter_proves_nothing()
    {
        var build = PlantedController.With("ContactFilter", "            if (wait <= 0)", "            if (wait <= debounceMs[i])");
        ProofResult result = Prover.Run(SmallHouses.Of("timed"), new ProveOptions { Build = build }, cancel: TestContext.Current.CancellationToken);

        Assert.Equal(ProofVerdict.Broken, result.Verdict);
        Assert.Contains(result.FrontEnds, end => end.Fault is not null);
    }
}
