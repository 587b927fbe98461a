using ZoneControl.Bench.Proving;

namespace ZoneControl.Proving.Tests;

/// <summary>A search that a limit ends says how far it came, and never "proven".</summary>
public class LimitTests
{
    [Fact]
    public void A_search_that_runs_out_of_states_says_explored()
    {
        ProofResult result = Prove(new ProveOptions { MaxStates = 500 });

        Assert.Equal((ProofVerdict.Explored, StopReason.States), (result.Verdict, result.Stopped));
        Assert.InRange(result.Depth, 1, 20);
    }

    [Fact]
    public void A_search_that_runs_out_of_memory_says_explored()
    {
        ProofResult result = Prove(new ProveOptions { MaxMemoryBytes = 1 << 20 });

        Assert.Equal((ProofVerdict.Explored, StopReason.Memory), (result.Verdict, result.Stopped));
    }

    [Fact]
    public void A_search_that_is_stopped_says_so()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        ProofResult result = Prover.Run(SmallHouses.Of("one"), new ProveOptions(), cancel: stop.Token);

        Assert.Equal((ProofVerdict.Explored, StopReason.Cancelled), (result.Verdict, result.Stopped));
    }

    [Fact]
    public void One_thread_and_two_visit_the_same_states()
    {
        ProofResult one = Prove(new ProveOptions { Workers = 1 });
        ProofResult two = Prove(new ProveOptions { Workers = 2 });

        Assert.Equal(one.Passes.Select(pass => (pass.States, pass.Transitions, pass.Depth)), two.Passes.Select(pass => (pass.States, pass.Transitions, pass.Depth)));
    }

    private static ProofResult Prove(ProveOptions options) =>
        Prover.Run(SmallHouses.Of("timed"), options, cancel: TestContext.Current.CancellationToken);
}
