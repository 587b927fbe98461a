using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

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

    /// <summary>The protection that a word takes away.</summary>
    /// <exception cref="BadInputException">There is no such word.</exception>
    public static Protection ProtectionOf(string word)
    {
        foreach ((string known, Protection protection) in Protections.Words)
        {
            if (known == word)
                return protection;
        }

        throw new BadInputException(Words.Unknown("protection", word, [.. Protections.Words.Select(known => known.Word)]));
    }

    /// <summary>Runs and judges.</summary>
    /// <param name="house">The house.</param>
    /// <param name="script">The script.</param>
    /// <param name="controller">The controller's name.</param>
    /// <param name="without">A protection that the library's controller lacks.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cancel">Stops it.</param>
    /// <param name="board">Where the firmware runs; direct pins and no log when null.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Run Run(
        House house, Script script, string controller, Protection without, IProgress<double>? progress, CancellationToken cancel,
        VirtualBench? board = null)
    {
        return Runner.Run(house, script, Build, progress: progress, cancel: cancel);

        IController Build(ControllerSettings settings) => controller switch
        {
            Library when without != Protection.None => Protections.Build(settings, without),
            Library => LateContacts.Around(house, new LibraryController(settings)),
            Firmware => (board ?? new VirtualBench(null)).Build(house),
            Straight => new StraightWiring(settings),
            _ => throw new ArgumentOutOfRangeException(nameof(controller), controller, "a controller nobody can build"),
        };
    }
}
