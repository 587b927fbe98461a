using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
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

    /// <summary>The names, the one whose verdict counts first.</summary>
    public static IReadOnlyList<string> Controllers { get; } = [Library, Straight];

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
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Run Run(House house, Script script, string controller, Protection without, CancellationToken cancel) => controller switch
    {
        Library when without != Protection.None =>
            Runner.Run(house, script, settings => Protections.Build(settings, without), cancel: cancel),
        Library => Runner.Run(house, script, settings => new LibraryController(settings), cancel: cancel),
        Straight => Runner.Run(house, script, settings => new StraightWiring(settings), cancel: cancel),
        _ => throw new ArgumentOutOfRangeException(nameof(controller), controller, "a controller nobody can build"),
    };
}
