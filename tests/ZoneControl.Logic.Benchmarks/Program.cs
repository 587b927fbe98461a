using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Running;
using ZoneControl.Logic.Benchmarks;

// `instructions` prints what a scan takes on a board that interprets; everything else is BenchmarkDotNet's (`--filter '*'`).
if (args is ["instructions"])
{
    InstructionTable.Print(Console.Out);
    return;
}

BenchmarkSwitcher.FromAssembly(typeof(ScanCosts).Assembly).Run(
    args, DefaultConfig.Instance.WithArtifactsPath(Path.Combine("artifacts", "benchmarks")));
