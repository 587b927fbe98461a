using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Running;
using ZoneControl.Plant.Benchmarks;

// `ratios` prints one table against the reference engine, `heat` those of the warm side and of seasons; everything else is
// BenchmarkDotNet's (`--filter '*'`).
if (args is ["ratios"])
{
    return EngineRatios.Print(Console.Out);
}

if (args is ["heat"])
{
    return HeatRatios.Print(Console.Out);
}

BenchmarkSwitcher.FromAssembly(typeof(EngineRatios).Assembly).Run(
    args, DefaultConfig.Instance.WithArtifactsPath(Path.Combine("artifacts", "benchmarks")));
return 0;
