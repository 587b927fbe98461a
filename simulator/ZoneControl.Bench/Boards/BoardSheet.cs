using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>A pin of the module and what it does.</summary>
/// <param name="Gpio">Number of the pin.</param>
/// <param name="Drives">Whether the board drives it.</param>
/// <param name="Use">What it does: "valve z1, Throwing room".</param>
/// <param name="Level">Its safe level where it drives, else the level of a closed contact.</param>
public sealed record PinLine(int Gpio, bool Drives, string Use, string Level);

/// <summary>A terminal and what is wired to it.</summary>
/// <param name="Terminal">Its number: "I1", "O3".</param>
/// <param name="Use">What is wired to it.</param>
/// <param name="At">Where it arrives: "GPIO 34", "chip 2, input C".</param>
/// <param name="Meaning">What a closed contact or an energised relay means.</param>
public sealed record TerminalLine(string Terminal, string Use, string At, string Meaning);

/// <summary>Parts of one kind.</summary>
/// <param name="Count">How many.</param>
/// <param name="Part">What, by generic type.</param>
/// <param name="For">What for.</param>
public sealed record PartLine(int Count, string Part, string For);

/// <summary>A sum of loads.</summary>
/// <param name="What">What is summed.</param>
/// <param name="Value">The sum with its unit.</param>
/// <param name="From">What it consists of, or where it comes from.</param>
public sealed record LoadLine(string What, string Value, string From);

/// <summary>Everything that a house's board needs: settings, pins, terminals, parts, loads, and what to look out for.</summary>
public sealed record BoardSheet
{
    /// <summary>The house.</summary>
    public required House House { get; init; }

    /// <summary>The pin plan.</summary>
    public required BoardPlan Plan { get; init; }

    /// <summary>The fingerprint of settings, plan and zone names.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>The settings as C#, to be compiled into the firmware.</summary>
    public required string SettingsText { get; init; }

    /// <summary>Pins, in the order of their numbers.</summary>
    public required IReadOnlyList<PinLine> Pins { get; init; }

    /// <summary>Terminals: outputs, then inputs.</summary>
    public required IReadOnlyList<TerminalLine> Terminals { get; init; }

    /// <summary>Parts, by generic type.</summary>
    public required IReadOnlyList<PartLine> Parts { get; init; }

    /// <summary>Sums of currents and loads.</summary>
    public required IReadOnlyList<LoadLine> Loads { get; init; }

    /// <summary>What to look out for with this house.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>What to look out for with every house.</summary>
    public IReadOnlyList<string> Cautions { get; } = BoardCautions.All;

    /// <summary>The sheet of a house.</summary>
    public static BoardSheet Of(House house)
    {
        BoardPlan plan = PinPlanner.Of(house);
        ControllerSettings settings = house.ToSettings();
        string[] names = [.. house.Zones.Select(zone => zone.Name)];
        string fingerprint = FingerprintOf(house, plan);
        return new BoardSheet
        {
            House = house,
            Plan = plan,
            Fingerprint = fingerprint,
            SettingsText = SettingsSource.Of(house, settings, plan, names, fingerprint),
            Pins = PinTable.Of(house, plan),
            Terminals = TerminalTable.Of(house, plan),
            Parts = PartsList.Of(house, plan),
            Loads = LoadSums.Of(house, plan),
            Warnings = BoardWarnings.Of(house, plan),
        };
    }

    /// <summary>The fingerprint of a house with a plan; its own plan when none is given.</summary>
    public static string FingerprintOf(House house, BoardPlan? plan = null) => Board.Fingerprint.Text(Board.Fingerprint.Of(
        SettingsWords.Of(house.ToSettings(), plan ?? PinPlanner.Of(house)), [.. house.Zones.Select(zone => zone.Name)]));
}
