using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Winters;

/// <summary>One season of a batch.</summary>
/// <param name="House">The house.</param>
/// <param name="Weather">The weather; made when its turn comes.</param>
/// <param name="Build">Builds what drives it; called on any thread.</param>
/// <param name="Options">Length and manner; null for 210 days.</param>
public sealed record SeasonJob(
    House House, Func<Weather> Weather, Func<ControllerSettings, IController> Build, SeasonOptions? Options = null);

/// <summary>Runs many seasons on all cores. Each is worked out by itself, so results do not depend on how many cores there are.</summary>
public static class SeasonBatch
{
    /// <summary>Runs them all.</summary>
    /// <param name="jobs">The seasons.</param>
    /// <param name="progress">Told the share that is done, 0 to 1, as each season ends.</param>
    /// <param name="cores">Cores to use; 0 for all.</param>
    /// <param name="cancel">Stops it within a simulated hour of each.</param>
    /// <returns>Results in the order of the jobs.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IReadOnlyList<SeasonResult> Run(
        IReadOnlyList<SeasonJob> jobs, IProgress<double>? progress = null, int cores = 0, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        var results = new SeasonResult[jobs.Count];
        int done = 0;
        var how = new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = cores > 0 ? cores : Environment.ProcessorCount };
        Parallel.For(0, jobs.Count, how, i =>
        {
            SeasonJob job = jobs[i];
            results[i] = SeasonRunner.Run(job.House, job.Weather(), job.Build, job.Options, cancel: cancel);
            progress?.Report((double)Interlocked.Increment(ref done) / jobs.Count);
        });
        return results;
    }
}
