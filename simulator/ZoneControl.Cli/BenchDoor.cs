using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Cli;

/// <summary>The one place where the command line meets the bench.</summary>
internal static class BenchDoor
{
    public static IReadOnlyList<Rule> Rules => [];

    public static Run Run(House house, Script script, string controller, CancellationToken cancel) => throw new NotImplementedException();
}
