using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Board;

namespace ZoneControl.Cli;

/// <summary>Builds the firmware's virtual board as the person asked for it, and keeps its log.</summary>
internal sealed class VirtualBench(int? arrangement)
{
    private static readonly (string Word, int? Arrangement)[] _pins =
        [("house", null), ("direct", BoardPlan.Direct), ("chains", BoardPlan.Chains)];

    private FirmwareController? _built;

    /// <summary>Takes the options of a run.</summary>
    /// <exception cref="BadInputException">A word that is not known, or an option that nothing asks for.</exception>
    public static VirtualBench Of(string? pins, string? log, IReadOnlyList<string> controllers)
    {
        if ((pins ?? log) is not null && !controllers.Contains(BenchDoor.Firmware))
            throw new BadInputException($"{(pins is null ? "--board-log" : "--pins")} is for the firmware; add --controller {BenchDoor.Firmware}.");
        int at = Array.FindIndex(_pins, known => known.Word == (pins ?? "house"));
        return at >= 0
            ? new VirtualBench(_pins[at].Arrangement)
            : throw new BadInputException(Words.Unknown("arrangement of pins", pins!, [.. _pins.Select(known => known.Word)]));
    }

    /// <summary>The firmware on a board for a house.</summary>
    /// <exception cref="BadInputException">The program's folder lacks the firmware.</exception>
    public IController Build(House house)
    {
        try
        {
            _built = new FirmwareController(house, arrangement is { } chosen ? PinPlanner.For(house, chosen) : null);
            return _built;
        }
        catch (FileNotFoundException e)
        {
            throw new BadInputException($"{e.FileName}: the firmware is missing from the program's folder; build or install the program again.", e);
        }
    }

    /// <summary>Writes what the firmware logged.</summary>
    public void WriteLog(TextWriter writer)
    {
        foreach (string line in _built?.Log ?? [])
            writer.Write(line + "\n");
    }
}
