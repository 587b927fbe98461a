using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Cli;

/// <summary>Runs a script with a controller that the person named.</summary>
internal static class BenchDoor
{
    /// <summary>The name of the compiled controller of shared-logic.</summary>
    public const string Library = "library";

    /// <summary>The name of the pump wired straight to the calls.</summary>
    public const string Straight = "straight";

    /// <summary>The name of the compiled firmware on virtual pins.</summary>
    public const string Firmware = "firmware";

    /// <summary>The names, the one whose verdict counts first.</summary>
    public static IReadOnlyList<string> Controllers { get; } = [Library, Firmware, Straight];

    /// <summary>Those that run when nobody names any.</summary>
    public static IReadOnlyList<string> Usual { get; } = [Library, Straight];

    /// <summary>Runs and judges.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Run Run(
        House house, Script script, string controller, IProgress<double>? progress, CancellationToken cancel, VirtualBench? board = null) => controller switch
    {
        Library => Runner.Run(
            house, script, settings => LateContacts.Around(house, new LibraryController(settings)), progress: progress, cancel: cancel),
        Firmware => Runner.Run(house, script, _ => (board ?? new VirtualBench(null)).Build(house), progress: progress, cancel: cancel),
        Straight => Runner.Run(house, script, settings => new StraightWiring(settings), progress: progress, cancel: cancel),
        _ => throw new ArgumentOutOfRangeException(nameof(controller), controller, "a controller nobody can build"),
    };
}
